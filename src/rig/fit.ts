import type { FacePoint } from '../terms';
import { accept, type Result, refuse } from '../units';
import type { Piece } from './base-layout';
import { shapeInside } from './outline';
import { partOf } from './parts';
import type { Slide } from './rig';
import { type Box, box, movedBy, overlaps } from './shapes';

/**
 * Room for everything. After a layout is stretched, parts that would overlap or stand over the edge of their face are
 * moved aside by as little as will do; what finds no room is left out and named, so that no drawing is ever broken.
 * Which part gives way to which is our own order: what is built into the frame, doors, lamps that the law asks for, exits, appliances, windows, the rest.
 */
const ORDER: readonly (readonly [RegExp, must: boolean])[] = [
  [/^(wheel-arch-trim|fender|slide-flange|tyre|windshield|cab-door|cab-window|van-.*|a-frame|pin-box|landing-gear)$/, true],
  [/^(entry-door|teardrop-door|galley-hatch)/, true],
  [/^(head-lamp|turn-lamp|tail-lamp|marker-lamp|clearance-lamp|id-lamp-bar|license-lamp|reflector)/, true],
  [/^(window-egress|pass-through-hatch)/, true],
  [/^(ladder-|jack-bracket|lifter-post|roof-latch|leveling-jack|stabiliser-jack|slide-|awning-)/, false],
  [
    /^(lp-compartment|utility-|water-heater|fridge-|furnace-|heater-flue|ac-unit|skylight|roof-vent|range-hood|power-inlet|cord-hatch|city-water|gravity|water-fill|fuel-filler|generator-)/,
    false,
  ],
  [/^window/, false],
  [/^(baggage-door|battery-|tank-flush|plumbing-vent|sewer|hood|front-)/, false],
  [/./, false],
];

const rankOf = (part: string): number => ORDER.findIndex(([is]) => is.test(part));
const isMust = (part: string): boolean => ORDER[rankOf(part)]?.[1] ?? false;

/** Moves on a grid; ours. [m] */
const STEP_M = 0.05;
const FAR_M = 3;
const FAR_ACROSS_M = 1;
/** Room kept beside a part that had to move; ours. [m] */
const ROOM_M = 0.01;

/** What moves as one: a door with its handle, hold-back and step; the fittings of one awning end; a refrigerator's two vents. */
type Unit = { readonly pieces: readonly Piece[]; readonly rank: number };

const DOOR_COMPANION = /^(entry-handle|door-holdback|entry-step-.*)$/;
const AWNING_END = /^awning-(upper-bracket|lower-bracket|arm)$/;

const middle = (p: Piece): number => (box(p.shape).x0 + box(p.shape).x1) / 2;
const beside = (a: Piece, b: Piece): number => Math.max(0, box(a.shape).x0 - box(b.shape).x1, box(b.shape).x0 - box(a.shape).x1);

const goesWith = (lead: Piece, p: Piece): boolean => {
  if (/^entry-door/.test(lead.part)) return DOOR_COMPANION.test(p.part) && (p.face === lead.face || (p.face === 'under' && lead.face === 'curb')) && beside(lead, p) < 0.6;
  if (lead.part === 'awning-arm') return AWNING_END.test(p.part) && p.part !== 'awning-arm' && p.face === lead.face && Math.abs(middle(lead) - middle(p)) < 0.1;
  if (lead.part === 'fridge-vent-lower') return p.part === 'fridge-roof-vent' && p.face === 'roof' && Math.abs(middle(lead) - middle(p)) < 0.15;
  return false;
};

const unitsOf = (pieces: readonly Piece[]): readonly Unit[] => {
  const taken = new Set<string>();
  const units: Unit[] = [];
  const ordered = [...pieces.filter((p) => /^(entry-door|awning-arm|fridge-vent-lower)/.test(p.part)), ...pieces];
  for (const lead of ordered) {
    if (taken.has(lead.id)) continue;
    const group = [lead, ...pieces.filter((p) => p.id !== lead.id && !taken.has(p.id) && goesWith(lead, p))];
    for (const p of group) taken.add(p.id);
    units.push({ pieces: group, rank: rankOf(lead.part) });
  }
  return units.toSorted((a, b) => a.rank - b.rank);
};

type Offset = readonly [dx: number, dy: number];

const steps = (far: number): readonly number[] => Array.from({ length: Math.round(far / STEP_M) }, (_, i) => (i + 1) * STEP_M).flatMap((d) => [-d, d]);
const ALONG: readonly Offset[] = steps(FAR_M).map((dx) => [dx, 0]);
const ANYWHERE: readonly Offset[] = [0, ...steps(FAR_M)]
  .flatMap((dx) => [0, ...steps(FAR_ACROSS_M)].map((dy): Offset => [dx, dy]))
  .filter(([dx, dy]) => dx !== 0 || dy !== 0)
  .toSorted((a, b) => Math.abs(a[0]) + Math.abs(a[1]) - Math.abs(b[0]) - Math.abs(b[1]));

