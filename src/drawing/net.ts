import type { Face, Rig, Slide } from '../rig';
import type { FaceId } from '../terms';
import { around, type Bounds, boundsOf, boundsOn, type Frame } from './frame';

/** White between two faces that meet at an edge. [m] */
export const FOLD_GAP_M = 0.12;
/** White between the walls and the faces of a slide-out. [m] */
const BLOCK_GAP_M = 0.25;
/** From the front axle of a host vehicle to its bumper; ours, from no vehicle. [m] */
export const HOST_NOSE_M = 0.95;
/** Least room between the two ends of a slide-out, for its name. [m] */
const MIDDLE_M = 1.05;

/** The faces of one slide-out: roof above, the two ends below, the outer face shown on the wall that it leaves. */
export type SlideBlock = { readonly slide: Slide; readonly frames: readonly Frame[]; readonly middle: Bounds; readonly bounds: Bounds };

/** The rig unfolded: roof in the middle, nose to the left, every roof edge beside the wall it meets. */
export const frameFor = (net: Net, face: FaceId): Frame | undefined => net.frames.find((f) => f.face === face);

/** What is drawn ahead of the body: the hitch, or the truck under a truck camper. [m] */
export const hitchAhead = (rig: Rig): number => Math.max(0, rig.overall.hitch_ahead_m, ...rig.axles.filter((a) => a.host_vehicle).map((a) => HOST_NOSE_M - a.x_m));

export type Net = { readonly frames: readonly Frame[]; readonly blocks: readonly SlideBlock[]; readonly bounds: Bounds };

const faceOf = (rig: Rig, id: FaceId): Face | undefined => rig.faces.find((f) => f.id === id);

const spanOf = (face: Face | undefined): Bounds => (face ? boundsOf(face.outline_m) : { x0: 0, y0: 0, x1: 0, y1: 0 });

const frame = (face: FaceId, ox: number, oy: number, along: readonly [number, number], across: readonly [number, number]): Frame => ({
  face,
  side: 'outside',
  origin: [ox, oy],
  along,
  across,
});

/**
 * Frames of the outsides on one sheet: curb wall inverted above, road wall below, front and rear turned.
 * The roof's road edge at y = 0 of the face lies on y = 0 of the sheet; move the whole with `shifted`.
 */
export const netOf = (rig: Rig, { gap = FOLD_GAP_M, middle = MIDDLE_M }: { readonly gap?: number; readonly middle?: number } = {}): Net => {
  const roof = spanOf(faceOf(rig, 'roof'));
  const [road, curb] = [spanOf(faceOf(rig, 'road')), spanOf(faceOf(rig, 'curb'))];
  const [front, rear, step] = [spanOf(faceOf(rig, 'front')), spanOf(faceOf(rig, 'rear')), spanOf(faceOf(rig, 'step'))];
  const roadTop = gap - roof.y0;
  const curbTop = -gap - roof.y1;
  const frontTop = roof.x0 - gap;
  const candidates: readonly Frame[] = [
    frame('roof', 0, 0, [1, 0], [0, -1]),
    frame('curb', 0, curbTop - curb.y1, [1, 0], [0, 1]),
    frame('road', 0, roadTop + road.y1, [1, 0], [0, -1]),
    frame('front', frontTop - front.y1, 0, [0, -1], [1, 0]),
    frame('step', frontTop - (front.y1 - front.y0) - gap - step.y1, 0, [0, -1], [1, 0]),
    frame('rear', roof.x1 + gap + rear.y1, 0, [0, -1], [-1, 0]),
  ];
  const frames = candidates.filter((f) => faceOf(rig, f.face));
  const blocks = [...slideBlocks(rig, 'road', road.x1 + BLOCK_GAP_M, roadTop, 1, gap, middle), ...slideBlocks(rig, 'curb', curb.x1 + BLOCK_GAP_M, curbTop, -1, gap, middle)];
  const outers = rig.slides.flatMap((s) => {
    const wall = frames.find((f) => f.face === s.face);
    return wall && faceOf(rig, `${s.id}-outer`) ? [{ ...wall, face: `${s.id}-outer` }] : [];
  });
  const all = [...frames, ...outers];
  const bounds = around([...all.map((f) => boundsOn(f, faceOf(rig, f.face)?.outline_m ?? [])), ...blocks.map((b) => b.bounds)]);
  return { frames: [...all, ...blocks.flatMap((b) => b.frames)], blocks, bounds };
};

