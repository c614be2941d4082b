import type { FaceId, Side, Station, StationId } from '../terms';
import { ladderSpots, type Stretch } from './ladder-spots';
import { onTheWay, spotOf, WALL_WORDS, type Wall, wallOrder } from './loop';
import type { Rig } from './rig';
import { box } from './shapes';
import { ARM_REACH_M, nearestEdge } from './station-facts';

export type RoundForm = 'full' | 'partial' | 'pre-trip';

export type WalkingOptions = {
  readonly form: RoundForm;
  /** Stations at which a reading inside is wanted. */
  readonly inside: readonly StationId[];
  /** A partial round keeps to these faces. */
  readonly faces?: readonly FaceId[];
};

/** One stop of a round. `group` says from where, in words: a new group is a new place to stand. */
export type Stop = { readonly station: StationId; readonly side: Side; readonly group: string };

/** Kinds of station a person goes round before the wheels turn. Common practice, no published source. */
const BEFORE_A_TRIP = new Set([
  'tyre',
  'step',
  'entry-door',
  'compartment-door',
  'lp-compartment',
  'battery-compartment',
  'cord-hatch',
  'inlet-power',
  'awning-arm',
  'awning-fabric',
  'vent-hatch',
  'antenna',
  'stabiliser',
  'tongue-leg',
  'tie-down',
  'lamp',
  'coupler',
  'kingpin',
  'drain-outlet',
  'ladder-fixed',
  'folding-seal',
]);

/** Whether the pre-trip round stops here. A slide-out is seen at its flange: in, and its locks on. */
export const isBeforeATrip = (station: Station): boolean => BEFORE_A_TRIP.has(station.looks) || station.part === 'slide-flange';

type Placed = { readonly station: Station; readonly wall: Wall; readonly along: number };

/** The skin of a wall is looked at from a few steps away, before what is on it. */
const skinFirst = (p: Placed): number => (p.station.group === 'area' ? 0 : 1);

const byWalk = (a: Placed, b: Placed): number =>
  wallOrder(a.wall) - wallOrder(b.wall) ||
  skinFirst(a) - skinFirst(b) ||
  onTheWay(a.wall, a.along) - onTheWay(b.wall, b.along) ||
  box(b.station.shape).y1 - box(a.station.shape).y1 ||
  (a.station.id < b.station.id ? -1 : 1);

const place = (rig: Rig, station: Station): Placed => ({ station, ...spotOf(rig, station) });

const stop = (station: Station, group: string, side: Side = 'outside'): Stop => ({ station: station.id, side, group });

/** The wall a ladder leans on to reach a station, and the stretch of it that must be within reach. */
const ladderNeed = (rig: Rig, station: Station): { readonly wall: Wall; readonly stretch: Stretch } => {
  const whole = station.shape.form !== 'lines';
  const b = box(station.shape);
  const roof = rig.faces.find((f) => f.id === 'roof')?.outline_m ?? [];
  if (station.face === 'roof') {
    const { wall } = nearestEdge(roof, station.shape);
    const across = wall === 'front' || wall === 'rear';
    return { wall: wall as Wall, stretch: { id: station.id, from: across ? b.y0 : b.x0, to: across ? b.y1 : b.x1, whole } };
  }
  const { wall, along } = spotOf(rig, station);
  const own =
    station.face === 'curb' ||
    station.face === 'road' ||
    station.face === 'front' ||
    station.face === 'rear' ||
    station.face === 'step' ||
    station.face.endsWith('-outer') ||
    station.face.endsWith('-top');
  return { wall, stretch: { id: station.id, from: own ? b.x0 : along, to: own ? b.x1 : along, whole } };
};

