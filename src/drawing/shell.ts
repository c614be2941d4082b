import type { Face, Rig } from '../rig';
import type { FacePoint, Shape } from '../terms';
import { boundsOf, type Frame, ontoSheet } from './frame';
import { HOST_NOSE_M, hitchAhead } from './net';
import { shapePoints } from './parts';
import { BEND_M } from './parts/seams';
import { type Pen, penOn } from './pen';
import type { Primitive } from './primitives';

/** A face as its outline, corners rounded as bent sheet and mouldings are. */
export const drawFace = (face: Face, frame: Frame): Primitive => {
  const walls = face.id === 'road' || face.id === 'curb';
  const p = penOn(ontoSheet(frame));
  const ink = face.slide === undefined ? 'face' : 'slide';
  return p.poly(ink, face.outline_m, walls ? BEND_M : face.slide === undefined ? 0.05 : 0.02);
};

type Piece = { readonly part: string; readonly shape: Shape };

/** Stations of these parts, and small fittings that are looked at with another station. */
const withPart = (rig: Rig, ...parts: readonly string[]): readonly Piece[] =>
  rig.stations
    .filter((s) => !s.retired)
    .flatMap((s): readonly Piece[] => [s, ...s.parts])
    .filter((s) => parts.includes(s.part));

const box = (s: Piece) => boundsOf(shapePoints(s.shape));

const lowest = (outline: readonly FacePoint[]): number => Math.min(...outline.map((q) => q[1]));

/** Ground as a line with hatch below it, from the hitch to a little behind the body. */
export const ground = (p: Pen, from: number, to: number, step = 0.16): readonly Primitive[] => {
  const strokes: (readonly FacePoint[])[] = [];
  for (let x = from + step; x <= to; x += step)
    strokes.push([
      [x, 0],
      [x - 0.07, -0.07],
    ]);
  return [p.strokes('hatch', strokes), p.line('ground', [from, 0], [to, 0])];
};

/** What carries the body, seen from its side: rail, hitch, jacks, bumper. Its stations lie on the underside; here they are only shown. */
export const undercarriage = (rig: Rig, frame: Frame): readonly Primitive[] => {
  const wall = rig.faces.find((f) => f.id === frame.face);
  if (!wall) return [];
  const p = penOn(ontoSheet(frame));
  const skirt = lowest(wall.outline_m);
  const b = boundsOf(wall.outline_m);
  const from = b.x0 - hitchAhead(rig);
  return [
    ...hostVehicle(rig, p),
    ...ground(p, from - 0.25, b.x1 + 0.25),
    ...rail(rig, p, skirt, b.x1),
    ...hitch(rig, p, skirt),
    ...jacks(rig, p, skirt),
    ...rearEnd(rig, p, b.x1),
    ...steps(rig, p, frame.face),
  ];
};

const hasFrame = (rig: Rig): boolean => withPart(rig, 'a-frame', 'pin-box').length > 0;

const rail = (rig: Rig, p: Pen, skirt: number, to: number): readonly Primitive[] => {
  if (!hasFrame(rig)) return [];
  const wall = rig.faces.find((f) => f.id === 'road');
  const low = (wall?.outline_m ?? []).filter((q) => q[1] < skirt + 0.02).map((q) => q[0]);
  const from = Math.min(...low);
  return [p.box('fitting', from, skirt - 0.12, to - from, 0.09)];
};

/** Coupler, beam, jack and bottles ahead of the body. Heights are ours: the layouts give their plan only. */
const hitch = (rig: Rig, p: Pen, skirt: number): readonly Primitive[] => {
  const out: Primitive[] = [];
  for (const s of withPart(rig, 'a-frame')) {
    const { x0, x1 } = box(s);
    out.push(
      p.poly(
        'fitting',
        [
          [x0 + 0.1, skirt - 0.03],
          [x1 + 0.3, skirt - 0.01],
          [x1 + 0.3, skirt - 0.12],
          [x0 + 0.1, skirt - 0.08],
        ],
        0.01,
      ),
    );
    out.push(
      p.poly(
        'fitting',
        [
          [x0, skirt + 0.01],
          [x0 + 0.14, skirt + 0.01],
          [x0 + 0.2, skirt - 0.09],
          [x0 + 0.05, skirt - 0.12],
          [x0, skirt - 0.09],
        ],
        0.04,
      ),
    );
  }
  for (const s of withPart(rig, 'tongue-jack')) {
    const x = (box(s).x0 + box(s).x1) / 2;
    out.push(p.box('fitting', x - 0.035, 0.05, 0.07, skirt + 0.3), p.box('fitting', x - 0.1, 0, 0.2, 0.05, 0.01), p.line('fitting', [x, skirt + 0.35], [x + 0.16, skirt + 0.35]));
  }
  for (const s of withPart(rig, 'lp-cylinders')) {
    const { x0, x1 } = box(s);
    const w = Math.min(0.32, x1 - x0);
    out.push(p.box('fitting', (x0 + x1 - w) / 2, skirt, w, 0.5, 0.12), p.box('fitting', (x0 + x1) / 2 - 0.07, skirt + 0.5, 0.14, 0.07, 0.02));
  }
  for (const s of withPart(rig, 'pin-box')) {
    const { x0, x1 } = box(s);
    const c = (x0 + x1) / 2;
    const floor = underAt(rig, c);
    out.push(
      p.poly(
        'fitting',
        [
          [x0, floor],
          [x1, floor],
          [c + 0.12, floor - 0.36],
          [c - 0.2, floor - 0.36],
        ],
        0.02,
      ),
      p.box('fitting', c - 0.08, floor - 0.46, 0.09, 0.1),
    );
  }
  return out;
};

