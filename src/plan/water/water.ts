import type { State } from '../../logbook';
import type { Rig } from '../../rig';
import type { EntryId } from '../../terms';
import type { CivilDay } from '../../units';
import type { Because } from '../finding';
import { nextRound } from '../next-round';
import { clustered, type Wet } from './clusters';
import { type Known, type LeakTrace, leakOf, standsOut } from './leak';
import { airMoisture } from './lived-air';
import { realRains } from './proof';
import { type Ranking, rankWaysIn } from './ranking';
import { comparable, whyNoNumber } from './readings';
import { METER_KINDS, SIGNS, sameRecord, type WaterRecord, waterRecord } from './record';
import { dryReferences } from './reference';
import { SCALE_WORD } from './scales';
import { NEAR_TOGETHER, PRACTICE } from './sources';
import { apart, isAt, type Metered, placesOf, placeWords, type Shown, shownPlaces, showsWet } from './spots';
import { sweatingAt } from './sweating';
import type { Comparable, Panel, Spot, Water } from './water-types';
import { type Weighed, weigh } from './yardsticks';

/** What is known of water, with what it was made from: kept and taken over as long as nothing that it rests on changes. */
export type WaterJudged = {
  readonly rig: Rig;
  readonly on: CivilDay;
  readonly record: WaterRecord;
  readonly water: Water;
  readonly traces: readonly LeakTrace[];
  readonly places: readonly Metered[];
  readonly round: CivilDay | undefined;
};

const NOTHING: Water = { panels: [], leaks: [], no_leak: [], set_aside: [] };

/** The latest reading that says something; where none does, the latest. */
const latestOf = (m: Metered): Weighed => (m.weighed.findLast((w) => w.state !== 'not-known') ?? m.weighed.at(-1)) as Weighed;

const spotOf = (rig: Rig, m: Metered, signs: readonly EntryId[]): Spot => {
  const last = latestOf(m);
  const { id, place, face, side, point_m, station } = m;
  return {
    id,
    place,
    face,
    side,
    point_m,
    ...(station === undefined ? {} : { station }),
    words: placeWords(m, rig),
    readings: m.weighed.map((w) => w.reading),
    state: last.state,
    yardsticks: last.yardsticks,
    signs,
    because: last.because,
  };
};

const signSpot = (rig: Rig, s: Shown): Spot => {
  const { id, place, face, side, point_m, station } = s;
  const because: Because = { text: 'Water shows here to eye or hand; no meter was read.', entries: [s.standing.entry.id], source: PRACTICE };
  return {
    id,
    place,
    face,
    side,
    point_m,
    ...(station === undefined ? {} : { station }),
    words: placeWords(s, rig),
    readings: [],
    state: 'wet',
    yardsticks: {},
    signs: [s.standing.entry.id],
    because: [because],
  };
};

const panelOf = (rig: Rig, id: string, spots: readonly Spot[], referenceFor: (c: Comparable) => Panel['reference']): Panel | undefined => {
  const first = spots[0]?.readings[0];
  if (!first) return undefined;
  const { face, side, scale, meter } = first;
  const name = rig.faces.find((f) => f.id === face)?.name ?? face;
  const newest = spots.flatMap((s) => s.readings).toSorted((a, b) => b.day - a.day);
  const reference = newest.map(referenceFor).find((r) => r !== undefined);
  return {
    id,
    face,
    side,
    scale,
    meter,
    words: `${name}, ${side}, ${SCALE_WORD[scale]}${meter === '' ? '' : ` (${meter})`}`,
    spots,
    ...(reference ? { reference } : {}),
  };
};

/** What could not be used as it stands: off its face, without a number, read with two meters at one place. */
const setAside = (readings: readonly Comparable[], places: readonly Metered[]): readonly Because[] => {
  const off = readings.filter((r) => r.off_panel);
  const blank = readings.filter((r) => r.value === undefined && r.no_number !== undefined);
  const two = places.flatMap((a, i) =>
    places
      .slice(i + 1)
      .filter((b) => b.panel !== a.panel && a.face === b.face && a.side === b.side && apart(a.point_m, b.point_m) <= 0.1)
      .map((b) => [a, b] as const),
  );
  return [
    ...off.map((r) => ({
      text: 'This reading lies outside the face as it is drawn: it is judged by itself and left off the map. Correct its place, or the face.',
      entries: [r.entry],
      source: PRACTICE,
    })),
    ...blank.map((r) => ({ text: `This reading gives no number: ${whyNoNumber(r.no_number ?? 'no-wood')}.`, entries: [r.entry], source: PRACTICE })),
    ...two.map(([a, b]) => ({
      text: 'One place was read with two meters or scales: they are two courses, and never put on one line.',
      entries: [a.id, b.id],
      source: NEAR_TOGETHER,
    })),
  ];
};

