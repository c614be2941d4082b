import type { Source } from '../terms';

const WIDTH = 100;

/** Wraps a line at blanks; what follows hangs under its first word. */
export const wrap = (text: string, indent: number): string => {
  const hang = ' '.repeat(indent);
  const lines: string[] = [];
  let line = hang;
  for (const word of text.split(' ')) {
    if (line.length + word.length + 1 > WIDTH && line.trim() !== '') {
      lines.push(line);
      line = hang;
    }
    line += line.trim() === '' ? word : ` ${word}`;
  }
  return [...lines, line].join('\n');
};

/** Sources by number, in the order in which they are first named; written out once at the end. */
export type SourceNumbers = { readonly of: (source: Source) => string; readonly all: () => readonly Source[] };

export const sourceNumbers = (): SourceNumbers => {
  const known = new Map<string, { readonly n: number; readonly source: Source }>();
  return {
    of: (source) => {
      const row = known.get(source.text) ?? { n: known.size + 1, source };
      known.set(source.text, row);
      return `[${row.n}]`;
    },
    all: () => [...known.values()].map((row) => row.source),
  };
};

/** The list of sources at the end of a text. */
export const sourceLines = (numbers: SourceNumbers): readonly string[] => {
  const named = numbers.all();
  return named.length === 0 ? [] : ['', 'Where it comes from', ...named.map((source, i) => wrap(`[${i + 1}] ${source.text}`, 2))];
};