/** Height of the body's lower edge at a distance from its front. [m] */
const underAt = (rig: Rig, x: number): number => {
  const outline = rig.faces.find((f) => f.id === 'road')?.outline_m ?? [];
  const heights = outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const [lo, hi] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
    return x >= lo && x <= hi && hi > lo ? [a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0])] : [];
  });
  return heights.length > 0 ? Math.min(...heights) : 0;
};

const jacks = (rig: Rig, p: Pen, skirt: number): readonly Primitive[] => {
  const out: Primitive[] = [];
  const seen = new Set<string>();
  for (const s of withPart(rig, 'stabiliser-jack', 'leveling-jack', 'landing-gear')) {
    const c = (box(s).x0 + box(s).x1) / 2;
    if (seen.has(c.toFixed(1))) continue;
    seen.add(c.toFixed(1));
    const top = Math.max(skirt, underAt(rig, c)) - (hasFrame(rig) ? 0.12 : 0);
    if (s.part === 'stabiliser-jack')
      out.push(
        p.strokes('fitting', [
          [
            [c - 0.13, top],
            [c + 0.15, 0.03],
          ],
          [
            [c + 0.13, top],
            [c - 0.15, 0.03],
          ],
        ]),
        p.box('fitting', c - 0.2, 0, 0.4, 0.03),
      );
    else out.push(p.box('fitting', c - 0.05, 0.04, 0.1, top - 0.04), p.box('fitting', c - 0.13, 0, 0.26, 0.04), p.line('fitting', [c - 0.05, top * 0.5], [c + 0.05, top * 0.5]));
  }
  return out;
};

const rearEnd = (rig: Rig, p: Pen, x1: number): readonly Primitive[] =>
  withPart(rig, 'rear-bumper', 'step-bumper', 'receiver-hitch').map((s) => {
    const { y0, y1 } = box(s);
    return p.box('fitting', x1, y0, s.part === 'step-bumper' ? 0.3 : 0.12, y1 - y0, 0.01);
  });

/** An entry step hangs below its door: shown on the wall it belongs to, though its place is the underside. */
const steps = (rig: Rig, p: Pen, wall: string): readonly Primitive[] =>
  withPart(rig, 'entry-step-fold', 'entry-step-electric', 'entry-step-solid').flatMap((s) => {
    const b = box(s);
    const curb = (b.y0 + b.y1) / 2 > rig.overall.width_m / 2;
    if (curb !== (wall === 'curb')) return [];
    const top = underAt(rig, (b.x0 + b.x1) / 2);
    const w = b.x1 - b.x0;
    return [
      p.strokes('fitting', [
        [
          [b.x0 + 0.03, top],
          [b.x0 + 0.06, top - 0.2],
        ],
        [
          [b.x1 - 0.03, top],
          [b.x1 - 0.06, top - 0.2],
        ],
      ]),
      p.box('fitting', b.x0 + 0.03, top - 0.24, w - 0.06, 0.045, 0.01),
    ];
  });

/** The truck under a truck camper: grey, nothing of it is looked at. Its outline is ours, from the two axles. */
const hostVehicle = (rig: Rig, p: Pen): readonly Primitive[] => {
  const axles = rig.axles.filter((a) => a.host_vehicle);
  const [front, rear] = [Math.min(...axles.map((a) => a.x_m)), Math.max(...axles.map((a) => a.x_m))];
  if (axles.length < 2) return [];
  const bed = (rig.faces.find((f) => f.id === 'road')?.outline_m ?? []).filter((q) => q[1] < 1.6).map((q) => q[0]);
  const back = bed.length > 0 ? Math.min(...bed) - 0.1 : rear - 1.2;
  const tail = rear + 1.15;
  const body: readonly FacePoint[] = [
    [front - 0.9, 0.45],
    [front - HOST_NOSE_M, 0.95],
    [front - 0.8, 1.12],
    [front + 0.55, 1.2],
    [front + 1.15, 1.78],
    [front + 1.5, 1.86],
    [back, 1.84],
    [back + 0.02, 1.4],
    [tail, 1.4],
    [tail + 0.02, 0.55],
    [tail - 0.1, 0.45],
  ];
  return [
    p.poly('host', body, 0.12),
    p.line('host', [front + 0.62, 1.2], [back, 1.2]),
    ...axles.flatMap((a) => [p.disc('host', a.x_m, a.tyre_diameter_m / 2, a.tyre_diameter_m / 2), p.disc('host', a.x_m, a.tyre_diameter_m / 2, a.tyre_diameter_m * 0.28)]),
  ];
};

/** Tyres from below and the axles between them; a wheel that is a station of its own is drawn over its place. */
export const axlesFromBelow = (rig: Rig, frame: Frame): readonly Primitive[] => {
  const f = penOn(ontoSheet(frame));
  const width = Math.max(0, ...(rig.faces.find((x) => x.id === 'under')?.outline_m.map((q) => q[1]) ?? []));
  return rig.axles
    .filter((a) => !a.host_vehicle)
    .flatMap((a) => {
      const [d, w] = [a.tyre_diameter_m, a.tyre_width_m];
      const tyres = [-a.outer_edge_m, width + a.outer_edge_m - w];
      return [f.box('fitting', a.x_m - 0.04, w, 0.08, width - 2 * w), ...tyres.map((y) => f.box('tyre', a.x_m - d / 2, y, d, w, 0.06))];
    });
};
