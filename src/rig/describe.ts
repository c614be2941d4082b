import type { Station, StationId } from '../terms';
import type { Layout, Meter, Overall, Rig } from './rig';

/**
 * How descriptions change a rig. Each is a pure step from one rig to the next; the kinds of description entries
 * call them in the order of what was known when, and nothing else changes a rig.
 */

/** Facts that a person states about the rig as a whole. */
export type RigFacts = Partial<
  Pick<
    Rig,
    | 'name'
    | 'kind'
    | 'year'
    | 'skin'
    | 'construction'
    | 'roof'
    | 'roof_walkable'
    | 'set_pressure_pa'
    | 'set_temperature_k'
    | 'set_altitude_m'
    | 'warranty_months'
    | 'stud_spacing_m'
  >
>;

/** Facts about one station that a person states after the layout was written. */
export type StationFacts = Partial<Pick<Station, 'sealed_with' | 'sealed_to' | 'last_sealed' | 'behind' | 'size' | 'hinge' | 'bead'>>;

/** Takes a layout's result as the rig's own drawing, in place of the one before. What a person added stays, where its face still exists. */
export const applyLayout = (rig: Rig, layout: Layout): Rig => {
  const drawn = new Set(layout.stations.map((s) => s.id));
  const faces = new Set(layout.faces.map((f) => f.id));
  return {
    ...rig,
    overall: layout.overall,
    levels: layout.levels,
    faces: layout.faces,
    axles: layout.axles,
    slides: layout.slides,
    stations: [...layout.stations, ...rig.stations.filter((s) => s.added && !drawn.has(s.id) && faces.has(s.face))],
  };
};

/** Adds a station, or puts it in the place of the one with the same id. */
export const applyStation = (rig: Rig, station: Station): Rig => {
  const at = rig.stations.findIndex((s) => s.id === station.id);
  return { ...rig, stations: at < 0 ? [...rig.stations, station] : rig.stations.map((s, i) => (i === at ? station : s)) };
};

const change = (rig: Rig, id: StationId, to: (station: Station) => Station): Rig => ({ ...rig, stations: rig.stations.map((s) => (s.id === id ? to(s) : s)) });

/** Takes a station out of the round. It stays in the logbook and on the drawing of the past. */
export const applyRetire = (rig: Rig, id: StationId): Rig => change(rig, id, (s) => ({ ...s, retired: true }));

export const applyRename = (rig: Rig, id: StationId, name: string): Rig => change(rig, id, (s) => ({ ...s, name }));

export const applyStationFacts = (rig: Rig, id: StationId, facts: StationFacts): Rig => change(rig, id, (s) => ({ ...s, ...facts }));

/** Facts that are given replace those known before; set pressures are kept axle by axle. */
export const applyFacts = (rig: Rig, facts: RigFacts): Rig => ({ ...rig, ...facts, set_pressure_pa: { ...rig.set_pressure_pa, ...facts.set_pressure_pa } });

/** Describes a meter, or describes it anew: what is not given stays, unless it is now said to have another scale. */
export const applyMeter = (rig: Rig, meter: Meter): Rig => {
  const at = rig.meters.findIndex((m) => m.name === meter.name);
  const before = rig.meters[at];
  const now = before?.scale === meter.scale ? { ...before, ...meter } : meter;
  return { ...rig, meters: at < 0 ? [...rig.meters, now] : rig.meters.map((m, i) => (i === at ? now : m)) };
};

/** A size the person has measured or read from the plate. */
export const applySize = (rig: Rig, size: keyof Overall, value_m: number): Rig => {
  const confirmed = rig.confirmed.includes(size) ? rig.confirmed : [...rig.confirmed, size];
  const all = (['length_m', 'width_m', 'height_m'] as const).every((s) => confirmed.includes(s));
  return { ...rig, overall: { ...rig.overall, [size]: value_m }, confirmed, overall_certainty: all ? 'confirmed' : 'typical' };
};
