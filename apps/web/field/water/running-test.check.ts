import { describe, expect, it } from 'vitest';
import { changes, clock, elapsed, LEFT_RUNNING_S, ranFor } from './running-test';

/** The clock of a water test and what is said of its outcome. No outside source: a minute has sixty seconds. */
describe('a water test', () => {
  it('counts whole seconds from its start, and none before it', () => {
    expect([999, 1000, 245_900].map((ms) => clock(elapsed({ started: 0 }, ms)))).toEqual(['0:00', '0:01', '4:05']);
    expect(elapsed({ started: 10_000 }, 4000)).toBe(0);
  });
  it('writes down minutes to the tenth, and none where the clock was left running', () => {
    expect([0, 61, 245, 600, LEFT_RUNNING_S, LEFT_RUNNING_S + 1].map(ranFor)).toEqual(['0', '1', '4.1', '10', '120', undefined]);
  });
  it('holds every way in beside how it stood, and names those that came or left', () => {
    expect(
      changes(
        [
          { station: 'a', word: 'likely' },
          { station: 'b', word: 'possible' },
        ],
        [
          { station: 'b', word: 'likely' },
          { station: 'c', word: 'unlikely' },
        ],
      ),
    ).toEqual([
      { station: 'b', before: 'possible', after: 'likely' },
      { station: 'c', before: undefined, after: 'unlikely' },
      { station: 'a', before: 'likely', after: undefined },
    ]);
  });
});
