import type { Rig } from '../../rig';
import { AIR_DENSITY, stagnationPressure, waterHead } from '../../science';
import type { FaceId } from '../../terms';
import { metresPerSecond } from '../../units';

/** Usual speed on the road in rain; ours. [m/s] */
const ROAD_SPEED = metresPerSecond(27);
/** Head of water at which a gap that is not seen to be open lets in about two drops in three; ours. [m] */
const HEAD_M = 0.02;
/** Share of the pressure of the road that a face feels; ours, in the order that the flow round a box gives: full in front, little or suction elsewhere. */
const PUSH: Readonly<Record<'front' | 'side' | 'roof' | 'rear' | 'under', number>> = { front: 1, side: 0.2, roof: 0.2, rear: 0.1, under: 0.1 };
/** Rain on a parked rig: a roof takes all of it, a wall what the wind brings. [1] */
const RAINED_ON: Readonly<Record<keyof typeof PUSH, number>> = { front: 0.7, side: 0.7, roof: 0.95, rear: 0.7, under: 0.15 };

/** Which way a face looks. */
export const looksTo = (rig: Rig, face: FaceId): { readonly way: keyof typeof PUSH; readonly side?: 'road' | 'curb' | 'front' | 'rear' } => {
  if (face === 'roof' || face.endsWith('-top')) return { way: 'roof' };
  if (face === 'front' || face === 'step' || face.endsWith('-front')) return { way: 'front', side: 'front' };
  if (face === 'rear' || face.endsWith('-rear')) return { way: 'rear', side: 'rear' };
  if (face === 'under' || face === 'tongue') return { way: 'under' };
  const wall = face.endsWith('-outer') ? rig.slides.find((s) => face === `${s.id}-outer`)?.face : face;
  return wall === 'road' || wall === 'curb' ? { way: 'side', side: wall } : { way: 'side' };
};

/**
 * Chance that rain finds its way into a gap that is there, on the road and parked.
 *
 * @assumes  27 m/s (60 mph) on the road: 44 mm of water in front of a flat face; a slide-out is in, and its ends are then covered
 * @source   stagnation pressure and head: worksheet `driving-rain-pressure`; shares of it on the other faces: ours
 */
export const exposureOf = (rig: Rig, face: FaceId): { readonly parked: number; readonly driving: number } => {
  const { way } = looksTo(rig, face);
  const q = stagnationPressure(ROAD_SPEED, AIR_DENSITY);
  const head = q.ok ? waterHead(q.value) : 0;
  // The ends of a slide-out stand in the wall while it is on the road.
  const covered = /^s\d+-(front|rear)$/.test(face);
  return { parked: RAINED_ON[way], driving: covered ? 0.05 : 1 - Math.exp((-PUSH[way] * head) / HEAD_M) };
};
