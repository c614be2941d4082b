import { type Field, fieldsOf, pointInside, type Rig } from '../../rig';
import { ours } from '../../terms';
import type { Because } from '../finding';
import { likenessWords, priorLikeness, thresholdOf } from './field-likeness';
import { nextReadings } from './field-next';
import { ENOUGH_PLACES, fieldPart } from './field-part';
import { type MapReading, mapReadings } from './field-readings';
import { barriers } from './field-sight';
import type { FieldOptions, FieldPart, MoistureField } from './field-types';
import type { Panel } from './water-types';

const METHOD = ours(
  'ordinary kriging for a stated likeness between readings, drawn from eight places upward and only where leaving out one by one beats the plain mean: our proposal for the few readings of a wall',
);
const PLAIN = ours('inverse distance, power 2: the plain fallback, without a standard error');

/** The field in which a reading lies: inside it, or on its edge where it lies in none. */
const homeOf = (fields: readonly Field[], { point_m }: MapReading): Field | undefined =>
  fields.find((f) => pointInside(point_m, f.outline_m, 0)) ?? fields.find((f) => pointInside(point_m, f.outline_m));

const leftOut = (n: number, why: string): readonly string[] => (n === 0 ? [] : [`${n === 1 ? 'One reading is' : `${n} readings are`} left out: ${why}.`]);

const counted = (parts: readonly FieldPart[]): string => {
  const mapped = parts.filter((p) => p.drawn === 'map').length;
  const word = (n: number): string => (n === 1 ? 'one part' : `${n} parts`);
  if (parts.length === 0) return 'No reading lies on this panel with a number that could be mapped.';
  if (mapped === 0)
    return `No map: ${word(parts.length)} of this panel ${parts.length === 1 ? 'was' : 'were'} read, ${parts.length === 1 ? 'and it does not' : 'and none does'} bear one.`;
  return `A map of ${word(mapped)}${mapped < parts.length ? `; ${word(parts.length - mapped)} with readings only` : ''}.`;
};

const becauseOf = (parts: readonly FieldPart[], byPart: readonly (readonly MapReading[])[], plain: boolean): Because => {
  const entries = byPart.flat().map((r) => r.entry);
  const i = parts.findIndex((p) => p.drawn === 'map' && barriers(p.field).length === 0);
  const [part, readings] = [parts[i], byPart[i]];
  const text = counted(parts);
  const source = plain ? PLAIN : METHOD;
  if (plain || !part || !readings) return { text, entries, source };
  const v = part.variogram;
  return {
    text,
    entries,
    source,
    worksheet: {
      id: 'map-check',
      inputs: {
        x_m: readings.map((r) => r.point_m[0]),
        y_m: readings.map((r) => r.point_m[1]),
        values_percent: readings.map((r) => r.value * 100),
        model: v.model,
        repeatability_percent: Math.sqrt(v.nugget) * 100,
        spread_percent: Math.sqrt(v.partial_sill) * 100,
        range_m: v.range,
        ratio_number: v.anisotropy?.ratio ?? 1,
        direction_deg: 90,
      },
    },
  };
};

/**
 * The map of one panel: for every field that was read the chance of lying above a threshold, the estimate and its standard error;
 * or dots and why. Worked out when asked for, not with the plan.
 *
 * @param panel    one side of one face, read with one meter
 * @param options  another threshold, in the unit of what is mapped; inverse distance instead of kriging
 * @returns        parts, places to read next while a part bears no map, and what all of it rests on
 * @assumes        everything in `assumes`: construction, likeness, threshold, what was left out
 */
export const moistureField = (rig: Rig, panel: Panel, options: FieldOptions = {}): MoistureField => {
  const { fields, assumes } = fieldsOf(rig, panel.face);
  const mapped = mapReadings(panel);
  const prior = priorLikeness(rig, panel);
  const { threshold, words } = thresholdOf(panel, mapped, options.threshold);
  const placed = mapped.readings.map((reading) => ({ reading, home: homeOf(fields, reading) }));
  const inField = placed.filter((p) => p.home !== undefined && !p.home.holes_m.some((h) => pointInside(p.reading.point_m, h, 0)));
  const clear = inField.filter((p) => p.home !== undefined && (panel.scale !== 'pinless' || !p.home.masked_m.some((m) => pointInside(p.reading.point_m, m, 0))));
  const read = fields.map((field) => ({ field, readings: clear.filter((p) => p.home === field).map((p) => p.reading) })).filter((r) => r.readings.length > 0);
  const parts = read.map(({ field, readings }) => fieldPart(field, readings, panel.scale, prior, threshold, options.method));
  const byPart = read.map((r) => r.readings);
  const plain = options.method === 'inverse-distance';
  const days = new Set(clear.map((p) => p.reading.day)).size;
  return {
    panel: panel.id,
    of: mapped.of,
    threshold,
    parts,
    next_places: nextReadings(
      rig,
      panel.face,
      panel.side,
      panel.scale,
      parts.map((part, i) => ({ part, readings: byPart[i] ?? [] })),
    ),
    variogram: prior,
    assumes: [
      ...(plain ? ['Between readings each counts by one over the square of its distance. There is no standard error, so no chance is shown.'] : [words]),
      ...assumes,
      ...likenessWords(
        prior,
        panel.scale,
        rig.meters.some((m) => m.repeatability !== undefined && m.name.toLowerCase() === panel.meter.toLowerCase() && m.scale === panel.scale),
      ),
      `A part is mapped from ${ENOUGH_PLACES} places upward, and only where the map guesses readings left out better than their mean does.`,
      ...(days > 1 ? [`The readings were taken on ${days} days; each place counts with its latest.`] : []),
      ...(panel.scale === 'relative' ? ['The steps of a relative scale are not equal: the map tells where it is wetter, not by how much.'] : []),
      ...mapped.left_out,
      ...leftOut(placed.length - inField.length, 'they lie in an opening, or off every part of this face'),
      ...leftOut(inField.length - clear.length, 'they lie over a frame tube, where a pinless meter reads the metal'),
    ],
    because: becauseOf(parts, byPart, plain),
  };
};
