import { describe, expect, it } from 'vitest';
import type { Entry, Head } from '../terms';
import { instant } from '../units';
import { fold, fromTheFuture, type Line, lineOf } from './index';
import { BLANK, RIG, TOY_KINDS } from './made-up-logbooks';

/**
 * Clocks that cannot be right are doubted and nothing is moved because of them. The tolerances (one hour on one device, a day between two)
 * are our own; the checks stand on either side of each.
 */
type Step = { readonly device: string; readonly at: string; readonly observed?: string; readonly hears?: number; readonly concerns?: number };

const written = (steps: readonly Step[]): readonly Line[] => {
  const lines: Line[] = [];
  for (const [i, { device, at, observed = at, hears, concerns }] of steps.entries()) {
    const own = lines.filter((l) => l.entry.device === device);
    const heard = hears === undefined ? undefined : lines[hears];
    const heads: readonly Head[] = heard ? [{ device: heard.entry.device, counter: heard.entry.counter, hash: heard.hash }] : (own.at(-1)?.entry.heads ?? []);
    const target = concerns === undefined ? undefined : lines[concerns];
    const said: Pick<Entry, 'kind' | 'body'> & Partial<Entry> = target
      ? { kind: 'correction', body: { changed: { observed_at: '2026-05-01' } }, concerns: [target.entry.id] }
      : { kind: 'grade', body: { grade: 'S1' } };
    lines.push(
      lineOf({
        id: `00000000-0000-7000-8000-${i.toString(16).padStart(12, '0')}`,
        rig: RIG,
        version: 1,
        observed_at: observed,
        recorded_at: at,
        by: '',
        device,
        counter: own.length + 1,
        previous: own.at(-1)?.hash ?? null,
        heads,
        place: { at: 'rig' },
        ...said,
      }),
    );
  }
  return lines;
};
const doubted = (...steps: readonly Step[]): readonly number[] => {
  const lines = written(steps);
  return fold(TOY_KINDS, BLANK, lines).clockDoubts.map((d) => lines.findIndex((l) => l.entry.id === d.entry));
};

const day = (d: number, time = '10:00:00Z'): string => `2026-05-${String(d).padStart(2, '0')}T${time}`;

describe('a clock', () => {
  it('that goes on is not doubted', () => {
    expect(doubted({ device: 'a', at: day(3) }, { device: 'a', at: day(3) }, { device: 'a', at: day(4) }, { device: 'b', at: day(4), hears: 2 })).toEqual([]);
  });

  it('that steps back on one device is doubted beyond an hour, once, and not ever after', () => {
    expect(doubted({ device: 'a', at: day(3) }, { device: 'a', at: day(3, '09:00:00Z') })).toEqual([]);
    expect(doubted({ device: 'a', at: day(3) }, { device: 'a', at: day(3, '08:59:59Z') }, { device: 'a', at: day(3, '09:10:00Z') })).toEqual([1]);
  });

  it('that contradicts another device is doubted beyond a day, in whatever zone it shows', () => {
    expect(doubted({ device: 'a', at: day(3) }, { device: 'b', at: day(2), hears: 0 })).toEqual([]);
    expect(doubted({ device: 'a', at: day(3) }, { device: 'b', at: day(2, '05:59:00-04:00'), hears: 0 }, { device: 'b', at: day(2) })).toEqual([1]);
  });

  it('years wrong is doubted even when nothing contradicts it', () => {
    expect(doubted({ device: 'a', at: '1970-01-01T00:00:05Z' })).toEqual([0]);
  });

  it('that tells of what had not come yet is doubted; a span that has begun is not', () => {
    expect(doubted({ device: 'a', at: day(3), observed: day(4, '09:00:00Z') })).toEqual([]);
    expect(doubted({ device: 'a', at: day(3), observed: day(5) })).toEqual([0]);
    expect(doubted({ device: 'a', at: day(3), observed: '2026-05-01/2026-06-30' })).toEqual([]);
  });

  it('is no longer doubted once somebody has said when it was', () => {
    expect(doubted({ device: 'a', at: '1970-01-01T00:00:05Z' }, { device: 'a', at: day(3), concerns: 0 })).toEqual([]);
  });

  it('changes neither what stands nor its times', () => {
    const lines = written([
      { device: 'a', at: day(3) },
      { device: 'a', at: '1999-01-01T00:00:00Z' },
    ]);
    const state = fold(TOY_KINDS, BLANK, lines);
    expect([...state.standing.values()].map((s) => s.observed_at)).toEqual([day(3), '1999-01-01T00:00:00Z']);
    expect(state.clockDoubts.map((d) => d.sentence)).toEqual(['The clock of the device said 1 January 1999 when this was written, which cannot be. Say when it was.']);
  });

  it('that is ahead of the asker’s is doubted by the asker alone', () => {
    const entries = written([
      { device: 'a', at: day(3) },
      { device: 'a', at: day(10) },
    ]).map((l) => l.entry);
    const now = instant(Date.UTC(2026, 4, 8));
    expect(fromTheFuture(entries, now).map((d) => d.entry)).toEqual([entries[1]?.id]);
  });
});
