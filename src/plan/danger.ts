import type { Rig } from '../rig';
import type { StationId } from '../terms';
import type { Finding } from './finding';

/**
 * What comes first among things that are equally urgent, the most dangerous first (our choice):
 * 1. fire, gas, current and exhaust;
 * 2. what carries, stops and couples the rig: tyres, wheels, axles, frame, hitch;
 * 3. what a person stands on or gets out by;
 * 4. what can open, come off or hang out on the road;
 * 5. everything else: water and wear.
 * Beginnings of defect ids, or kinds of station where damage by accident has no row of its own.
 */
const CLASSES: readonly (readonly string[])[] = [
  [
    'lp-compartment.',
    'exhaust.',
    'furnace-exhaust.',
    'water-heater.soot',
    'water-heater.nest',
    'fridge-vent-roof.scorch',
    'fridge-vent-wall.residue',
    'fridge-vent-wall.soot',
    'inlet-power.burnt',
    'battery-compartment.gas',
    'battery-compartment.swollen',
    'insect-screen.not-allowed',
  ],
  ['tyre.', 'wheel-fastener.', 'hub-bearing.', 'suspension.', 'coupler.', 'kingpin.', 'safety-chain.', 'breakaway.', 'tow-plug.', 'tie-down.', 'frame.', 'tongue-leg.bent'],
  ['step.', 'ladder-fixed.', 'window-exit.', 'entry-door.sill-soft'],
  [
    'entry-door.latch',
    'compartment-door.latch',
    'lock-latch.',
    'hinge.',
    'vent-hatch.',
    'window.glass-loose',
    'windscreen.',
    'lamp.',
    'antenna.not-stowed',
    'solar-mount.',
    'awning-',
    'slide-mechanism.',
    'slide-topper.',
    'slide-box.gap-uneven',
    'stabiliser.',
    'tongue-leg.',
    'wheel-arch.',
    'roof-field.loose-edge',
    'roof-edge.rail-loose',
    'aircon-roof.cover',
    'plastic-cover.',
    'drain-outlet.',
    'underbelly.loose',
    'battery-compartment.loose',
  ],
];
const LEAST = CLASSES.length;

/** Rules whose findings have no defect of the table, or one that does not say enough. */
const BY_RULE: readonly (readonly [begins: string, level: number])[] = [
  ['out-of-the-ordinary:gas-smell', 0],
  ['out-of-the-ordinary:wet-wire', 0],
  ['tyre-', 1],
  ['step', 2],
  ['out-of-the-ordinary:may-drop-someone', 2],
];

const levels = new Map<string, number>();

const levelOf = (id: string): number => {
  const made = levels.get(id);
  if (made !== undefined) return made;
  const at = CLASSES.findIndex((c) => c.some((begins) => id.startsWith(begins)));
  const level = at < 0 ? LEAST : at;
  levels.set(id, level);
  return level;
};

const judged = new WeakMap<Finding, number>();

/** How dangerous a finding is among its equals: 0 the most. `looks` is its kind of station. */
export const dangerOf = (finding: Finding, looks: string | undefined): number => {
  const level = judged.get(finding) ?? dangerIn(finding, looks);
  judged.set(finding, level);
  return level;
};

const dangerIn = (finding: Finding, looks: string | undefined): number => {
  const byRule = BY_RULE.find(([begins]) => finding.id.startsWith(begins))?.[1];
  if (byRule !== undefined) return byRule;
  if (finding.defect !== undefined) return levelOf(finding.defect);
  return finding.rule === 'accident-damage' && looks !== undefined ? levelOf(`${looks}.`) : LEAST;
};

const known = new WeakMap<Rig, ReadonlyMap<StationId, string>>();

/** Kind of station by its id. */
export const looksAt = (rig: Rig): ReadonlyMap<StationId, string> => {
  const made = known.get(rig) ?? new Map(rig.stations.map((s) => [s.id, s.looks]));
  known.set(rig, made);
  return made;
};
