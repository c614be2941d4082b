import type { Leak, Panel, Water } from '../../../../src/plan';
import type { RigId } from '../../../../src/terms';
import { href, withQuery } from '../../shared/route';

/** A wall's map; with the ways in of a leak laid over it. */
export const mapHref = (rig: RigId, panel: Panel, leak?: Leak): string => withQuery(href('rig', rig, 'water', panel.id), leak ? { leak: leak.id } : {});

/** A leak through time. */
export const trendHref = (rig: RigId, leak: Leak): string => href('rig', rig, 'water', leak.id);

/** The panels on which a leak was metered, the one that holds most of its places first. */
export const panelsOf = (water: Water, leak: Leak): readonly Panel[] => {
  const mine = new Set(leak.spots.map((s) => s.id));
  const shared = (p: Panel): number => p.spots.filter((s) => mine.has(s.id) && s.readings.length > 0).length;
  return water.panels.filter((p) => shared(p) > 0).sort((a, b) => shared(b) - shared(a));
};
