import type { State } from '../../logbook';
import { pointOf, type Rig } from '../../rig';
import type { EntryId } from '../../terms';
import type { CivilDay } from '../../units';
import type { Because } from '../finding';
import { nextRound } from '../next-round';
import { clustered, type Wet } from './clusters';
import { delaminationsOf, type LooseSkins, looseSkinOf } from './delamination';
import { type Known, type LeakTrace, leakOf, standsOut } from './leak';
import { airMoisture } from './lived-air';
import { realRains } from './proof';
import { type Ranking, rankWaysIn } from './ranking';
import { comparable, whyNoNumber } from './readings';
import { METER_KINDS, SIGNS, sameRecord, type WaterRecord, waterRecord } from './record';
import { dryReferences } from './reference';
import { SCALE_WORD } from './scales';
import { PRACTICE } from './sources';
import { apart, isAt, type Metered, placesOf, placeWords, type Shown, shownPlaces, showsWet } from './spots';
import { sweatingAt } from './sweating';
import type { Comparable, Leak, Panel, Spot, Water } from './water-types';
import { type Weighed, weigh } from './yardsticks';

/** What is known of water, with what it was made from: kept and taken over as long as nothing that it rests on changes. */
export type WaterJudged = {
  readonly rig: Rig;
  readonly on: CivilDay;
  readonly record: WaterRecord;
  readonly water: Water;
  readonly traces: readonly LeakTrace[];
  readonly places: readonly Metered[];
  readonly loose: LooseSkins;
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
  const of = rig.faces.find((f) => f.id === face);
  const name = side === 'inside' ? (of?.inside_name ?? `${face}, inside`) : `${of?.name ?? face}, outside`;
  const newest = spots.flatMap((s) => s.readings).toSorted((a, b) => b.day - a.day);
  const reference = newest.map(referenceFor).find((r) => r !== undefined);
  return {
    id,
    face,
    side,
    scale,
    meter,
    words: `${name}, ${SCALE_WORD[scale]}${meter === '' ? '' : ` (${meter})`}`,
    spots,
    ...(reference ? { reference } : {}),
  };
};

const BLANK = { frozen: true, 'surface-wet': true, 'no-wood': true } as const;
/** Two places no farther apart are one (a hand's width, as for places drawn by hand). [m] */
const ONE_PLACE = 0.1;

const together = (entries: readonly EntryId[], one: string, many: string): readonly Because[] =>
  entries.length === 0 ? [] : [{ text: entries.length === 1 ? `A reading ${one}.` : `${entries.length} readings ${many}.`, entries, source: PRACTICE }];

/** What could not be used as it stands: off its face, without a number, read with two meters at one place. */
const setAside = (readings: readonly Comparable[], places: readonly Metered[]): readonly Because[] => {
  const off = readings.filter((r) => r.off_panel);
  const two = places.flatMap((a, i) =>
    places
      .slice(i + 1)
      .filter((b) => b.panel !== a.panel && a.face === b.face && a.side === b.side && apart(a.point_m, b.point_m) <= ONE_PLACE)
      .flatMap((b) => [a.id, b.id]),
  );
  const blank = (Object.keys(BLANK) as (keyof typeof BLANK)[]).map((why) => ({ why, all: readings.filter((r) => r.no_number === why) }));
  return [
    ...together(
      off.map((r) => r.entry),
      'lies outside the face as it is drawn: judged by itself, and left off the map. Correct its place, or the face',
      'lie outside their faces as drawn: judged by themselves, and left off the map. Correct their places, or the face',
    ),
    ...blank.flatMap(({ why, all }) =>
      together(
        all.map((r) => r.entry),
        `gives no number: ${whyNoNumber(why)}`,
        `give no number: ${whyNoNumber(why)}`,
      ),
    ),
    ...(two.length === 0
      ? []
      : [{ text: 'One place was read with two meters or on two scales: those are two courses, and never put on one line.', entries: [...new Set(two)], source: PRACTICE }]),
  ];
};

