import { DEMO_RIG, demoLines } from '../apps/demo';
import { METER, METERINGS, type Reading } from '../apps/demo/metering';
import { teller, typed } from '../apps/demo/teller';
import { kindById } from '../src/entries';
import { writeLogbook } from '../src/logbook';
import type { Draft } from '../src/terms';

/**
 * What happened to the demo's window after its last round, day by day: the hose finds it, it is bedded anew, the wall is metered
 * again after two days, after two real rains, and on until it is as dry as its dry places twice, more than a week apart.
 * Invented: a framed, opened wall with a fan in front of it dries in weeks.
 */
const WINDOW = 'road.window-24x22';
const BELT = 'road.belt-line-trim';
const LAST = '2026-10-03';

/** Share of the excess over the dry places that is left, by day of metering. */
const LEFT: readonly (readonly [day: string, left: number])[] = [
  ['2026-10-06', 0.93],
  ['2026-10-18', 0.72],
  ['2026-11-01', 0.48],
  ['2026-11-15', 0.27],
  ['2026-12-06', 0.09],
  ['2026-12-14', 0.06],
];

type Told = Pick<Draft, 'kind' | 'place' | 'body'> & { readonly at: string; readonly observed_at?: string };

const number = ([, , percent]: Reading): number => Number(percent);
const middle = (readings: readonly Reading[]): number => {
  const sorted = readings.map(number).toSorted((a, b) => a - b);
  return ((sorted[Math.floor((sorted.length - 1) / 2)] ?? 0) + (sorted[Math.ceil((sorted.length - 1) / 2)] ?? 0)) / 2;
};

/** Everything that read more than two points above the dry places: what a second metering goes back to. */
const wetPlaces = (): readonly Reading[] => {
  const metering = METERINGS[LAST];
  return metering ? metering.wall.filter((r) => number(r) > middle(metering.dry) + 2) : [];
};

const whole = { at: 'rig' } as const;
const outside = (station: string) => ({ at: 'station', station, side: 'outside' }) as const;

const metered = (day: string, left: number): readonly Told[] => {
  const metering = METERINGS[LAST];
  if (!metering) return [];
  const base = middle(metering.dry);
  const at = (i: number): string => `${day}T10:${String(Math.floor(i / 2)).padStart(2, '0')}:${i % 2 === 0 ? '00' : '30'}-04:00`;
  const reading = ([x, y, percent]: Reading, i: number, dry: boolean): Told => ({
    at: at(i),
    kind: 'wood-moisture-pin',
    place: { at: 'point', face: 'road', side: 'inside', point_m: [x, y] },
    body: {
      reading: typed(percent, 'moisture-content', 'percent'),
      wood_temperature: typed('61', 'temperature', 'f'),
      material: 'plywood',
      surface: 'dry',
      ...(dry ? { dry_reference: true } : {}),
      meter: METER,
    },
  });
  return [
    ...metering.dry.map((r, i) => reading(r, i, true)),
    ...wetPlaces().map((r, i) => reading([r[0], r[1], (base + (number(r) - base) * left).toFixed(1)], i + metering.dry.length, false)),
  ];
};

const rain = (day: string, inches: string, wind_from: string): Told => ({
  at: `${day}T20:00:00-04:00`,
  observed_at: `${day}/${day}`,
  kind: 'rain-fell',
  place: whole,
  body: { amount: typed(inches, 'length', 'in'), wind_from, while: 'parked' },
});

const hose = (at: string, station: string, result: 'came-in' | 'stayed-dry', minutes: string): Told => ({
  at,
  kind: 'water-test',
  place: outside(station),
  body: { how: 'hose', result, ran_for: typed(minutes, 'duration', 'min'), kept_dry: true },
});

/** Another end: a storm a week after the leak was called stopped, and the wall as wet as before. */
const CAME_BACK: readonly Told[] = [rain('2026-10-23', '1.4', 'road'), ...metered('2026-10-25', 1)];

const byTime = (told: readonly Told[]): readonly Told[] => told.toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));

const STORY: readonly Told[] = [
  hose('2026-10-04T10:20:00-04:00', BELT, 'stayed-dry', '8'),
  hose('2026-10-04T10:45:00-04:00', WINDOW, 'came-in', '5'),
  { at: '2026-10-04T15:30:00-04:00', kind: 'rebedded', place: outside(WINDOW), body: { bedded_on: 'butyl-tape', wood: 'damp' } },
  rain('2026-10-10', '0.6', 'road'),
  rain('2026-10-16', '0.9', 'calm'),
  ...LEFT.flatMap(([day, left]) => metered(day, left)),
];

/**
 * The logbook of the demo with what followed, up to and with a day; written by a second phone that held the first one's lines.
 *
 * @param until  civil day, such as 2026-10-18, or an hour of it, such as 2026-10-04T11
 * @param end    how it went on after the leak was called stopped
 */
export const demoUntil = (until: string, end: 'held' | 'came-back' = 'held'): string => {
  const before = demoLines();
  const last = before.at(-1);
  const known = last ? [{ device: last.entry.device, counter: last.entry.counter, hash: last.hash }] : [];
  const story = teller(DEMO_RIG, '01890000-0000-7000-8000-0000000000d4', 'Robin', (kind) => kindById(kind)?.version ?? 1, known);
  for (const told of byTime(end === 'held' ? STORY : [...STORY, ...CAME_BACK])) if (told.at.slice(0, until.length) <= until) story.tell(told);
  return writeLogbook([...before, ...story.lines()]);
};

/** What a meter, a thermometer and a rain gauge say; nothing of any seal, and no stain that somebody saw. */
const MEASURED: readonly string[] = ['rig-described', 'layout-placed', 'rig-facts', 'meter', 'stay', 'wood-moisture-pin', 'air-and-skin', 'lived-air', 'rain-fell'];

/** The demo as it would be if nobody had ever looked at a bead: described, metered, and nothing else. */
export const demoMeteredOnly = (): string => {
  const story = teller(DEMO_RIG, '01890000-0000-7000-8000-0000000000d5', 'Robin', (kind) => kindById(kind)?.version ?? 1);
  for (const { entry } of demoLines())
    if (MEASURED.includes(entry.kind)) story.tell({ at: entry.recorded_at, observed_at: entry.observed_at, kind: entry.kind, place: entry.place, body: entry.body });
  return writeLogbook(story.lines());
};
