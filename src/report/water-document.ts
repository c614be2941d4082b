import type { Candidate, Comparable, Leak, Panel, Plan, Spot, Water } from '../plan';

/** Where and with what it was read is said by its place and panel. */
const leanReading = ({ entry, day, as_read, value, no_number, plus_minus, dry_reference, off_panel, remark }: Comparable): unknown => ({
  entry,
  day,
  as_read,
  value,
  no_number,
  plus_minus,
  dry_reference: dry_reference || undefined,
  off_panel,
  remark,
});

/** A dry place needs no reasons: its readings and the dry places of its panel are there. */
const leanSpot = (spot: Spot): unknown => ({
  ...spot,
  readings: spot.readings.map(leanReading),
  ...(spot.state === 'dry' ? { because: undefined, yardsticks: undefined } : {}),
});

/** Ways are drawn for what may well be the way in; one candidate's worksheet is everybody's. */
const leanCandidate = (candidate: Candidate, i: number): unknown => ({
  ...candidate,
  because: candidate.word === 'unlikely' ? undefined : candidate.because.map((b) => (i === 0 ? b : { ...b, worksheet: undefined })),
  paths: candidate.word === 'unlikely' ? undefined : candidate.paths,
});

/** Places are told in full once, with their panel; a leak names them. */
const leanLeak = (leak: Leak): unknown => ({
  ...leak,
  candidates: leak.candidates.map(leanCandidate),
  spots: leak.spots.map((s) => s.id),
  dry: leak.dry.map((s) => s.id),
  shown: leak.spots.filter((s) => s.readings.length === 0),
});

const leanPanel = (panel: Panel): unknown => ({ ...panel, spots: panel.spots.map(leanSpot) });

/** What is known of water as a plan's file tells it: everything once, and no more than a reader can use. */
export const leanWater = (water: Water): Readonly<Record<string, unknown>> => ({ ...water, panels: water.panels.map(leanPanel), leaks: water.leaks.map(leanLeak) });

export const leanPlan = (plan: Plan): unknown => ({ ...plan, water: leanWater(plan.water) });
