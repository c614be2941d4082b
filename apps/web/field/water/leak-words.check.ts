import { describe, expect, it } from 'vitest';
import type { Leak, OtherCause } from '../../../../src/plan';
import { ours } from '../../../../src/terms';
import { civilDay } from '../../../../src/units';
import { dueOf, isDue, markOf, stageOf, stageWord } from './leak-words';

/**
 * Where a leak stands, told on its screen. No outside source; what is checked is that the two findings close apart, that nothing is
 * called stopped or dry before the plan does, and that a leak is not named while another cause was never looked into.
 */
const SAID = { text: '', entries: [], source: ours('for this check') };
const cause = (state: OtherCause['state']): OtherCause => ({ cause: 'plumbing', state, because: SAID, how: '' });
const leak = (part: Partial<Leak> & { readonly stopped?: Leak['stop']['state']; readonly dry_as?: Leak['dryness']['state'] }): Leak => ({
  id: 'e',
  place: { at: 'rig' },
  spots: [],
  dry: [],
  since: civilDay(20_000),
  other_causes: [cause('ruled-out')],
  candidates: [],
  unknown_source: 0,
  clues: [],
  sentence: '',
  repairs: [],
  stop: { state: part.stopped ?? 'open', because: [] },
  dryness: { state: part.dry_as ?? 'wet', because: [] },
  due: [],
  ...part,
});

describe('where a leak stands', () => {
  it('is told as far as the plan knows, and no farther', () => {
    const told = [
      leak({ other_causes: [cause('it-is-this')] }),
      leak({ other_causes: [cause('not-looked-at'), cause('ruled-out')] }),
      leak({}),
      leak({ confirmed: 'window' }),
      leak({ confirmed: 'window', other_causes: [cause('not-looked-at')] }),
      leak({ stopped: 'repaired', confirmed: 'window' }),
      leak({ stopped: 'reopened', dry_as: 'wetting' }),
      leak({ stopped: 'reopened', confirmed: 'window', dry_as: 'wetting' }),
      leak({ stopped: 'stopped', dry_as: 'wet' }),
      leak({ stopped: 'stopped', dry_as: 'drying' }),
      leak({ stopped: 'stopped', dry_as: 'dry' }),
      leak({ stopped: 'repaired', dry_as: 'dry' }),
    ].map((l) => [stageOf(l), stageWord(l), markOf(l)]);
    expect(told).toEqual([
      ['explained', 'No leak: plumbing', 'watch'],
      ['rule-out', 'Wet, cause not yet known', 'before-rain'],
      ['open', 'Water is coming in', 'before-rain'],
      ['confirmed', 'Way in found', 'before-rain'],
      ['confirmed', 'Way in found', 'before-rain'],
      ['repaired', 'Repaired, to be proved', 'watch'],
      ['reopened', 'Wet again after the repair', 'before-rain'],
      // A test has found the way in that the repair missed: the next repair is what comes next.
      ['confirmed', 'Way in found', 'before-rain'],
      ['drying', 'Leak stopped, not dry yet', 'watch'],
      ['drying', 'Leak stopped, drying', 'watch'],
      ['dry', 'Leak stopped, dry again', 'sound'],
      // Dry once says nothing about the leak: two rains or the hose do.
      ['repaired', 'Repaired, to be proved', 'watch'],
    ]);
  });

  it('asks first for what is due first, and for rain not at all', () => {
    const on = civilDay(20_100);
    const rain = { what: 'after-rain', from: civilDay(20_090), words: 'after two rains' } as const;
    const again = { what: 'meter-again', from: civilDay(20_095), words: 'again' } as const;
    const later = { what: 'next-round', from: civilDay(20_200), words: 'later' } as const;
    const done = { ...again, from: civilDay(20_000), done: 'x' };
    expect(dueOf(leak({ due: [later, again, rain, done] })).map((d) => d.words)).toEqual(['after two rains', 'again', 'later']);
    expect([[rain], [later], [rain, again], [done]].map((due) => isDue(leak({ due }), on))).toEqual([false, false, true, false]);
  });
});
