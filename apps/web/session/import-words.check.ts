import { describe, expect, it } from 'vitest';
import { type Line, lineOf } from '../../../src/logbook';
import { disagreeing, importWords } from './import-words';

/** What is said of a file that was taken in. No outside source: the sentences are our own; what is checked is when each is said. */
const line = (counter: number, note: string): Line =>
  lineOf({
    id: `0190a000-0000-7000-8000-00000000000${counter}`,
    rig: 'rig',
    kind: 'look',
    version: 1,
    observed_at: '2026-05-03T10:00:00+02:00',
    recorded_at: '2026-05-03T10:00:00+02:00',
    by: 'Dana',
    device: 'phone',
    counter,
    previous: counter === 1 ? null : 'a'.repeat(64),
    heads: [],
    place: { at: 'rig' },
    body: {},
    note,
  });

const said = (part: Partial<Parameters<typeof importWords>[0]>): string => importWords({ taken: 0, known: 0, refused: 0, disagreeing: 0, doubt: undefined, ...part });

describe('a file that disagrees with what is here', () => {
  it('is told by a second line at one number of one device, and by nothing else', () => {
    const [one, two, other] = [line(1, 'as written'), line(2, 'as written'), line(2, 'written otherwise')];
    expect(disagreeing([one, two, other], [other])).toBe(1);
    expect(disagreeing([one, two], [one, two])).toBe(0);
    expect(disagreeing([one, two], [two])).toBe(0);
  });
  it('is said in words that leave what is here in peace', () => {
    expect(said({ taken: 1, known: 4, disagreeing: 1 })).toMatch(
      /^1 entry was taken in, 4 were here already\. 1 entry of the file disagrees with what is here: .* Both are kept; nothing here was replaced\.$/,
    );
    expect(said({ taken: 2 })).toBe('2 entries were taken in.');
    expect(said({ known: 3 })).toBe('Nothing new: all of it is here already.');
  });
});
