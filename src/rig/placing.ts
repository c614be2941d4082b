import type { Shape, Station } from '../terms';
import { roofOutline } from './faces';
import { partNamed } from './parts';
import type { Rig } from './rig';
import { box, movedBy, outlineLength, toMillimetre } from './shapes';
import { hardest, isReachedByItsStep, ownBead, reachOf, topOf } from './station-facts';

/**
 * A station with another outline on its own face, as a move or a measured size gives it. Its small parts on that face go
 * along with its lower corner; lengths, height and reach follow; all else stays as it was.
 */
export const placedAs = (rig: Rig, station: Station, shape: Shape): Station => {
  const [from, to] = [box(station.shape), box(shape)];
  const [dx, dy] = [to.x0 - from.x0, to.y0 - from.y0];
  const stays = dx === 0 && dy === 0;
  const parts = station.parts.map((p) => (p.face === undefined && !stays ? { ...p, shape: movedBy(p.shape, dx, dy) } : p));
  // A bead may belong to a part alone; then the station's own outline adds nothing to it.
  const bead = partNamed(station.part)?.bead === 'none' ? 'none' : station.bead;
  const longer = (of: (s: Shape) => number): number => of(shape) - of(station.shape);
  const roof = roofOutline(rig.faces);
  const drawn = [{ face: station.face, shape, part: station.part }, ...parts.map((p) => ({ face: p.face ?? station.face, shape: p.shape, part: p.part }))];
  return {
    ...station,
    shape,
    parts,
    bead_m: toMillimetre(station.bead_m + longer((s) => ownBead(station.part, s, bead))),
    outline_m: toMillimetre(station.outline_m + longer(outlineLength)),
    top_m: toMillimetre(Math.max(...drawn.map((d) => topOf(rig, d.face, d.shape)))),
    reach: isReachedByItsStep(station.part) ? 'ground' : hardest(drawn.map((d) => reachOf(rig, roof, { ...d, group: station.group }))),
  };
};
