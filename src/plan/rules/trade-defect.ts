import type { Standing } from '../../logbook';
import { byUrgency } from '../../terms';
import { showDay } from '../../units';
import { defineRule, type Scene, type Verdict } from '../rule';
import { defect, defectTitle, firstSource } from '../trade';
import { rulingOn } from './rulings';
import { PRACTICE } from './sources';

type Body = { readonly verdict?: string; readonly defects?: readonly string[] };

/** What one row of the defects table amounts to here, with the stricter ruling where there is one. */
export const defectVerdict = (id: string, seen: Standing): Verdict | undefined => {
  const row = defect(id);
  if (!row) return undefined;
  const here = [seen.entry.id];
  const title = defectTitle(row);
  const ruling = rulingOn(id);
  const strict = ruling !== undefined && byUrgency(ruling.urgency, row.urgency) <= 0 ? ruling : undefined;
  return {
    key: id,
    title,
    urgency: strict?.urgency ?? row.urgency,
    who: strict?.who === 'professional' ? 'professional' : row.who,
    because: [
      { text: `Seen on ${showDay(seen.day)}: ${title.charAt(0).toLowerCase()}${title.slice(1)}. ${row.why}.`, entries: here, source: firstSource(row.sources) },
      ...(strict ? [{ text: strict.text, entries: here, source: strict.source }] : []),
    ],
    defect: id,
  };
};

const judge = (seen: Standing, _scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  if (body.verdict === 'sound') return [];
  const known = (body.defects ?? []).flatMap((id) => defectVerdict(id, seen) ?? []);
  if (known.length > 0 || body.verdict !== 'something-wrong') return known;
  return [unnamed(seen)];
};

/** Something is wrong and nobody has said what: it stays on the plan until it is named or judged. */
export const unnamed = (seen: Standing): Verdict => ({
  key: 'unnamed',
  title: seen.entry.note ? `Something wrong: ${seen.entry.note}` : 'Something wrong, not yet named',
  urgency: 'this-season',
  who: 'yourself',
  because: [
    {
      text: `Recorded as wrong on ${showDay(seen.day)} without a name from the list of defects: its urgency could not be judged. Look again and name it.`,
      entries: [seen.entry.id],
      source: PRACTICE,
    },
  ],
  remedies: [],
});

export const tradeDefectRule = defineRule({
  id: 'trade-defect',
  title: 'A defect of the trade table',
  says: 'A ticked defect has the urgency of its row, or that of the stricter ruling where there is one; escalations raise it where the same station shows what they name.',
  sources: [PRACTICE],
  reads: ['look', 'lamp-condition', 'latch-condition', 'awning-condition', 'slide-seal', 'underside-condition'],
  endedBy: ['tyre-fitted'],
  example: { kind: 'look', body: { verdict: 'something-wrong', defects: ['window.weep-blocked'] }, looks: 'window', gives: 'this-season' },
  judge,
  // A later look that names other defects does not say that this one is gone; only "sound", or care and a look after it, does.
  closes: (seen) => (seen.body as Body).verdict === 'sound',
  settles: (care, { key }) => rulingOn(key)?.settledBy?.includes(care.entry.kind) ?? true,
});
