import type { Rig, WaterSpot } from '../../rig';
import { ours } from '../../terms';
import { figure } from '../../units';
import type { Because } from '../finding';
import { sourceOf } from '../trade';
import { LEAST_PASS } from './passing';
import { type TestDone, worthOf } from './water-tests';
import { lengthWords, wayWords } from './way-words';
import type { Weighed } from './weighing';

/** A dry place that water would have reached so readily is worth a word. [1] */
const TELLING_PASS = 0.15;

/** A stretch that is nearly all of a seam is not worth a word. [1] */
const WORTH_TELLING = 0.7;

const WAYS = sourceOf('MOISTLK', 'water shows away from where it came in, and runs the easiest way');
const ERRORS = ours('how often a water test errs: our guess, nothing published');

/** No finer than it is worth. */
export const coarse = (p: number): string => (p < 0.05 ? 'less than 5 %' : p > 0.95 ? 'more than 95 %' : `about ${figure(Math.round(p * 20) * 5, 0)} %`);

const ids = (spots: readonly WaterSpot[]): readonly string[] => spots.map((s) => s.id).toSorted();

const wayBecause = (rig: Rig, w: Weighed, wet: readonly WaterSpot[]): readonly Because[] => {
  const reached = wet.filter((_, j) => (w.pass[j] ?? 0) >= LEAST_PASS);
  const [best] = wet.map((spot, j) => ({ spot, pass: w.pass[j] ?? 0, way: w.ways[j] })).toSorted((a, b) => b.pass - a.pass);
  if (best?.way === undefined) return [];
  const all =
    wet.length < 2
      ? ''
      : reached.length === wet.length
        ? ' From there it can get to all of the wet places.'
        : ` From there it can get to ${reached.length} of the ${wet.length} wet places; those within a foot count as one.`;
  const stretch = w.share < WORTH_TELLING ? ` Only about ${lengthWords(w.share * w.station.outline_m)} of its ${lengthWords(w.station.outline_m)} can have wetted them.` : '';
  return [{ text: `${wayWords(rig, best.way, best.spot)}${all}${stretch}`, entries: ids(reached), source: WAYS }];
};

const dryBecause = (w: Weighed, wet: number, dry: readonly WaterSpot[]): readonly Because[] => {
  const missed = dry.filter((_, j) => (w.pass[wet + j] ?? 0) >= TELLING_PASS);
  if (missed.length === 0) return [];
  const which = missed.length === 1 ? 'A place that water from it would have reached was' : `${missed.length} places that water from it would have reached were`;
  return [{ text: `${which} found dry, which speaks against it.`, entries: ids(missed), source: WAYS }];
};

const SHOWED: Readonly<Record<TestDone['how'], readonly [yes: string, no: string]>> = {
  hose: ['Water came in when it was hosed', 'It was hosed and stayed dry'],
  soap: ['Soap bubbled at it', 'Soap did not bubble at it'],
};

const testBecause = (test: TestDone): Because => {
  const { sensitivity, specificity } = worthOf(test);
  const doubt = test.how === 'hose' && test.came_in && test.kept_dry === false ? ', but openings above got wet too' : '';
  return {
    text: `${SHOWED[test.how][test.came_in ? 0 : 1]}${doubt}. Such a test misses ${figure((1 - sensitivity) * 100, 0)} of 100 leaks, and shows one at ${figure((1 - specificity) * 100, 0)} of 100 places that are sound.`,
    entries: [test.entry],
    source: ERRORS,
  };
};

/** What speaks for and against one candidate: its way to what is wet, dry places, its seal, its tests. */
export const candidateBecause = (rig: Rig, w: Weighed, wet: readonly WaterSpot[], dry: readonly WaterSpot[]): readonly Because[] => [
  ...wayBecause(rig, w, wet),
  ...dryBecause(w, wet.length, dry),
  ...w.prior.because,
  ...w.tests.map(testBecause),
];
