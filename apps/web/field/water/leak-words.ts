import type { Leak, OtherCause } from '../../../../src/plan';
import type { Mark } from '../../../../src/terms';
import type { CivilDay } from '../../../../src/units';
import { causeWord, dryWord } from '../../shared/leak-words';

/** Where one leak stands, for a person who stands before it. */
export type LeakStage = 'explained' | 'rule-out' | 'open' | 'confirmed' | 'repaired' | 'reopened' | 'drying' | 'dry';

/** What else could have made it wet and was not looked into. */
export const notRuledOut = (leak: Leak): readonly OtherCause[] => leak.other_causes.filter((c) => c.state === 'not-looked-at');
const explained = (leak: Leak): OtherCause | undefined => leak.other_causes.find((c) => c.state === 'it-is-this');

/** Two findings close apart: that it is stopped, and that it is dry again. */
export const stageOf = (leak: Leak): LeakStage => {
  const { stop, dryness } = leak;
  if (explained(leak)) return 'explained';
  // Wet again after an older repair: once a test has found the way in, it is the repair that comes next.
  if (stop.state === 'reopened') return leak.confirmed !== undefined && leak.next_test === undefined ? 'confirmed' : 'reopened';
  if (stop.state === 'stopped') return dryness.state === 'dry' ? 'dry' : 'drying';
  if (stop.state === 'repaired') return 'repaired';
  if (leak.confirmed !== undefined) return 'confirmed';
  return notRuledOut(leak).length > 0 ? 'rule-out' : 'open';
};

export { causeWord, dryWord };

/** The order of the day in two or three words. */
export const stageWord = (leak: Leak): string => {
  const stage = stageOf(leak);
  switch (stage) {
    case 'explained':
      return `No leak: ${causeWord(explained(leak)?.cause ?? 'condensation').toLowerCase()}`;
    case 'rule-out':
      return 'Wet, cause not yet known';
    case 'open':
      return 'Water is coming in';
    case 'confirmed':
      return 'Way in found';
    case 'repaired':
      return 'Repaired, to be proved';
    case 'reopened':
      return 'Wet again after the repair';
    case 'drying':
      return leak.dryness.state === 'drying' ? 'Leak stopped, drying' : 'Leak stopped, not dry yet';
    case 'dry':
      return 'Leak stopped, dry again';
  }
};

/** The mark that stands before it: the same urgencies as everywhere. */
export const markOf = (leak: Leak): Mark => {
  switch (stageOf(leak)) {
    case 'dry':
    case 'explained':
      return leak.dryness.state === 'dry' ? 'sound' : 'watch';
    case 'repaired':
    case 'drying':
      return 'watch';
    default:
      return 'before-rain';
  }
};

/** What a repair still has to show, the next first. */
export const dueOf = (leak: Leak) => leak.due.filter((d) => d.done === undefined).toSorted((a, b) => a.from - b.from);

/** Today one can do something for the proof. */
export const isDue = (leak: Leak, today: CivilDay): boolean => dueOf(leak).some((d) => d.from <= today && d.what !== 'after-rain');
