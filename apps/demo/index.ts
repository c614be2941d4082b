import { asksAt, kindById, soundBody } from '../../src/entries';
import type { Line } from '../../src/logbook';
import { type Answers, layoutFrom, type Rig, walkingOrder } from '../../src/rig';
import type { AnyKind, EntryId, Side, Station } from '../../src/terms';
import { isoDay, parseDay, type QuantityId } from '../../src/units';
import { rigBook } from '../rig-book';
import { METER, METERINGS, type Reading, SILL } from './metering';
import { AIR_AND_SKIN, DONE, type Figure, type Found, LEAKING, type Pick, ROUNDS, type Round, WEATHERED } from './scenario';
import { lot, type Teller, teller, typed } from './teller';

/** The demo's rig id: fixed, so that loading it twice changes nothing and one tap removes it. */
export const DEMO_RIG = '01890000-0000-7000-8000-000000000001';
const DEVICE = '01890000-0000-7000-8000-0000000000d1';

const ANSWERS: Answers = { name: 'Plover', kind: 'travel-trailer', year: 2014, skin: 'fibreglass', construction: 'hung', roof: 'tpo', slides_road: 1, slides_curb: 0 };

const describedAt = '2023-10-14T09:05:00-04:00';

const isFigure = (v: unknown): v is Figure => typeof v === 'object' && v !== null && 'figure' in v;