/** Panels that are high as their surroundings are, and places that only sweat. */
const noLeak = (panels: readonly Panel[]): Water['no_leak'] =>
  panels.flatMap((p) =>
    (['weather', 'condensation'] as const).flatMap((why) => {
      const spots = p.spots.filter((s) => s.state === why);
      const [first] = spots;
      return first
        ? [
            {
              panel: p.id,
              why,
              because: first.because.slice(-1).map((b) => ({ ...b, entries: [...new Set([...b.entries, ...spots.flatMap((s) => s.readings.at(-1)?.entry ?? [])])] })),
            },
          ]
        : [];
    }),
  );

const wasWet = (m: Metered): boolean => m.weighed.some((w) => w.state === 'wet');
const stoodOut = (m: Metered): boolean => m.weighed.some(standsOut);

/** A question needs something wet: places that are only damp belong to one beside them, or are watched by themselves. */
const isWet = (wet: Wet): boolean => wet.metered.some(wasWet) || wet.shown.length > 0;

/**
 * Everything about water, judged anew or taken over.
 *
 * @param before  what was judged earlier; taken over where rig, day and every entry that speaks of water are the same
 */
export const judgeWater = (rig: Rig, state: State<Rig>, on: CivilDay, before?: WaterJudged): WaterJudged => {
  const record = waterRecord(state);
  const round = nextRound(rig, state, on)?.on;
  if (before && before.rig === rig && before.on === on && before.round === round && sameRecord(before.record, record)) return before;
  const standings = record.ofAll(Object.keys(METER_KINDS));
  const signs = record.ofAll(SIGNS);
  if (standings.length === 0 && signs.length === 0) return { rig, on, record, round, water: NOTHING, traces: [], places: [] };
  const readings = standings.flatMap((s) => comparable(s, rig) ?? []);
  const referenceFor = dryReferences(readings);
  const airs = record.of('lived-air');
  const measured = record.of('air-and-skin');
  const all = readings.map((r) => weigh(r, { reference: referenceFor(r), air: airMoisture(airs, r.day), sweat: sweatingAt(measured, r, rig) }));
  const known: Known = {
    rig,
    record,
    weighed: new Map(all.map((w) => [w.reading.entry, w])),
    standing: (id) => state.standing.get(id),
    rains: realRains(record.of('rain-fell')),
    round,
  };
  const places = placesOf(all);
  const seen = shownPlaces(signs, rig);
  const beside = (m: Metered): readonly EntryId[] => signs.filter((s) => showsWet(s) && isAt(m, s.place, rig)).map((s) => s.entry.id);
  const spots = new Map(places.map((m) => [m.id, spotOf(rig, m, beside(m))]));
  const alone = seen.filter((s) => !places.some((m) => isAt(m, s.place, rig)));
  const signSpots = new Map(alone.map((s) => [s.id, signSpot(rig, s)]));
  const dry = places.filter((m) => !stoodOut(m) && spots.get(m.id)?.state === 'dry').flatMap((m) => spots.get(m.id) ?? []);
  const rank = (wet: Wet, near: readonly Spot[], since: CivilDay): Ranking => rankWaysIn(rig, record, on, wet, near, since);
  const traces = clustered(rig, places.filter(stoodOut), alone)
    .filter(isWet)
    .map((wet) => leakOf(known, wet, new Map([...spots, ...signSpots]), dry, rank))
    .toSorted((a, b) => a.leak.since - b.leak.since || (a.leak.id < b.leak.id ? -1 : 1));
  for (const { leak } of traces) for (const spot of leak.spots) if (spots.has(spot.id)) spots.set(spot.id, spot);
  const ids = [...new Set(places.map((m) => m.panel))];
  const panels = ids
    .flatMap(
      (id) =>
        panelOf(
          rig,
          id,
          places.filter((m) => m.panel === id).flatMap((m) => spots.get(m.id) ?? []),
          referenceFor,
        ) ?? [],
    )
    .toSorted((a, b) => (a.id < b.id ? -1 : 1));
  return {
    rig,
    on,
    record,
    round,
    places,
    traces,
    water: { panels, leaks: traces.map((t) => t.leak), no_leak: noLeak(panels), set_aside: setAside(readings, places) },
  };
};

/** Everything that is known about water in the rig on one day. */
export const waterOf = (rig: Rig, state: State<Rig>, on: CivilDay): Water => judgeWater(rig, state, on).water;
