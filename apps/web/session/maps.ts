import { type MoistureField, moistureField, type Panel, type Plan } from '../../../src/plan';
import type { Rig } from '../../../src/rig';
import type { FieldWish } from './session';

type Held = { readonly rig: Rig; readonly panel: Panel; readonly map: MoistureField };

/** Maps of panels as they were last asked for: none is worked out again while neither the rig nor its readings have changed. */
export const moistureMaps = () => {
  const held = new Map<string, Held>();
  return {
    of: (rig: Rig, plan: Plan, id: string, { on: _, ...wish }: FieldWish = {}): MoistureField | undefined => {
      const panel = plan.water.panels.find((p) => p.id === id);
      if (!panel) return undefined;
      const key = JSON.stringify([rig.id, id, wish]);
      const known = held.get(key);
      if (known && known.rig === rig && known.panel === panel) return known.map;
      const map = moistureField(rig, panel, wish);
      held.set(key, { rig, panel, map });
      return map;
    },
    drop: (rig: string): void => {
      for (const [key, { rig: of }] of held) if (of.id === rig) held.delete(key);
    },
  };
};