const bodyOf = (told: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> =>
  Object.fromEntries(Object.entries(told).map(([key, v]) => [key, isFigure(v) ? typed(v.figure[0], v.figure[1] as QuantityId, v.figure[2]) : v]));

const stationFor = (rig: Rig, pick: Pick): Station => {
  const found = rig.stations.find((s) => s.part.startsWith(pick.part) && s.face === pick.face && (pick.axle === undefined || s.axle === pick.axle));
  if (!found) throw new Error(`the demo rig has no ${pick.part} on ${pick.face}`);
  return found;
};

/** Wall-clock text `seconds` after another, same offset. */
const later = (at: string, seconds: number): string => {
  const offset = at.slice(19);
  const minutes = Number(at.slice(11, 13)) * 60 + Number(at.slice(14, 16)) + Math.floor(seconds / 60);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${at.slice(0, 11)}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}:${two(Math.floor(seconds) % 60)}${offset}`;
};

const describe = (story: Teller): Rig => {
  const layout = layoutFrom(ANSWERS);
  if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
  const at = describedAt;
  const whole = { at: 'rig' } as const;
  const { name, kind, skin, construction, roof } = ANSWERS;
  story.tell({ at, kind: 'rig-described', place: whole, body: { name, kind, year: typed('2014', 'count', 'count'), skin, construction, roof } });
  story.tell({ at: later(at, 20), kind: 'layout-placed', place: whole, body: { layout: layout.value } });
  for (const axle of layout.value.axles)
    story.tell({
      at: later(at, 60),
      kind: 'set-pressure',
      place: whole,
      body: { axle: axle.id, pressure: typed('65', 'gauge-pressure', 'psi'), temperature: typed('68', 'temperature', 'f') },
    });
  story.tell({
    at: later(at, 90),
    kind: 'rig-facts',
    place: whole,
    body: { roof_walkable: 'no', warranty_months: typed('12', 'months', 'months'), stud_spacing: typed('16', 'length', 'in') },
  });
  story.tell({
    at: later(at, 100),
    kind: 'meter',
    place: whole,
    body: { name: METER, scale: 'pin', calibrated_at: typed('68', 'temperature', 'f'), correction: 'linear', repeatability: typed('0.5', 'moisture-content', 'percent') },
  });
  story.tell({
    at: later(at, 120),
    observed_at: '2023-10-14/2026-10-03',
    kind: 'stay',
    place: whole,
    body: {
      place_name: 'Home, open yard',
      heading: typed('90', 'angle', 'deg'),
      nose_up: typed('0.8', 'angle', 'deg'),
      curb_up: typed('0.6', 'angle', 'deg'),
      cover: 'open',
      ground: 'gravel',
      slides: 'in',
    },
  });
  return rigBook(DEMO_RIG, undefined, story.lines()).state.subject;
};

/** Beads age a little with the years, the sunny side first: a steady invention, the same on every machine. */
const agedGrade = (station: Station, round: number): string => {
  const sunny = station.face === 'curb' || station.face === 'roof';
  return lot(station.id) < (sunny ? 0.06 : 0.015) * round ? 'S1' : 'S0';
};

const wheel = (station: Station): number => (station.face === 'road' ? 0 : 2) + (station.axle === 'A1' ? 0 : 1);

type Answer = (station: Station, round: Round, nth: number) => Readonly<Record<string, unknown>> | undefined;

/** What the walker answers where nothing stands in the scenario. Kinds not named here are answered as sound, or left. */
const USUAL: Readonly<Record<string, Answer>> = {
  'seal-grade': (station, _round, nth) => ({ grade: agedGrade(station, nth) }),
  'tyre-pressure': (station, round) => ({
    pressure: typed(round.psi[wheel(station)] ?? '', 'gauge-pressure', 'psi'),
    tyre_temperature: typed(round.air_f, 'temperature', 'f'),
    rested: 'cold',
    driven_since_set: nthIsTrip(round) ? 'yes' : 'no',
  }),
  'tyre-tread': (_station, _round, nth) => ({ depth: typed(String(8 - Math.floor(nth / 3)), 'small-length', '32in') }),
  'tyre-date-code': (_station, _round, nth) => (nth === 0 ? { code: '2322' } : undefined),
};

const nthIsTrip = (round: Round): boolean => round.begun.slice(5, 7) === '10';

const answersAt = (
  station: Station,
  side: Side,
  round: Round,
  nth: number,
  found: readonly Found[],
): readonly { readonly kind: AnyKind; readonly body: object; readonly note?: string }[] => {
  if (found.length > 0)
    return found.flatMap((f) => {
      const kind = kindById(f.kind);
      return kind ? [{ kind, body: bodyOf(f.body), ...(f.note === undefined ? {} : { note: f.note }) }] : [];
    });
  return asksAt(station, side).asks.flatMap((kind) => {
    const usual = USUAL[kind.id];
    const body = usual ? usual(station, round, nth) : soundBody(kind);
    return body ? [{ kind, body }] : [];
  });
};

/** The last look that found something wrong, by station: what later care names. */
type LastFound = Map<string, EntryId>;

const walk = (story: Teller, rig: Rig, round: Round, nth: number, lastFound: LastFound): void => {
  const steps = walkingOrder(rig, { form: 'full', inside: [stationFor(rig, LEAKING).id] });
  const by = round.by;
  const id = story.tell({ at: round.begun, by, kind: 'round-begun', place: { at: 'rig' }, body: { form: 'full', steps: steps.map(({ station, side }) => ({ station, side })) } });
  let clock = 30;
  for (const { station: stationId, side } of steps) {
    const station = rig.stations.find((s) => s.id === stationId);
    if (!station) continue;
    const place = { at: 'station', station: station.id, side } as const;
    const found = round.found.filter((f) => stationFor(rig, f.pick).id === station.id && (f.side ?? 'outside') === side);
    const spent = 18 + Math.round(lot(`${round.begun} ${station.id}`) * 24);
    clock += spent;
    for (const answer of answersAt(station, side, round, nth, found)) {
      const told = story.tell({
        at: later(round.begun, clock),
        by,
        kind: answer.kind.id,
        place,
        body: answer.body,
        round: id,
        spent_s: spent,
        ...(answer.note === undefined ? {} : { note: answer.note }),
      });
      if (found.length > 0) lastFound.set(station.id, told);
    }
    if (side === 'inside') clock = meterTheWall(story, rig, round, id, clock);
  }
  story.tell({ at: later(round.begun, clock + 30), by, kind: 'round-ended', place: { at: 'rig' }, body: { end: 'finished' }, round: id });
};

/** The dry places first, then the wall: half a minute a reading. */
const meterTheWall = (story: Teller, rig: Rig, round: Round, id: EntryId, clock: number): number => {
  const metering = METERINGS[round.begun.slice(0, 10)];
  if (!metering) throw new Error(`nothing was metered in the round of ${round.begun}`);
  const { face } = stationFor(rig, LEAKING);
  let now = clock;
  const read = ([x, y, percent]: Reading, more: object): void => {
    now += 30;
    story.tell({
      at: later(round.begun, now),
      by: round.by,
      kind: 'wood-moisture-pin',
      place: { at: 'point', face, side: 'inside', point_m: [x, y] },
      round: id,
      body: {
        reading: typed(percent, 'moisture-content', 'percent'),
        wood_temperature: typed(round.air_f, 'temperature', 'f'),
        material: 'plywood',
        surface: 'dry',
        ...more,
        meter: METER,
      },
    });
  };
  for (const reading of metering.dry) read(reading, { dry_reference: true });
  for (const reading of metering.wall) read(reading, {});
  return now + 30;
};

/** The demo rig's logbook: the same lines on every machine. */
export const demoLines = (): readonly Line[] => {
  const story = teller(DEMO_RIG, DEVICE, 'Robin', (kind) => kindById(kind)?.version ?? 1);
  const rig = describe(story);
  const lastFound: LastFound = new Map();
  const events = [
    ...ROUNDS.map((round, nth) => ({ at: round.begun, happen: () => walk(story, rig, round, nth, lastFound) })),
    ...WEATHERED.map(({ body, ...rest }) => ({ at: rest.at, happen: () => story.tell({ ...rest, place: { at: 'rig' }, body: bodyOf(body) }) })),
    {
      at: AIR_AND_SKIN.at,
      happen: () =>
        story.tell({
          at: AIR_AND_SKIN.at,
          kind: 'air-and-skin',
          place: { at: 'point', face: stationFor(rig, LEAKING).face, side: 'inside', point_m: SILL },
          body: bodyOf(AIR_AND_SKIN.body),
        }),
    },
    ...DONE.map((done) => ({
      at: done.at,
      happen: () => {
        const { pick, settles, body, ...rest } = done;
        const station = stationFor(rig, pick).id;
        const named = settles ? lastFound.get(station) : undefined;
        story.tell({ ...rest, place: { at: 'station', station, side: 'outside' }, body: bodyOf(body), ...(named === undefined ? {} : { concerns: [named] }) });
      },
    })),
  ].sort((a, b) => (a.at < b.at ? -1 : 1));
  for (const event of events) event.happen();
  return story.lines();
};

/** The civil day on which the demo was last walked. */
export const DEMO_DAY = isoDay(parseDay(ROUNDS.at(-1)?.begun.slice(0, 10) ?? '') ?? (0 as never));
