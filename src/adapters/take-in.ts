import { type BodyCheck, isTrailerLine, type Line, type LogbookStore, readLine } from '../logbook';

export type Taken = Awaited<ReturnType<LogbookStore['take']>>;
type Refused = Taken['refused'][number];

/** Reads lines that come from elsewhere, before a store looks for those it holds already. Blank and closing lines are no entries and are passed over. */
export const readForTaking = (texts: readonly string[], check?: BodyCheck): { readonly lines: readonly Line[]; readonly refused: readonly Refused[] } => {
  const lines: Line[] = [];
  const refused: Refused[] = [];
  texts.forEach((text, i) => {
    if (text.trim() === '' || isTrailerLine(text)) return;
    const read = readLine(text, check);
    if (read.ok) lines.push(read.value);
    else refused.push({ line: i + 1, text, refusals: read.refusals });
  });
  return { lines, refused };
};
