import { type LeakEvidence, rankEntryPoints } from '../src/plan';
import { blankRig, layoutFrom, type Rig, type WaterSpot } from '../src/rig';
import { entryPosterior } from '../src/science';
import { dayOf } from '../src/units';
import { ms, type Row } from './table';
import { interleaved, type Timing } from './timing';

const SOURCES = 18;
const PLACES = 12;

/** Twelve places down and along one wall, a hand's breadth and more apart: six wet low on the wall, six dry. Invented. */
const places = (wet: boolean): readonly WaterSpot[] =>
  Array.from({ length: PLACES / 2 }, (_, i) => ({
    id: `${wet ? 'wet' : 'dry'} ${i}`,
    face: 'road',
    side: 'inside',
    point_m: wet ? [1.2 + 0.3 * (i % 3), 0.95 - 0.25 * Math.floor(i / 3)] : [3 + 0.6 * i, 1.4],
  }));

const evidence = (): LeakEvidence => {
  const layout = layoutFrom({ name: 'Bench', kind: 'class-a', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' });
  if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
  const rig: Rig = { ...blankRig('bench'), name: 'Bench', year: 2018, construction: 'bonded', ...layout.value };
  return { rig, on: dayOf(2026, 5, 1), wet: places(true), dry: places(false), tilts: [{ nose_up_rad: 0.02, curb_up_rad: 0 }], clues: [], seals: new Map(), tests: [] };
};

/** The hardest case of the network: every place wet, so that none can be taken out beforehand. */
const network = (): Parameters<typeof entryPosterior>[0] => ({
  prior: Array.from({ length: SOURCES }, (_, i) => 0.02 + 0.01 * i),
  pass: Array.from({ length: SOURCES }, (_, i) => Array.from({ length: PLACES }, (__, j) => ((i * 7 + j * 3) % 10) / 11)),
  background: Array.from({ length: PLACES }, () => 0.02),
  wet: Array.from({ length: PLACES }, () => true),
});

/** As many products as there are combinations and places, with nothing else done. */
const products = (): number => {
  let all = 1;
  for (let i = 0; i < 2 ** SOURCES * PLACES; i += 1) all *= 1 - (i & 7) * 1e-9;
  return all;
};

/** Ranking where the water comes in: the network at its hardest, and the whole of it on a rig, with all the ways of water. */
export const entryRanking = (): readonly Row[] => {
  const given = evidence();
  const hardest = network();
  // Places a tenth of a millimetre farther along each time: ways that were asked for before are kept, and are not what is timed.
  let turn = 0;
  const moved = (): LeakEvidence => {
    turn += 1;
    return { ...given, wet: given.wet.map((w) => ({ ...w, point_m: [w.point_m[0] + turn * 1e-4, w.point_m[1]] })) };
  };
  const times = interleaved({ weigh: () => entryPosterior(hardest), rank: () => rankEntryPoints(moved()), products }, 15);
  const { weigh, rank, products: plain } = times as { readonly weigh: Timing; readonly rank: Timing; readonly products: Timing };
  const range = (t: Timing): string => `${ms(t.median)} (${ms(t.least)} to ${ms(t.most)})`;
  const against = (t: Timing): string => `${(t.median / plain.median).toFixed(1)} × one product for each combination and place`;
  const candidates = rankEntryPoints(given).candidates.length + 1;
  return [
    { what: `weighing ${SOURCES} candidates and ${PLACES} wet spots, every combination`, goal: '30 ms', reached: range(weigh), ratio: against(weigh), met: weigh.median <= 30 },
    {
      what: `entry ranking with ${candidates} candidates and ${PLACES} spots, ways of water on the rig included`,
      goal: '30 ms',
      reached: range(rank),
      ratio: against(rank),
      met: rank.median <= 30,
    },
  ];
};
