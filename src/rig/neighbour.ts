import type { StationId } from '../terms';
import { runsLeftward } from './faces';
import type { Rig } from './rig';
import { centre } from './shapes';

/** As a person sees the face. */
export type Direction = 'left' | 'right' | 'up' | 'down';

const STEP: Readonly<Record<Direction, readonly [number, number]>> = { left: [-1, 0], right: [1, 0], up: [0, 1], down: [0, -1] };

/** A thing straight ahead is nearer than one as far away but off to the side; ours. [1] */
const ASIDE_WEIGHS = 2;

/**
 * The station that an arrow key goes to: the nearest on the same face that way, as the face is seen.
 *
 * @returns  its id, or undefined at the edge of the face
 */
export const neighbour = (rig: Rig, id: StationId, direction: Direction, outlook: 'outside' | 'inside' = 'outside'): StationId | undefined => {
  const from = rig.stations.find((s) => s.id === id);
  if (!from) return undefined;
  const sign = runsLeftward(rig, from.face, outlook) ? -1 : 1;
  const [ux, uy] = STEP[direction];
  const [x, y] = centre(from.shape);
  let best: { readonly id: StationId; readonly far: number } | undefined;
  for (const s of rig.stations) {
    if (s.id === id || s.retired || s.face !== from.face) continue;
    const [sx, sy] = centre(s.shape);
    const [dx, dy] = [(sx - x) * sign, sy - y];
    const ahead = dx * ux + dy * uy;
    if (ahead <= 1e-6) continue;
    const far = ahead + ASIDE_WEIGHS * Math.abs(dx * uy - dy * ux);
    if (!best || far < best.far || (far === best.far && s.id < best.id)) best = { id: s.id, far };
  }
  return best?.id;
};
