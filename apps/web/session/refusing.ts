import { withTrouble } from '../../../src/adapters/trouble';
import { checkEntry } from '../../../src/entries';
import type { Book } from '../../../src/logbook';
import type { Rig } from '../../../src/rig';
import type { Draft, RigId } from '../../../src/terms';
import { supposing } from './judging';

/**
 * Drafts that could never be read again are not written: a body, place or concern that its kind refuses, and a correction
 * whose result the corrected entry's kind cannot read. The form should have said so before; here the page is told.
 */
export const refuseDrafts = (drafts: readonly Draft[], books: ReadonlyMap<RigId, Book<Rig>>, now: string): void => {
  const sentences = drafts.flatMap((draft) => checkEntry({ ...draft, id: '', recorded_at: now, device: '', counter: 1, previous: null, heads: [] }).map((r) => r.sentence));
  for (const [rig, book] of books) {
    const own = drafts.filter((d) => d.rig === rig);
    if (sentences.length > 0 || !own.some((d) => d.kind === 'correction')) continue;
    const { ids, ...supposed } = supposing(rig, book, own, now);
    const misfits = supposed.book.disputes.filter((d) => d.code === 'misfit' && d.entries.some((e) => ids.has(e)));
    sentences.push(...misfits.map(() => 'With this correction the entry could not be read any more.'));
  }
  if (sentences.length > 0)
    throw withTrouble({
      code: 'refused',
      happened: `${[...new Set(sentences)].join(' ')} So it was not written down.`,
      safe: 'Everything kept before is safe, and your answer is still on the screen.',
      todo: 'Change the answer and keep it again.',
    });
};
