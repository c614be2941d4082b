import type { Station } from '../terms';
import { shapeInside } from './outline';
import type { Layout } from './rig';
import { ROUND_ITS_OWN } from './seams';
import { type Box, box, contains, overlaps } from './shapes';

/**
 * What would be wrong with a drawing. The same look is taken at every starting layout before it is handed over and at
 * every station a person adds or moves.
 */

/** Widest and highest that US states allow without a permit; 23 CFR 658.15(a) and state codes, see kinds.source.md. [m] */
const WIDEST_M = 2.6;
const HIGHEST_M = 4.267;

const isArea = (s: Station): boolean => s.shape.form !== 'lines' && s.group !== 'area' && !s.layer && s.within === undefined && !s.retired;
const isTyre = (s: Station): boolean => s.group === 'wheel' && s.off_wall === true;

/** Takes up room on its face, so that nothing else may stand there. */
export const takesRoom = (s: Station): boolean => isArea(s) && !isTyre(s);

/** A seam's segment runs through the inside of the box, not along its edge. */
const runsThrough = (s: Station, b: Box): boolean => {
  if (s.shape.form !== 'lines') return false;
  const inner = { x0: b.x0 + 0.002, y0: b.y0 + 0.002, x1: b.x1 - 0.002, y1: b.y1 - 0.002 };
  return s.shape.lines_m.some((line) =>
    line.some((p, i) => {
      const q = line[i + 1];
      if (!q) return false;
      const n = Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / 0.01));
      for (let k = 0; k <= n; k++) {
        const [x, y] = [p[0] + (k / n) * (q[0] - p[0]), p[1] + (k / n) * (q[1] - p[1])];
        if (x > inner.x0 && x < inner.x1 && y > inner.y0 && y < inner.y1) return true;
      }
      return false;
    }),
  );
};

const faultsOnFace = (stations: readonly Station[], layout: Pick<Layout, 'faces'>): readonly string[] => {
  const faults: string[] = [];
  const areas = stations.filter(takesRoom);
  const boxes = areas.map((s) => box(s.shape));
  areas.forEach((a, i) => {
    areas.slice(i + 1).forEach((b, j) => {
      const [p, q] = [boxes[i], boxes[i + 1 + j]];
      if (p && q && overlaps(p, q)) faults.push(`${a.name} (${a.id}) overlaps ${b.name} (${b.id})`);
    });
  });
  for (const s of stations) {
    const outline = layout.faces.find((f) => f.id === s.face)?.outline_m;
    if (!outline) faults.push(`${s.name} (${s.id}) is on no face`);
    else if (!s.off_wall && s.group !== 'area' && !shapeInside(s.shape, outline)) faults.push(`${s.name} (${s.id}) leaves its face`);
    for (const p of s.parts)
      if (s.shape.form !== 'lines' && p.part !== s.part && /latch|hinge|lock|gasket|window/.test(p.part) && !contains(box(s.shape), box(p.shape)))
        faults.push(`${p.name} (${p.id}) leaves ${s.name}`);
    if (s.shape.form === 'lines' && !ROUND_ITS_OWN.test(s.part))
      areas.forEach((a, i) => {
        const b = boxes[i];
        if (b && runsThrough(s, b)) faults.push(`${s.name} (${s.id}) runs through ${a.name} (${a.id})`);
      });
  }
  return faults;
};

/**
 * Least and greatest height of a lamp's middle above ground.
 * Side marker lamps: 49 CFR 571.108, Table II, as quoted in a published interpretation of 1979 (read): at least 15 in, at
 * the rear of trailers not over 60 in. Tail lamps 15 to 72 in: from memory, unconfirmed. [m]
 */
const LAMPS: Readonly<Record<string, readonly [number, number]>> = {
  'marker-lamp': [0.381, Number.POSITIVE_INFINITY],
  reflector: [0.381, 1.524],
  'tail-lamp': [0.381, 1.829],
  'tail-lamp-small': [0.381, 1.829],
};
const REAR_MARKER_MOST_M = 1.524;

const lampFaults = (layout: Layout): readonly string[] =>
  layout.stations.flatMap((s) => {
    const range = LAMPS[s.part];
    if (!range) return [];
    const b = box(s.shape);
    const y = (b.y0 + b.y1) / 2;
    const trailer = layout.axles.every((a) => a.kind === 'trailer') && layout.axles.length > 0;
    const rearMost = s.part === 'marker-lamp' && trailer && b.x0 > layout.overall.body_length_m - 0.6;
    const most = rearMost ? REAR_MARKER_MOST_M : range[1];
    return y < range[0] || y > most ? [`${s.name} stands ${y.toFixed(2)} m above ground, where a lamp may not`] : [];
  });

const wheelFaults = (layout: Layout): readonly string[] =>
  layout.axles
    .filter((a) => !a.host_vehicle)
    .flatMap((a) => {
      const arches = layout.stations.filter((s) => s.looks === 'wheel-arch' && (s.face === 'road' || s.face === 'curb')).map((s) => box(s.shape));
      const [x0, x1] = [a.x_m - a.tyre_diameter_m / 2, a.x_m + a.tyre_diameter_m / 2];
      const over = arches.filter((b) => b.x0 <= x0 && b.x1 >= x1 && b.y1 >= a.tyre_diameter_m);
      return over.length >= 2 ? [] : [`axle ${a.id} has no arch over both its wheels`];
    });

/** An entry door's sill lies from 0.35 m below to 0.03 m above the floor, as in the typical layouts; ours. */
const doorFaults = (layout: Layout): readonly string[] =>
  layout.stations
    .filter((s) => s.part.startsWith('entry-door'))
    .flatMap((s) => {
      const sill = box(s.shape).y0 - layout.levels.floor_m;
      return sill < -0.35 || sill > 0.03 ? [`${s.name} has its sill ${sill.toFixed(2)} m from the floor`] : [];
    });

/** Every fault of a drawing, in words; none when it is sound. */
export const drawingFaults = (layout: Layout): readonly string[] => {
  const byFace = new Map<string, Station[]>();
  for (const s of layout.stations) if (!s.retired) byFace.set(s.face, [...(byFace.get(s.face) ?? []), s]);
  const ids = new Set(layout.stations.map((s) => s.id));
  const names = new Set(layout.stations.filter((s) => !s.retired).map((s) => s.name));
  return [
    ...[...byFace.values()].flatMap((stations) => faultsOnFace(stations, layout)),
    ...lampFaults(layout),
    ...wheelFaults(layout),
    ...doorFaults(layout),
    ...(ids.size === layout.stations.length ? [] : ['two stations have one id']),
    ...(names.size === layout.stations.filter((s) => !s.retired).length ? [] : ['two stations have one name']),
    ...(layout.overall.width_m > WIDEST_M + 1e-6 ? ['it is wider than roads allow'] : []),
    ...(layout.overall.height_m > HIGHEST_M ? ['it is higher than roads allow'] : []),
  ];
};
