import type { EntryId, FacePoint } from '../../terms';
import type { CivilDay } from '../../units';
import type { Comparable, DryReference, Panel, Spot } from './water-types';

/** The figure that stands for one place on the map. */
export type MapReading = { readonly entry: EntryId; readonly spot: EntryId; readonly point_m: FacePoint; readonly day: CivilDay; readonly value: number };

export type MapReadings = {
  readonly of: 'excess' | 'reading';
  readonly readings: readonly MapReading[];
  /** What was left out, in sentences. */
  readonly left_out: readonly string[];
};

/** A map shows one state of a wall: places not read within so many days of the newest reading are left out; ours. [d] */
const ONE_STATE_D = 30;

type Latest = { readonly spot: Spot; readonly reading: Comparable & { readonly value: number }; readonly reference: DryReference | undefined };

const latestOf = (spot: Spot, panel: Panel): readonly Latest[] => {
  const reading = spot.readings.findLast((r): r is Latest['reading'] => r.value !== undefined && r.off_panel !== true);
  if (!reading) return [];
  const reference = [spot.yardsticks.reference?.reference, panel.reference].find((r) => r?.day === reading.day);
  return [{ spot, reading, reference }];
};

const places = (n: number, what: string): readonly string[] => (n === 0 ? [] : [`${n === 1 ? 'One place is' : `${n} places are`} left out: ${what}.`]);

/**
 * One figure for each place of a panel: its latest reading that has a number, less the dry places of that day where there are some.
 * Excess and plain readings are not mixed: what most places have decides, and the others are left out.
 */
export const mapReadings = (panel: Panel): MapReadings => {
  const all = panel.spots.flatMap((s) => latestOf(s, panel));
  const newest = Math.max(...all.map((l) => l.reading.day));
  const named = all.filter((l) => l.spot.station === undefined);
  const now = named.filter((l) => newest - l.reading.day <= ONE_STATE_D);
  const compared = now.filter((l) => l.reference !== undefined);
  const of = compared.length * 2 >= now.length && compared.length > 0 ? 'excess' : 'reading';
  const used = of === 'excess' ? compared : now;
  return {
    of,
    readings: used.map(({ spot, reading, reference }) => ({
      entry: reading.entry,
      spot: spot.id,
      point_m: reading.point_m,
      day: reading.day,
      value: of === 'excess' ? reading.value - (reference?.median ?? 0) : reading.value,
    })),
    left_out: [
      ...places(all.length - named.length, 'they name an opening, not a point beside it'),
      ...places(named.length - now.length, `not read within ${ONE_STATE_D} days of the newest reading`),
      ...places(now.length - used.length, 'no dry place was read on the same day'),
    ],
  };
};
