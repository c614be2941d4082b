import { median, scaledMad } from '../../science';
import { SCALES } from './scales';
import type { Comparable, DryReference } from './water-types';

/** Fewer dry readings than this make a weaker yardstick: their spread says little. */
export const ENOUGH_DRY = 3;
/** Worksheets take the meter's own points. */
const POINTS = 100;

/** What may be compared: one side of one face, one meter, one scale. */
export const panelKey = (c: Pick<Comparable, 'face' | 'side' | 'scale' | 'meter'>): string => `${c.face}@${c.side}/${c.scale}${c.meter === '' ? '' : `/${c.meter}`}`;

const sameDay = (c: Comparable): string => `${panelKey(c)} ${c.day}`;

/** A place that is wet through is no dry place, whoever marked it. */
const isUsable = (c: Comparable): boolean => c.dry_reference && c.value !== undefined && !(c.no_number === 'beyond-meter' && c.value > 0.3);

const made = (dry: readonly Comparable[]): DryReference | undefined => {
  const values = dry.flatMap((c) => c.value ?? []);
  const [first] = dry;
  if (!first) return undefined;
  const few = values.length < ENOUGH_DRY;
  const floor = few ? Math.max(SCALES[first.scale].floor, first.plus_minus) : SCALES[first.scale].floor;
  const spread = few ? 0 : scaledMad(values);
  return {
    median: median(values),
    spread: Math.max(floor, spread),
    floor_used: spread < floor,
    readings: values.length,
    day: first.day,
    entries: dry.map((c) => c.entry),
    ...(few ? {} : { worked: { worksheet: 'dry-reference', inputs: { readings_number: values.map((v) => v * POINTS), floor_number: floor * POINTS } } }),
  };
};

/**
 * The dry places of each panel, meter and day: median and scaled median deviation.
 * With fewer than three the meter's own scatter stands for the spread.
 *
 * @returns  the reference that a reading is to be compared with; undefined where no dry place was read that day
 */
export const dryReferences = (readings: readonly Comparable[]): ((reading: Comparable) => DryReference | undefined) => {
  const byDay = new Map<string, Comparable[]>();
  for (const c of readings) {
    if (!isUsable(c)) continue;
    const same = byDay.get(sameDay(c));
    if (same) same.push(c);
    else byDay.set(sameDay(c), [c]);
  }
  const references = new Map([...byDay].map(([key, dry]) => [key, made(dry)]));
  return (reading) => references.get(sameDay(reading));
};
