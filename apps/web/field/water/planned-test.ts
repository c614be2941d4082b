import { type Leak, runMinutes, type WaterTest } from '../../../../src/plan';
import type { Station } from '../../../../src/terms';

/** A test that somebody chose, or that is made again: the same way of doing it, without what a proposal knows. */
const STEPS: readonly string[] = [
  'Lay the hose so that water runs over it in a plain flow, without a nozzle: a jet held close makes leaks that rain would not.',
  'Begin at its lowest edge and go up; keep everything above it dry.',
  'Somebody inside watches with light and meter. Stop at the first water.',
];

export type Planned = Pick<WaterTest, 'station' | 'how' | 'steps' | 'cautions' | 'because'> & {
  /** How long the water or the air is on; setting up is not counted. */ readonly minutes: number;
};

export const plannedAt = (leak: Leak | undefined, station: Station | undefined): Planned | undefined => {
  const proposed = leak?.next_test;
  if (proposed && (station === undefined || proposed.station === station.id)) return { ...proposed, minutes: proposed.run_minutes };
  if (!station) return undefined;
  const cautions = station.reach === 'ladder' ? ['ladder'] : station.reach === 'roof' ? ['ladder', 'roof'] : [];
  return { station: station.id, how: 'hose', minutes: runMinutes('hose'), steps: STEPS, cautions, because: [] };
};

/** What it is done with, in a cell. */
export const HOW: Readonly<Record<WaterTest['how'], string>> = { hose: 'Hose', soap: 'Soap and air' };
