import type { FaceId, Station } from '../terms';
import type { Rig } from './rig';
import { box } from './shapes';

/**
 * One loop round the rig on foot: hitch, front wall from road to curb side, curb side rearward, rear wall to the road
 * side, road side forward. Every face has a wall from which it is reached and a place along the loop.
 */
export type Wall = 'tongue' | 'front' | 'curb' | 'rear' | 'road';

const WALLS: readonly Wall[] = ['tongue', 'front', 'curb', 'rear', 'road'];

type Spot = { readonly wall: Wall /** Along the wall, in its own first coordinate. [m] */; readonly along: number };

const middle = (station: Station): readonly [number, number] => {
  const b = box(station.shape);
  return [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];
};

/** Width of the body, from its roof or underside. [m] */
export const bodyWidth = (rig: Pick<Rig, 'faces' | 'overall'>): number => {
  const under = rig.faces.find((f) => f.id === 'under');
  return under ? Math.max(...under.outline_m.map((p) => p[1])) : rig.overall.width_m;
};

const onSlide = (rig: Rig, face: FaceId, x: number): Spot | undefined => {
  const [id = '', part] = face.split('-');
  const slide = rig.slides.find((s) => s.id === id);
  if (!slide || part === undefined) return undefined;
  const wall: Wall = slide.face === 'curb' ? 'curb' : 'road';
  return { wall, along: part === 'front' ? slide.x_m : part === 'rear' ? slide.x_m + slide.w_m : x };
};

/** The wall at which a person stands to see a station, and where along it. */
export const spotOf = (rig: Rig, station: Station): Spot => {
  const [x, y] = middle(station);
  if (station.face === 'tongue') return { wall: 'tongue', along: x };
  if (station.face === 'front' || station.face === 'step') return { wall: 'front', along: x };
  if (station.face === 'curb' || station.face === 'road' || station.face === 'rear') return { wall: station.face, along: x };
  return onSlide(rig, station.face, x) ?? { wall: y < bodyWidth(rig) / 2 ? 'road' : 'curb', along: x };
};

/** Grows along the walk. The road side is walked forward, the rear from curb to road. */
export const onTheWay = (wall: Wall, along: number): number => (wall === 'road' || wall === 'rear' ? -along : along);

export const wallOrder = (wall: Wall): number => WALLS.indexOf(wall);

export const WALL_WORDS: Readonly<Record<Wall, string>> = { tongue: 'hitch', front: 'front', curb: 'curb side', rear: 'rear', road: 'road side' };