const isFlat = (face: string): boolean => face === 'roof' || face === 'under' || face.endsWith('-top');
const widened = (b: Box, by: number): Box => ({ x0: b.x0 - by, y0: b.y0 - by, x1: b.x1 + by, y1: b.y1 + by });

type Placed = { readonly part: string; readonly box: Box };

/** A spare wheel may stand in front of the bumper that carries it. */
const carries = (host: string, part: string): boolean => host === 'rear-bumper' && part === 'spare-carrier';

/** What stands off the wall may reach below it, never beyond the rig's sides. */
const withinWidth = (b: Box, outline: readonly FacePoint[]): boolean => {
  const xs = outline.map(([x]) => x);
  return b.x0 >= Math.min(...xs) - ROOM_M && b.x1 <= Math.max(...xs) + ROOM_M;
};

export type Fitted = { readonly pieces: readonly Piece[]; readonly left_out: readonly string[] };

/** Places every area; lines and whole-face layers are not its business. */
export const fitted = (pieces: readonly Piece[], outlines: ReadonlyMap<string, readonly FacePoint[]>, slides: readonly Slide[]): Result<Fitted> => {
  const hosts = pieces.filter((p) => p.within === undefined && p.shape.form !== 'lines' && !p.layer && !(p.part === 'tyre' && p.off_wall));
  const placed = new Map<string, Placed[]>();
  const moved = new Map<string, Offset>();
  const left_out: string[] = [];
  const gone = new Set<string>();
  const elsewhere = new Map<string, Piece>();

  const free = (p: Piece, [dx, dy]: Offset, room: number): boolean => {
    const shape = dx === 0 && dy === 0 ? p.shape : movedBy(p.shape, dx, dy);
    const outline = outlines.get(p.face);
    if (outline && (p.off_wall ? !withinWidth(box(shape), outline) : !shapeInside(shape, outline))) return false;
    const at = widened(box(shape), room);
    return !(placed.get(p.face) ?? []).some((other) => overlaps(at, other.box) && !carries(other.part, p.part));
  };

  /** The same place on the outer wall of a slide-out of this wall, or beside it. */
  const onSlide = (p: Piece): Piece | undefined => {
    for (const slide of slides.filter((s) => s.face === p.face)) {
      const there: Piece = { ...p, face: `${slide.id}-outer`, slide: slide.id };
      const at = [[0, 0] as Offset, ...ALONG].find((o) => free(there, o, ROOM_M));
      if (at) return { ...there, shape: movedBy(p.shape, ...at) };
    }
    return undefined;
  };

  for (const unit of unitsOf(hosts)) {
    const lead = unit.pieces[0];
    if (!lead) continue;
    const flat = unit.pieces.every((p) => isFlat(p.face));
    const stay: Offset = [0, 0];
    const fixed = unit.rank === 0;
    const at = unit.pieces.every((p) => free(p, stay, 0)) ? stay : fixed ? undefined : (flat ? ANYWHERE : ALONG).find((o) => unit.pieces.every((p) => free(p, o, ROOM_M)));
    if (!at) {
      const other = unit.pieces.length === 1 ? onSlide(lead) : undefined;
      if (other) {
        elsewhere.set(lead.id, other);
        placed.set(other.face, [...(placed.get(other.face) ?? []), { part: other.part, box: box(other.shape) }]);
        continue;
      }
      if (isMust(lead.part))
        return refuse({
          code: 'cannot-be-drawn',
          path: 'layout',
          expected: 'sizes and slide-outs that leave room for doors, wheels, lamps and exits',
          received: `${partOf(lead.part).noun.toLowerCase()} on ${lead.face} without room`,
          sentence: `At these sizes there is no room for the ${partOf(lead.part).noun.toLowerCase()} (${lead.face}). Choose fewer slide-outs or axles, or check the sizes.`,
        });
      left_out.push(partOf(lead.part).noun);
      for (const p of unit.pieces) gone.add(p.id);
      continue;
    }
    for (const p of unit.pieces) {
      if (at !== stay) moved.set(p.id, at);
      placed.set(p.face, [...(placed.get(p.face) ?? []), { part: p.part, box: box(movedBy(p.shape, ...at)) }]);
    }
  }
  const result = pieces
    .filter((p) => !gone.has(p.id) && !(p.within !== undefined && gone.has(p.within)))
    .map((p) => {
      const there = elsewhere.get(p.id);
      if (there) return there;
      const at = moved.get(p.within ?? p.id);
      return at ? { ...p, shape: movedBy(p.shape, ...at) } : p;
    });
  return accept({ pieces: result, left_out });
};
