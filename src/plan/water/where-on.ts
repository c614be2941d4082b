import { faceOf, type Rig } from '../../rig';
import type { FaceId, FacePoint, Side } from '../../terms';
import { show, showIn } from '../../units';

/** In feet and inches, and in metres for those who have no such tape. */
const both = (m: number): string => `${show(m, 'length', { system: 'us', units: {} })} (${showIn(m, 'length', 'm')})`;

/** The first words of a face's axis: `from the front`, `from the road side`, `above ground`. */
const shortly = (axis: string): string =>
  axis
    .replace(/^across /, '')
    .split(/[;,]/, 1)[0]
    ?.replace(/ of the body$/, '') ?? axis;

/** From where a height on this face is told: the floor within the rig, for nobody there can hold a tape to the ground; else the face's own axis. */
type HeightFrom = { readonly from_m: number; readonly words: string };

/** Where a room lies over the hitch, the floor is the lower one. */
export const heightFrom = (rig: Pick<Rig, 'faces' | 'levels' | 'slides'>, id: FaceId, side: Side): HeightFrom => {
  const face = faceOf(rig, id);
  if (!face?.y_axis.startsWith('above ground') || side === 'outside') return { from_m: 0, words: face ? shortly(face.y_axis) : 'up' };
  return { from_m: rig.slides.find((s) => s.id === face.slide)?.y_m ?? rig.levels.floor_m, words: `from the ${rig.faces.some((f) => f.id === 'step') ? 'lower floor' : 'floor'}` };
};

/** A place on a face as a person measures it there: from the front, and within the rig up from the floor. */
export const whereOn = (rig: Pick<Rig, 'faces' | 'levels' | 'slides'>, id: FaceId, side: Side, [x, y]: FacePoint): string => {
  const face = faceOf(rig, id);
  const { from_m, words } = heightFrom(rig, id, side);
  const up = y - from_m;
  const along = `${both(x)} ${face ? shortly(face.x_axis) : 'along'}`;
  return `${along}, ${both(/floor$/.test(words) ? Math.abs(up) : up)} ${/floor$/.test(words) ? `${up < 0 ? 'down' : 'up'} ${words}` : words}`;
};
