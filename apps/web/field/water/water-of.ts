import type { Leak, Panel, Scale, Spot, Water } from '../../../../src/plan';
import type { FaceId, FacePoint, Side } from '../../../../src/terms';
import { samePoint, type Told, type ToRead } from './series';

/** What was read on one side of one face with the same meter; other scales and other meters are other panels. */
export const panelOf = (water: Water, face: FaceId, side: Side, told: Pick<Told, 'scale' | 'meter'>): Panel | undefined =>
  water.panels.find((p) => p.face === face && p.side === side && p.scale === told.scale && p.meter === told.meter);

export const leakOf = (water: Water, id: string | undefined): Leak | undefined => water.leaks.find((l) => l.id === id);

/** The places of one leak that were metered, on one side of one face with one meter: what is read again to see whether it dries. */
export type Again = { readonly face: FaceId; readonly side: Side; readonly scale: Scale; readonly meter: string; readonly places: readonly ToRead[] };

/** The dry places that the wet ones are compared with first, for without them no reading of the day says much; each panel by itself. */
export const againOf = (water: Water, leak: Leak): readonly Again[] => {
  const found = new Map<string, { readonly of: Omit<Again, 'places'>; readonly places: ToRead[] }>();
  const add = (spot: Spot): void => {
    const last = spot.readings.at(-1);
    if (!last) return;
    const { scale, meter, dry_reference } = last;
    const key = [spot.face, spot.side, scale, meter].join(' ');
    const panel = found.get(key) ?? { of: { face: spot.face, side: spot.side, scale, meter }, places: [] };
    if (!panel.places.some((p) => samePoint(p.point_m, spot.point_m))) panel.places.push({ point_m: spot.point_m, words: spot.words, ...(dry_reference ? { dry: true } : {}) });
    found.set(key, panel);
  };
  leak.spots.forEach(add);
  const wet = [...found.values()].map((f) => f.of);
  for (const panel of water.panels)
    if (wet.some((w) => w.face === panel.face && w.side === panel.side && w.scale === panel.scale && w.meter === panel.meter))
      panel.spots.filter((s) => s.readings.at(-1)?.dry_reference).forEach(add);
  return [...found.values()].map(({ of, places }) => ({ ...of, places: [...places].sort((a, b) => Number(b.dry ?? false) - Number(a.dry ?? false)) }));
};

/** The spot that holds what was read at a point, the nearest first. */
export const spotAt = (panel: Panel | undefined, point: FacePoint): Spot | undefined => panel?.spots.find((s) => samePoint(s.point_m, point));