const ladderStops = (rig: Rig, stations: readonly Station[]): readonly Stop[] => {
  const field = stations.filter((s) => s.group === 'area');
  const walls = new Map<Wall, Stretch[]>();
  for (const s of stations.filter((x) => x.group !== 'area')) {
    const { wall, stretch } = ladderNeed(rig, s);
    walls.set(wall, [...(walls.get(wall) ?? []), stretch]);
  }
  const byId = new Map(stations.map((s) => [s.id, s]));
  const stops: Stop[] = [];
  let n = 0;
  for (const wall of [...walls.keys()].toSorted((a, b) => wallOrder(a) - wallOrder(b))) {
    const spots = ladderSpots(walls.get(wall) ?? [], ARM_REACH_M).toSorted((a, b) => onTheWay(wall, a.at) - onTheWay(wall, b.at));
    spots.forEach((spot, i) => {
      n++;
      // A long seam is asked about once, at the last place on the way from which a piece of it is seen.
      const done = spot.ids.filter((id) => !spots.slice(i + 1).some((later) => later.ids.includes(id)));
      const here = done.flatMap((id) => byId.get(id) ?? []).map((s) => place(rig, s));
      for (const p of here.toSorted((a, b) => onTheWay(wall, a.along) - onTheWay(wall, b.along) || (a.station.id < b.station.id ? -1 : 1)))
        stops.push(stop(p.station, `Ladder spot ${n}, ${WALL_WORDS[wall]}`));
    });
  }
  const last = stops.at(-1)?.group ?? 'From a ladder';
  return [...stops, ...field.map((s) => stop(s, last))];
};

const UNREACHED = 'Not reachable without stepping on the roof';

const insideStops = (rig: Rig, stations: readonly Station[]): readonly Stop[] =>
  stations
    .map((s) => place(rig, s))
    .toSorted(byWalk)
    .map((p) => stop(p.station, 'Inside', 'inside'));

/**
 * The stations of a round in a short walk: everything reached from the ground in one loop, then ladder places with as few
 * moves as possible, then the roof where its maker says it may be walked on, then underneath, then inside.
 *
 * @param options  full, partial (some faces) or pre-trip; and where a reading inside is wanted
 * @returns        every station of the round once on its outside, with the place to stand in words; nothing is dropped:
 *                 what a ladder does not reach on a roof that may not be walked is listed as not reachable
 * @assumes        arm reach from a ladder and reach from the ground are ours (`ARM_REACH_M`, `REACH_FROM_GROUND_M`)
 */
export const walkingOrder = (rig: Rig, options: WalkingOptions): readonly Stop[] => {
  const wanted = rig.stations.filter((s) => !s.retired && (options.faces === undefined || options.faces.includes(s.face)) && (options.form !== 'pre-trip' || isBeforeATrip(s)));
  const inside = rig.stations.filter((s) => !s.retired && options.inside.includes(s.id) && (options.faces === undefined || options.faces.includes(s.face)));
  if (options.form === 'pre-trip') return preTrip(rig, wanted);
  const from = (reach: Station['reach']): readonly Station[] => wanted.filter((s) => s.reach === reach);
  const ground = from('ground')
    .map((s) => place(rig, s))
    .toSorted(byWalk);
  const roof = from('roof')
    .map((s) => ({ station: s, box: box(s.shape) }))
    .toSorted((a, b) => a.box.x0 - b.box.x0 || a.box.y0 - b.box.y0)
    .map((p) => p.station);
  const walkable = rig.roof_walkable === 'yes';
  const under = from('under')
    .map((s) => ({ station: s, box: box(s.shape) }))
    .toSorted((a, b) => a.box.x0 - b.box.x0 || a.box.y0 - b.box.y0)
    .map((p) => p.station);
  return [
    ...ground.map((p) => stop(p.station, `From the ground, ${WALL_WORDS[p.wall]}`)),
    ...ladderStops(rig, from('ladder')),
    ...roof.map((s) => stop(s, walkable ? 'On the roof' : UNREACHED)),
    ...under.map((s) => stop(s, 'From below')),
    ...from('inside').map((s) => stop(s, 'Inside')),
    ...insideStops(rig, inside),
  ];
};

/** Before a trip nobody climbs: what is high is looked at from the ground, and roof vents are shut from inside. */
const preTrip = (rig: Rig, stations: readonly Station[]): readonly Stop[] => {
  const fromInside = (s: Station): boolean => s.looks === 'vent-hatch';
  const outside = stations
    .filter((s) => !fromInside(s))
    .map((s) => place(rig, s))
    .toSorted(byWalk);
  return [...outside.map((p) => stop(p.station, `From the ground, ${WALL_WORDS[p.wall]}`)), ...stations.filter(fromInside).map((s) => stop(s, 'Inside'))];
};