/** Panels that are high as their surroundings are, and places that only sweat. */
const noLeak = (panels: readonly Panel[], places: readonly Metered[]): Water['no_leak'] =>
  panels.flatMap((p) =>
    (['weather', 'condensation'] as const).flatMap((why) => {
      const alike = p.spots.filter((s) => s.state === why);
      const most = alike.toSorted((a, b) => (b.readings.at(-1)?.value ?? 0) - (a.readings.at(-1)?.value ?? 0))[0];
      const weighed = places.find((m) => m.id === most?.id)?.weighed.findLast((w) => w.state === why);
      return weighed ? [{ panel: p.id, why, because: weighed.beside }] : [];
    }),
  );

const wasWet = (m: Metered): boolean => m.weighed.some((w) => w.state === 'wet');
const stoodOut = (m: Metered): boolean => m.weighed.some(standsOut);

/** A question needs something wet: places that are only damp belong to one beside them, or are watched by themselves. */
const isWet = (wet: Wet): boolean => wet.metered.some(wasWet) || wet.shown.length > 0;

const told = ({ open }: LooseSkins, rig: Rig): Pick<Water, 'loose_skins'> => {
  if (open.length === 0) return {};
  const words = (d: (typeof open)[number]): string => {
    const at = pointOf(rig, d.place);
    return placeWords({ face: d.face, side: d.side, point_m: at?.point ?? [0, 0], ...('station' in d.place ? { station: d.place.station } : {}) }, rig);
  };
  return { loose_skins: open.map((d) => looseSkinOf(d, words(d))) };
};

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
  const looseSkins = (places: readonly Metered[], leaks: readonly Leak[]): LooseSkins =>
    delaminationsOf({ rig, on, looks: record.of('skin-condition'), taps: record.of('tap-sound'), places, leaks });
  if (standings.length === 0 && signs.length === 0) {
    const loose = looseSkins([], []);
    return { rig, on, record, round, water: { ...NOTHING, ...told(loose, rig) }, traces: [], places: [], loose };
  }
  const readings = standings.flatMap((s) => comparable(s, rig) ?? []);
  const referenceFor = dryReferences(readings);
  const airs = record.of('lived-air');
  const measured = record.of('air-and-skin');
  const all = readings.map((r) => weigh(r, { reference: referenceFor(r), air: airMoisture(airs, r.day), sweat: sweatingAt(measured, r, rig) }));
  const seen = shownPlaces(signs, rig);
  const known: Known = {
    rig,
    record,
    seen,
    weighed: new Map(all.map((w) => [w.reading.entry, w])),
    standing: (id) => state.standing.get(id),
    rains: realRains(record.of('rain-fell')),
    round,
  };
  const places = placesOf(all);
  const beside = (m: Metered): readonly EntryId[] => signs.filter((s) => showsWet(s) && isAt(m, s.place, rig)).map((s) => s.entry.id);
  const spots = new Map(places.map((m) => [m.id, spotOf(rig, m, beside(m))]));
  const sweats = (s: Shown): boolean => sweatingAt(measured, { ...s, observed_at: s.standing.observed_at }, rig)?.skin === 'sweats';
  const alone = seen.filter((s) => !places.some((m) => isAt(m, s.place, rig)) && !sweats(s));
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
  const leaks = traces.map((t) => t.leak);
  const loose = looseSkins(places, leaks);
  return {
    rig,
    on,
    record,
    round,
    places,
    traces,
    loose,
    water: { panels, leaks, ...told(loose, rig), no_leak: noLeak(panels, places), set_aside: setAside(readings, places) },
  };
};

/** Everything that is known about water in the rig on one day. */
export const waterOf = (rig: Rig, state: State<Rig>, on: CivilDay): Water => judgeWater(rig, state, on).water;
