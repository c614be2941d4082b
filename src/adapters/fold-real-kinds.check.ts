import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkEntry, kindById, kinds, readBody } from '../entries';
import { advance, type Book, fold, readLogbook, type State, writeLogbook } from '../logbook';
import { deeds, play, RIG, type Says, time } from '../logbook/made-up-logbooks';
import { blankRig, type Rig } from '../rig';
import type { Entry } from '../terms';

/**
 * The fold with the product's own kinds, each by its own examples: whatever four devices write, correct, withdraw and disagree about,
 * the state is the same for every order of arrival and every way of cutting it up, and comes back from a file with the same digest.
 */
type Example = Pick<Entry, 'kind' | 'version' | 'body' | 'place'> & Partial<Pick<Entry, 'concerns'>>;

const entriesFolder = fileURLToPath(new URL('../entries', import.meta.url));
const examples: readonly Example[] = readdirSync(entriesFolder, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('example.json'))
  .sort()
  .flatMap((path) => {
    const kind = path.split(/[\\/]/).at(-2) ?? '';
    return (JSON.parse(readFileSync(`${entriesFolder}/${path}`, 'utf8')) as Omit<Example, 'kind'>[]).map((e) => ({
      kind,
      version: e.version,
      body: e.body,
      place: e.place,
      ...(e.concerns && { concerns: e.concerns }),
    }));
  });

const says: Says = (deed, target) => {
  const example = examples[(deed.what * 7 + deed.value) % examples.length] as Example;
  if (deed.does === 'unknown') return { kind: `${example.kind}-of-later`, version: 1, body: example.body, place: example.place };
  if (deed.does === 'withdraw' && target) return { kind: 'withdrawal', version: 1, body: {}, concerns: [target.id], place: { at: 'rig' } };
  if (deed.does === 'correct' && target) {
    const other = examples.filter((e) => e.kind === target.kind).at(deed.value);
    const body = deed.value === 4 ? { no_such_field: 1 } : ((other ?? target).body as object);
    return {
      kind: 'correction',
      version: 1,
      concerns: [target.id],
      place: { at: 'rig' },
      body: { changed: { body, ...(deed.value === 2 && { observed_at: time(deed.hours) }), ...(deed.value === 1 && other && { place: other.place }) } },
    };
  }
  return example;
};

const fits = (kind: Parameters<typeof readBody>[0], body: unknown): boolean => readBody(kind, body).ok;
const asText = (state: State<Rig>): string =>
  JSON.stringify(state, (_key, value) => (value instanceof Map ? { map: [...value] } : value instanceof Set ? { set: [...value] } : value));
const runs = { numRuns: 60 };

describe('the fold of the product’s own kinds', () => {
  it('has an example of every kind, and all pass the door', () => {
    expect(new Set(examples.map((e) => e.kind))).toEqual(new Set(kinds.map((k) => k.id)));
    for (const line of play(
      examples.map((_, i) => ({ device: 0, does: 'grade', what: i, value: 0, hours: 0 })),
      (deed) => examples[deed.what] as Example,
    ))
      expect(checkEntry(line.entry), line.text).toEqual([]);
  });

  it('is the same for every order of arrival, and piece by piece', () => {
    fc.assert(
      fc.property(deeds(40), fc.array(fc.nat(1000), { minLength: 1, maxLength: 40 }), (all, keys) => {
        const lines = play(all, says);
        const mixed = lines
          .map((l, i) => [keys[i % keys.length] ?? 0, l] as const)
          .sort((a, b) => a[0] - b[0])
          .map(([, l]) => l);
        const whole = asText(fold(kinds, blankRig(RIG), lines, { fits }));
        for (const arriving of [lines, mixed]) {
          let book: Book<Rig> | undefined;
          for (const line of arriving) book = advance(kinds, blankRig(RIG), book, [line, line], { fits });
          expect(book === undefined ? whole : asText(book.state)).toBe(whole);
        }
        const back = readLogbook(writeLogbook(lines), { check: (entry) => (kindById(entry.kind)?.fold.mode === 'amends' ? [] : checkEntry(entry)) });
        expect(back.verification.whole, back.verification.sentences.join(' ')).toBe(true);
        expect(asText(fold(kinds, blankRig(RIG), back.lines, { fits }))).toBe(whole);
      }),
      runs,
    );
  });
});
