import { type Metres, type Share, type SquareMetres, squareMetres } from '../../units';

export type BeadShape = {
  readonly id: string;
  readonly words: string;
  /** Whether a second measure is asked for; the other shapes need only their width or leg. */
  readonly needs_depth: boolean;
  readonly formula: string;
  /** w is the width, the leg of a fillet or the diameter of a round bead; d is depth or height. */
  readonly area: (w: number, d: number) => number;
};

/** A cap cut from a circle: b wide, h high in the middle. */
const segment = (b: number, h: number): number => {
  const R = (b ** 2 / 4 + h ** 2) / (2 * h);
  const theta = 2 * Math.atan2(b / 2, R - h);
  return (R ** 2 * (theta - Math.sin(theta))) / 2;
};

/** Sections of a laid bead. Closed forms; only the tooled joint's factor comes from a page. */
export const BEAD_SHAPES = [
  { id: 'rectangle', words: 'a joint filled flat, width × depth', needs_depth: true, formula: 'A = w d', area: (w, d) => w * d },
  { id: 'tooled-joint', words: 'a joint tooled hollow, width × depth', needs_depth: true, formula: 'A = 0.9 w d', area: (w, d) => 0.9 * w * d },
  { id: 'fillet', words: 'a flat fillet in a corner, by its leg', needs_depth: false, formula: 'A = w² / 2', area: (w) => w ** 2 / 2 },
  { id: 'hollow-fillet', words: 'a fillet tooled hollow, by its leg', needs_depth: false, formula: 'A = (1 − π/4) w²', area: (w) => (1 - Math.PI / 4) * w ** 2 },
  { id: 'full-fillet', words: 'a full quarter-round fillet, by its leg', needs_depth: false, formula: 'A = π w² / 4', area: (w) => (Math.PI / 4) * w ** 2 },
  { id: 'round', words: 'a round bead as it leaves the nozzle, by its diameter', needs_depth: false, formula: 'A = π w² / 4', area: (w) => (Math.PI / 4) * w ** 2 },
  { id: 'half-round', words: 'a half-round cap, by its width', needs_depth: false, formula: 'A = π w² / 8', area: (w) => (Math.PI / 8) * w ** 2 },
  {
    id: 'cap',
    words: 'a low cap over a seam, width × height in the middle',
    needs_depth: true,
    formula: 'R = (w²/4 + d²) / 2d; A = R² (θ − sin θ) / 2',
    area: segment,
  },
  { id: 'levelled-cap', words: 'a self-levelling cap, width × height in the middle', needs_depth: true, formula: 'A = 2/3 w d', area: (w, d) => (2 / 3) * w * d },
] as const satisfies readonly BeadShape[];

export type BeadShapeId = (typeof BEAD_SHAPES)[number]['id'];

const shapeOf = (id: BeadShapeId): BeadShape => BEAD_SHAPES.find((s) => s.id === id) ?? BEAD_SHAPES[0];
export const beadShape = shapeOf;

/**
 * The section of a bead, as it should be once dry.
 *
 * @param shape  one of BEAD_SHAPES
 * @param width  width, leg or diameter, as the shape says. [m]
 * @param depth  depth or height; passed over by shapes that do not need it. [m]
 * @returns      section. [m²]
 * @valid        width above 0; depth above 0 where the shape needs it
 * @agrees       exactly with the closed forms of six cases
 * @assumes      an even bead
 * @source       1. closed forms; factor 0.9 of a tooled joint from a public calculator's worked example
 */
export const beadSection = (shape: BeadShapeId, width: Metres, depth: Metres): SquareMetres => squareMetres(shapeOf(shape).area(width, depth));

/**
 * What must be laid wet so that the wanted bead stays once the solvent has left.
 *
 * @param dry     wanted section. [m²]
 * @param solids  share of the wet volume that stays; 1 for a sealant that cures without shrinking. By volume: data sheets mostly print it by weight, which is higher. [1]
 * @returns       wet section. [m²]
 * @source        1. closed form: V_wet = V_dry / solids by volume
 */
export const wetSection = (dry: SquareMetres, solids: Share): SquareMetres => squareMetres(dry / solids);
