import type { Standing } from '../../logbook';
import { faceOf, pointOf, type Rig } from '../../rig';
import { type EntryId, type FaceId, type FacePoint, type Place, placeKey, type Side, type StationId } from '../../terms';
import { panelKey } from './reference';
import { whereOn } from './where-on';
import type { Weighed } from './yardsticks';

/** A place with its readings weighed, before anything is known of leaks. */
export type Metered = {
  readonly id: EntryId;
  readonly place: Place;
  readonly face: FaceId;
  readonly side: Side;
  readonly point_m: FacePoint;
  readonly station?: StationId;
  readonly panel: string;
  readonly weighed: readonly Weighed[];
};

/** A place that showed water to eye or hand. */
export type Shown = Omit<Metered, 'panel' | 'weighed'> & { readonly standing: Standing };

/** A hand's width: a place that is read again is found again within it (as for places drawn by hand). [m] */
const SAME_PLACE = 0.1;
/** Readings of one day farther apart than this are two places of a grid. [m] */
const GRID = 0.02;

export const apart = (a: FacePoint, b: FacePoint): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

type Growing = { readonly first: Weighed; readonly all: Weighed[] };

/**
 * Readings put together place by place. Of one panel: the same station, or the nearest place within a hand's width that was not
 * read on that day already, so that the points of a grid stay apart and a place that is read again next month is the same place.
 */
export const placesOf = (weighed: readonly Weighed[]): readonly Metered[] => {
  const byPanel = new Map<string, Growing[]>();
  for (const w of weighed) {
    const { reading } = w;
    const panel = panelKey(reading);
    const known = byPanel.get(panel) ?? [];
    byPanel.set(panel, known);
    const mine = reading.station === undefined ? nearest(known, w) : known.find((g) => g.first.reading.station === reading.station);
    if (mine) mine.all.push(w);
    else known.push({ first: w, all: [w] });
  }
  return [...byPanel].flatMap(([panel, all]) => all.map((g) => metered(panel, g)));
};

const nearest = (known: readonly Growing[], { reading }: Weighed): Growing | undefined => {
  const near = known.flatMap((g) => {
    if (g.first.reading.station !== undefined) return [];
    const away = apart(g.first.reading.point_m, reading.point_m);
    const readThatDay = g.all.some((w) => w.reading.day === reading.day);
    return away <= (readThatDay ? GRID : SAME_PLACE) ? [{ g, away }] : [];
  });
  return near.toSorted((a, b) => a.away - b.away)[0]?.g;
};

const metered = (panel: string, { first, all }: Growing): Metered => {
  const { entry, place, face, side, point_m, station } = first.reading;
  return { id: entry, place, face, side, point_m, ...(station === undefined ? {} : { station }), panel, weighed: all };
};

/** Whether an entry's place is this place: the same station and side, or within a hand's width on the same side of the face. */
export const isAt = (spot: Pick<Metered, 'place' | 'face' | 'side' | 'point_m'>, place: Place, rig: Rig): boolean => {
  if (place.at === 'rig' || place.side !== spot.side) return false;
  if (placeKey(place) === placeKey(spot.place)) return true;
  if ('station' in place || 'station' in spot.place) return false;
  const at = pointOf(rig, place);
  return at !== undefined && at.face === spot.face && apart(at.point, spot.point_m) <= SAME_PLACE;
};

const WET_SIGNS: Readonly<Record<string, ReadonlySet<string>>> = {
  'inside-signs': new Set(['stain', 'soft-floor', 'soft-ceiling', 'soft-wall', 'water', 'mould']),
  'skin-condition': new Set(['soft', 'stain']),
};

/** Whether an entry shows water where no meter was read: a stain, water, mould, something soft. A smell has no place. */
export const showsWet = (s: Standing): boolean => {
  const body = s.body as { readonly verdict?: string; readonly signs?: readonly string[]; readonly deck?: string };
  if (s.entry.kind === 'roof-soft-spot') return body.deck === 'gives' || body.deck === 'soft';
  return body.verdict === 'something-wrong' && (body.signs ?? []).some((sign) => WET_SIGNS[s.entry.kind]?.has(sign));
};

/** Places that show water now: the latest look at each, where it shows some; named by the first of the looks that did without a break. */
export const shownPlaces = (signs: readonly Standing[], rig: Rig): readonly Shown[] => {
  const byPlace = new Map<string, { first: Standing; last: Standing } | undefined>();
  for (const s of signs) {
    const key = `${s.entry.kind} ${placeKey(s.place)}`;
    const known = byPlace.get(key);
    byPlace.set(key, showsWet(s) ? { first: known?.first ?? s, last: s } : undefined);
  }
  return [...byPlace.values()].flatMap((look): readonly Shown[] => {
    if (!look) return [];
    const { place } = look.first;
    const at = pointOf(rig, place);
    if (!at || place.at === 'rig') return [];
    return [{ id: look.first.entry.id, place, face: at.face, side: place.side, point_m: at.point, ...('station' in place ? { station: place.station } : {}), standing: look.last }];
  });
};

/** A place in words: its station, or where on the face. */
export const placeWords = (spot: Pick<Metered, 'face' | 'side' | 'point_m' | 'station'>, rig: Rig): string => {
  const station = spot.station === undefined ? undefined : rig.stations.find((s) => s.id === spot.station);
  if (station) return spot.side === 'inside' ? `${station.name}, inside` : station.name;
  const face = faceOf(rig, spot.face);
  const name = face ? (spot.side === 'inside' ? face.inside_name : `${face.name}, outside`) : spot.face;
  return `${name}, ${whereOn(rig, spot.face, spot.side, spot.point_m)}`;
};
