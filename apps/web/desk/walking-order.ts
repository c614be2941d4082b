import { type Rig, walkingOrder } from '../../../src/rig';
import type { Station } from '../../../src/terms';

/** A station with the place from which it is reached, in words. */
export type Walked = { readonly station: Station; readonly group: string };

/** Every station in the order in which a full round walks it. */
export const walked = (rig: Rig): readonly Walked[] => {
  const byId = new Map(rig.stations.map((s) => [s.id, s]));
  return walkingOrder(rig, { form: 'full', inside: [] }).flatMap(({ station, group }) => {
    const found = byId.get(station);
    return found ? [{ station: found, group }] : [];
  });
};
