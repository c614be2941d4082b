import type { Leak, WaterTest } from '../../../../src/plan';
import type { Station } from '../../../../src/terms';

/** At one opening or seam: 5 to 10 minutes with the hose, less with soap. */
const MINUTES: Readonly<Record<WaterTest['how'], number>> = { hose: 10, soap: 5 };
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
  if (proposed && (station === undefined || proposed.station === station.id)) return { ...proposed, minutes: MINUTES[proposed.how] };
  if (!station) return undefined;
  const cautions = station.reach === 'ladder' ? ['ladder'] : station.reach === 'roof' ? ['ladder', 'roof'] : [];
  return { station: station.id, how: 'hose', minutes: MINUTES.hose, steps: STEPS, cautions, because: [] };
};

/** What it is done with, in a cell. */
export const HOW: Readonly<Record<WaterTest['how'], string>> = { hose: 'Hose', soap: 'Soap and air' };