/** Slides of one wall side by side. `down` is 1 where the wall hangs below the roof, −1 where it stands inverted above it. */
const slideBlocks = (rig: Rig, wall: FaceId, left: number, edge: number, down: 1 | -1, gap: number, room: number): readonly SlideBlock[] => {
  const blocks: SlideBlock[] = [];
  let x = left;
  for (const slide of [...rig.slides].filter((s) => s.face === wall).sort((a, b) => a.x_m - b.x_m)) {
    const width = Math.max(slide.w_m, 2 * slide.travel_m + room);
    const top = edge + down * (slide.travel_m + gap);
    const wallTop = top + down * (slide.y_m + slide.h_m);
    const across: readonly [number, number] = [0, -down];
    const frames = [
      frame(`${slide.id}-top`, x - slide.x_m + (width - slide.w_m) / 2, edge, [1, 0], [0, down]),
      frame(`${slide.id}-front`, x, wallTop, [1, 0], across),
      frame(`${slide.id}-rear`, x + width, wallTop, [-1, 0], across),
    ].filter((f) => faceOf(rig, f.face));
    const ends = [top, top + down * slide.h_m];
    const middle = { x0: x + slide.travel_m, y0: Math.min(...ends), x1: x + width - slide.travel_m, y1: Math.max(...ends) };
    const edges = [edge, ...ends];
    blocks.push({ slide, frames, middle, bounds: { x0: x, y0: Math.min(...edges), x1: x + width, y1: Math.max(...edges) } });
    x += width + BLOCK_GAP_M;
  }
  return blocks;
};

/** Underside and hitch on a sheet of their own, seen from below: nose to the left, road side above. */
export const undersideOf = (rig: Rig): Net => {
  const frames = [frame('under', 0, 0, [1, 0], [0, 1]), frame('tongue', 0, 0, [1, 0], [0, 1])].filter((f) => faceOf(rig, f.face));
  const bounds = around(frames.map((f) => boundsOn(f, faceOf(rig, f.face)?.outline_m ?? [])));
  return { frames, blocks: [], bounds };
};

type Turn = { readonly along: readonly [number, number]; readonly across: readonly [number, number]; readonly mirror: 'along' | 'across' };

const RIGHT = [1, 0] as const;
const LEFT = [-1, 0] as const;
const UP = [0, -1] as const;
const DOWN = [0, 1] as const;

/** How each face is seen from outside when it stands alone, upright as a person before it sees it. */
const SEEN: Readonly<Record<string, Turn>> = {
  roof: { along: RIGHT, across: UP, mirror: 'across' },
  under: { along: RIGHT, across: DOWN, mirror: 'across' },
  tongue: { along: RIGHT, across: UP, mirror: 'across' },
  road: { along: RIGHT, across: UP, mirror: 'along' },
  curb: { along: LEFT, across: UP, mirror: 'along' },
  front: { along: LEFT, across: UP, mirror: 'along' },
  step: { along: LEFT, across: UP, mirror: 'along' },
  rear: { along: RIGHT, across: UP, mirror: 'along' },
};

/** Faces of a slide-out on the road wall; on the curb wall they are the mirror image. */
const SLIDE_SEEN: Readonly<Record<string, Turn>> = {
  outer: { along: RIGHT, across: UP, mirror: 'along' },
  front: { along: RIGHT, across: UP, mirror: 'along' },
  rear: { along: LEFT, across: UP, mirror: 'along' },
  top: { along: RIGHT, across: DOWN, mirror: 'across' },
  under: { along: RIGHT, across: UP, mirror: 'across' },
};

const flip = ([x, y]: readonly [number, number]): readonly [number, number] => [x === 0 ? 0 : -x, y === 0 ? 0 : -y];

const turnOf = (rig: Rig, face: FaceId): Turn => {
  const slide = rig.slides.find((s) => face.startsWith(`${s.id}-`));
  if (!slide) return SEEN[face] ?? { along: RIGHT, across: UP, mirror: 'along' };
  const turn = SLIDE_SEEN[face.slice(slide.id.length + 1)] ?? { along: RIGHT, across: UP, mirror: 'along' as const };
  if (slide.face !== 'curb') return turn;
  return turn.mirror === 'along' ? { ...turn, along: flip(turn.along) } : { ...turn, across: flip(turn.across) };
};

/**
 * The frame of one face drawn alone. The inside shares the coordinates and is the mirror image of the outside,
 * as a person standing within sees it.
 */
export const frameAlone = (rig: Rig, face: FaceId, side: Frame['side']): Frame => {
  const turn = turnOf(rig, face);
  const inside = side === 'inside';
  return {
    face,
    side,
    origin: [0, 0],
    along: inside && turn.mirror === 'along' ? flip(turn.along) : turn.along,
    across: inside && turn.mirror === 'across' ? flip(turn.across) : turn.across,
  };
};
