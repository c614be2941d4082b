import type { TestQuality } from '../../science';
import { type EntryId, memory, ours, type Source, type StationId } from '../../terms';

export type TestWay = 'hose' | 'soap';

/** One water test of one opening or seam. */
export type TestDone = {
  readonly entry: EntryId;
  readonly station: StationId;
  readonly how: TestWay;
  /** Water came in, or bubbles showed. */
  readonly came_in: boolean;
  /** Whether openings above stayed dry; undefined where nobody said. */
  readonly kept_dry?: boolean | undefined;
  /** From start to stop. [s] */
  readonly ran_for_s?: number | undefined;
};

/** What a kind of test is worth and what it costs. */
type TestKind = TestQuality & {
  /** Once for a visit: hose or blower out, helper inside, meter reading first. [min] */
  readonly set_up_min: number;
  /** At one opening or seam. [min] */
  readonly each_min: number;
  /** Of these, how long water or air is on: no shorter than the one, and after the other it has had its time. [min] */
  readonly run_min: readonly [least: number, enough: number];
  readonly source: Source;
};

/** Minutes that a ladder or the roof adds: set up, tie, climb, come down. Ours. */
export const LADDER_MIN = 15;

export const TESTS: Readonly<Record<TestWay, TestKind>> = {
  hose: {
    sensitivity: 0.9,
    specificity: 0.97,
    set_up_min: 10,
    each_min: 10,
    run_min: [5, 10],
    source: memory(
      '5 to 10 minutes at each opening, the lowest first: practice of building leak tests (AAMA 501.2, ASTM E2128) carried over; how often it errs on a rig is our guess',
    ),
  },
  soap: {
    sensitivity: 0.7,
    specificity: 0.8,
    set_up_min: 40,
    each_min: 5,
    run_min: [5, 5],
    source: ours('soap shows ways of air: not every one lets water in, and a gap that holds water may not bubble; how often it errs is our guess'),
  },
};

/** How long the clock of a test runs. [min] */
export const runMinutes = (how: TestWay): number => TESTS[how].run_min[1];

/** A hose that ran shorter than this and showed nothing tells less. [s] */
const SHORT_S = TESTS.hose.run_min[0] * 60;
const SHORT_SENSITIVITY = 0.6;
/** Openings above got wet too: what came in may have come through them. */
const WET_ABOVE_SPECIFICITY = 0.8;

/** Stayed dry, but the water was off again too soon to say so. */
export const endedEarly = (test: TestDone): boolean => test.how === 'hose' && !test.came_in && test.ran_for_s !== undefined && test.ran_for_s < SHORT_S;

/** What this very test is worth, as it was done. */
export const worthOf = (test: TestDone): TestQuality => {
  const { sensitivity, specificity } = TESTS[test.how];
  const above = test.how === 'hose' && test.came_in && test.kept_dry === false;
  return { sensitivity: endedEarly(test) ? SHORT_SENSITIVITY : sensitivity, specificity: above ? WET_ABOVE_SPECIFICITY : specificity };
};

/** Chance of its result if the source leaks, and if it does not. */
export const likelihoodOf = (test: TestDone): { readonly if_leaks: number; readonly if_not: number } => {
  const { sensitivity, specificity } = worthOf(test);
  return test.came_in ? { if_leaks: sensitivity, if_not: 1 - specificity } : { if_leaks: 1 - sensitivity, if_not: specificity };
};

/** Water was seen to come in through it, with what lies above kept out of the way. */
export const confirms = (test: TestDone): boolean => test.how === 'hose' && test.came_in && test.kept_dry !== false;
