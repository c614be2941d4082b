import type { Point } from '../path';
import type { Primitive } from '../primitives';
import { type PartBox, type PartDrawing, slats } from './part-drawing';

type Draw = (b: PartBox) => readonly Primitive[];

/** Bends of a run follow the rounded corners of the face it edges. [m] */
export const BEND_M = 0.16;

const each = (b: PartBox, draw: (run: readonly Point[]) => readonly Primitive[]): readonly Primitive[] => b.runs.flatMap((run) => draw(run));

/** A seam is stitched: a heavy line with a broken white one on it. */
const stitched: Draw = (b) => each(b, (run) => [b.p.bent('seam', run, BEND_M), b.p.bent('stitch', run, BEND_M)]);

/** A trim that covers a joint without being one: a plain double line. */
const trim: Draw = (b) => each(b, (run) => [b.p.bent('trim', run, BEND_M), b.p.bent('trim-core', run, BEND_M)]);

/** Rubber does the sealing and no bead may be added: a row of dots. */
const rubber: Draw = (b) => each(b, (run) => [b.p.bent('gasket', run, 0.05)]);

/** A rail carries an awning or a topper: line with its two ends closed. */
const rail: Draw = (b) =>
  each(b, (run) => {
    const [first, last] = [run[0], run.at(-1)];
    const ends = first && last ? [b.p.disc('mark', first[0], first[1], 0.035), b.p.disc('mark', last[0], last[1], 0.035)] : [];
    return [b.p.bent('seam', run, 0), b.p.bent('stitch', run, 0), ...ends];
  });

/** Pressed into sheet steel, sealed in the factory: two thin lines. */
const ditch: Draw = (b) => each(b, (run) => [b.p.bent('slide', run, 0), b.p.bent('trim-core', run, 0)]);

/** Frame round a slide-out: double line with mitred corners. */
const flange: Draw = ({ p, w, h }) => [
  p.box('detail', 0, 0, w, h, 0.02),
  p.strokes('detail', [
    [
      [0, 0],
      [0.05, 0.05],
    ],
    [
      [w, 0],
      [w - 0.05, 0.05],
    ],
    [
      [0, h],
      [0.05, h - 0.05],
    ],
    [
      [w, h],
      [w - 0.05, h - 0.05],
    ],
  ]),
];

const tub: Draw = (b) => (b.runs.length > 0 ? stitched(b) : [b.p.box('fitting', 0, 0, b.w, b.h), b.p.strokes('detail', slats(0, 0, b.w, b.h, 3))]);

export const seams: readonly PartDrawing[] = [
  { parts: ['corner-moulding', 'roof-edge-rail', 'roof-front-termination', 'roof-rear-termination', 'roof-transverse-seam', 'roof-lengthwise-seam'], draw: stitched },
  {
    parts: ['front-cap-seam', 'rear-cap-seam', 'skin-seam-vertical', 'cabover-seam', 'slide-roof-edge', 'slide-corner-moulding', 'roof-shell-edge', 'edge-trim-curved'],
    draw: stitched,
  },
  { parts: ['tub-seam'], draw: tub },
  { parts: ['belt-line-trim', 'skirt-trim', 'slide-floor-edge'], draw: trim },
  { parts: ['windshield-gasket', 'slide-wiper-seal', 'slide-bulb-seal', 'lift-roof-seal', 'hatch-side-seal'], draw: rubber },
  { parts: ['awning-rail', 'slide-topper-rail', 'tent-keder'], draw: rail },
  { parts: ['van-roof-ditch'], draw: ditch },
  { parts: ['slide-flange'], draw: flange },
];
