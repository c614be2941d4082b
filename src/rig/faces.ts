import type { FaceId, FacePoint } from '../terms';
import type { Face, Levels, Rig, Slide } from './rig';
import { slideFaces } from './slide-outs';

const FROM_FRONT = 'from the front of the body, rearward';
const ABOVE_GROUND = 'above ground';
const FROM_ROAD = 'across from the road side';
const OUT = 'out from the body wall';

type Words = Pick<Face, 'name' | 'x_axis' | 'y_axis' | 'inside_name'>;

/** Names and axes of the body's faces. Road is left of travel, curb is right of travel. */
const BODY: Readonly<Record<string, Words>> = {
  roof: { name: 'Roof', x_axis: FROM_FRONT, y_axis: FROM_ROAD, inside_name: 'Ceiling' },
  curb: { name: 'Curb side', x_axis: FROM_FRONT, y_axis: ABOVE_GROUND, inside_name: 'Curb wall, inside' },
  road: { name: 'Road side', x_axis: FROM_FRONT, y_axis: ABOVE_GROUND, inside_name: 'Road wall, inside' },
  front: { name: 'Front', x_axis: FROM_ROAD, y_axis: ABOVE_GROUND, inside_name: 'Front wall, inside' },
  rear: { name: 'Rear', x_axis: FROM_ROAD, y_axis: ABOVE_GROUND, inside_name: 'Rear wall, inside' },
  under: { name: 'Underside', x_axis: FROM_FRONT, y_axis: FROM_ROAD, inside_name: 'Floor' },
  tongue: { name: 'Tongue', x_axis: `${FROM_FRONT}; negative is ahead of it`, y_axis: FROM_ROAD, inside_name: 'Tongue' },
  step: { name: 'Lower front wall', x_axis: FROM_ROAD, y_axis: ABOVE_GROUND, inside_name: 'Lower front wall, inside' },
};

const SLIDE: Readonly<Record<string, Words>> = {
  outer: { name: 'outer wall', x_axis: FROM_FRONT, y_axis: ABOVE_GROUND, inside_name: 'outer wall, inside' },
  front: { name: 'front end wall', x_axis: OUT, y_axis: ABOVE_GROUND, inside_name: 'front end wall, inside' },
  rear: { name: 'rear end wall', x_axis: OUT, y_axis: ABOVE_GROUND, inside_name: 'rear end wall, inside' },
  top: { name: 'roof', x_axis: FROM_FRONT, y_axis: OUT, inside_name: 'ceiling' },
};

/** `Slide-out 1` for `s1`. */
export const slideName = (slide: string): string => `Slide-out ${slide.replace(/^s/, '')}`;

export const bodyFace = (id: FaceId, outline_m: readonly FacePoint[]): Face => {
  const words = BODY[id];
  if (!words) throw new Error(`no words for face ${id}`);
  return { id, outline_m, ...words };
};

export const facesOfSlide = (slide: Slide): readonly Face[] =>
  slideFaces(slide).map(({ id, outline_m }) => {
    const words = SLIDE[id.split('-')[1] ?? ''];
    if (!words) throw new Error(`no words for face ${id}`);
    const name = slideName(slide.id);
    return { id, outline_m, ...words, name: `${name}, ${words.name}`, inside_name: `${name}, ${words.inside_name}`, slide: slide.id };
  });

/** The face an id names. */
export const faceOf = (rig: Pick<Rig, 'faces'>, id: FaceId): Face | undefined => rig.faces.find((f) => f.id === id);

/** The edge of the roof, from which its parts are reached. [m] */
export const roofOutline = (faces: readonly Face[]): readonly FacePoint[] => faces.find((f) => f.id === 'roof')?.outline_m ?? [];

/** Faces on which y is a distance across or outward, not a height. */
const LEVEL: Readonly<Record<string, (levels: Levels) => number>> = {
  roof: (l) => l.roof_top_m,
  under: (l) => l.skirt_m,
  tongue: (l) => l.skirt_m,
};

/**
 * Height above ground of a point on a face.
 *
 * @param y  second coordinate on the face's own axes. [m]
 * @returns  height with the rig level on its wheels. [m]
 * @assumes  the crown of a roof and the tuck of an underside are flat: roof_top and skirt of the layout's levels
 */
export const heightAboveGround = (rig: Pick<Rig, 'levels' | 'slides'>, face: FaceId, y: number): number => {
  const flat = LEVEL[face];
  if (flat) return flat(rig.levels);
  if (!face.endsWith('-top')) return y;
  const slide = rig.slides.find((s) => `${s.id}-top` === face);
  return slide ? slide.y_m + slide.h_m : rig.levels.wall_top_m;
};

/** How a face is turned on the page. */
export type Outlook = 'outside' | 'inside';

/** Seen from outside, the curb side has the front of the rig at the right, and so has the front its road side: their first axis runs leftward. */
const LEFTWARD = /^(curb|front|step)$/;

/** Whether the face's first axis runs to the left as a person looks at it. The inside is the mirror image of the outside. */
export const runsLeftward = (rig: Pick<Rig, 'slides'>, face: FaceId, outlook: Outlook): boolean => {
  const [slide, wall] = face.split('-');
  const curbSlide = rig.slides.find((s) => s.id === slide)?.face === 'curb';
  const outside = wall === undefined ? LEFTWARD.test(face) : wall === 'outer' || wall === 'front' ? curbSlide : wall === 'rear' ? !curbSlide : false;
  return outlook === 'outside' ? outside : !outside;
};

/** First coordinate as it is seen: mirrored about the middle of the face where its axis runs leftward. [m] */
export const asSeen = (face: Face, point: FacePoint, leftward: boolean): FacePoint => {
  if (!leftward) return point;
  const xs = face.outline_m.map((p) => p[0]);
  return [Math.min(...xs) + Math.max(...xs) - point[0], point[1]];
};
