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

/**
 * A place on a face as a person measures it there: from the front, and within the rig up from the floor, for nobody there can
 * hold a tape to the ground. Where a room lies over the hitch, the floor is the lower one.
 */
export const whereOn = (rig: Pick<Rig, 'faces' | 'levels' | 'slides'>, id: FaceId, side: Side, [x, y]: FacePoint): string => {
  const face = faceOf(rig, id);
  if (!face) return `${both(x)} along, ${both(y)} up`;
  const upright = face.y_axis.startsWith('above ground');
  if (!upright || side === 'outside') return `${both(x)} ${shortly(face.x_axis)}, ${both(y)} ${shortly(face.y_axis)}`;
  const floor = rig.slides.find((s) => s.id === face.slide)?.y_m ?? rig.levels.floor_m;
  const up = y - floor;
  return `${both(x)} ${shortly(face.x_axis)}, ${both(Math.abs(up))} ${up < 0 ? 'down' : 'up'} from the ${rig.faces.some((f) => f.id === 'step') ? 'lower floor' : 'floor'}`;
};
