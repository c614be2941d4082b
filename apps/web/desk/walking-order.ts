import type { Rig } from '../../../src/rig';
import type { Reach, Station } from '../../../src/terms';

const REACH: readonly Reach[] = ['ground', 'under', 'ladder', 'roof', 'inside'];
/** Round the rig as it is walked: from the door side round the back. */
const FACES: readonly string[] = ['curb', 'rear', 'road', 'front', 'tongue', 'under', 'roof'];

const rank = (list: readonly string[], id: string): number => {
  const at = list.indexOf(id);
  return at < 0 ? list.length : at;
};

/** Every station that is walked to, ground first, then ladder, then roof. */
export const walkingOrder = (rig: Rig): readonly Station[] =>
  rig.stations
    .filter((s) => !s.retired)
    .map((s, i) => ({ s, i }))
    .sort((a, b) => rank(REACH, a.s.reach) - rank(REACH, b.s.reach) || rank(FACES, a.s.face) - rank(FACES, b.s.face) || a.i - b.i)
    .map(({ s }) => s);
