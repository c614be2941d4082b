import type { livedAir } from '../../entries';
import type { Standing } from '../../logbook';
import { equilibriumMoisture } from '../../science';
import type { BodyOf } from '../../terms';
import { type CivilDay, fromSi, kelvin, parseInstant, parseWhen, relativeHumidity, showDay } from '../../units';
import type { Because } from '../finding';
import type { Worked } from '../plan-types';
import { EQUILIBRIUM } from './sources';

type Body = BodyOf<(typeof livedAir)['fields']>;

/** Wood follows its air over weeks: air recorded longer ago says nothing of today (ours). [d] */
const RECENT = 21;
/** Of an hourly record only the last four weeks before the reading count (ours). [d] */
const HOURS_BACK = 28;
/** So many of the hours must lie within what the table of wood covers (ours). [1] */
const ENOUGH_HOURS = 0.9;
const DAY_MS = 86_400_000;

/** What sound wood takes on in the air that the rig lived in before a day. */
export type AirMoisture = { readonly moisture: number; readonly entry: string; readonly worked?: Worked; readonly because: Because };

const spanOf = (s: Standing): { readonly from: CivilDay; readonly to: CivilDay } => {
  const when = parseWhen(s.observed_at);
  return when?.form === 'span' ? { from: when.from, to: when.to } : { from: s.day, to: s.day };
};

const ofHours = (hours: NonNullable<Body['hours']>, day: CivilDay): { readonly mean: number; readonly used: number; readonly out: number } | undefined => {
  const start = parseInstant(hours.from);
  if (start === undefined) return undefined;
  let [sum, used, out] = [0, 0, 0];
  hours.temperature_k.forEach((t, i) => {
    const h = hours.relative_humidity[i];
    const at = start + i * hours.step_s * 1000;
    if (t === null || h === null || h === undefined || at > (day + 1) * DAY_MS || at < (day - HOURS_BACK) * DAY_MS) return;
    const m = equilibriumMoisture(kelvin(t), relativeHumidity(h));
    if (m.ok) {
      sum += m.value;
      used += 1;
    } else out += 1;
  });
  return used === 0 || used < ENOUGH_HOURS * (used + out) ? undefined : { mean: sum / used, used, out };
};

const inWords = (moisture: number): string => `${(moisture * 100).toFixed(1)} %`;

/**
 * The moisture of sound wood in the air that the rig has lived in: the mean over the hours of a logger, or of the typical figures.
 *
 * @param airs  entries of lived air, oldest first
 * @returns     undefined where none covers the weeks before that day, or the air lies outside what the table of wood covers
 */
export const airMoisture = (airs: readonly Standing[], day: CivilDay): AirMoisture | undefined => {
  const covering = airs.findLast((s) => spanOf(s).to >= day - RECENT && spanOf(s).from <= day);
  if (!covering) return undefined;
  const body = covering.body as Body;
  const entry = covering.entry.id;
  const since = spanOf(covering);
  const when = since.from === since.to ? showDay(since.to) : `${showDay(since.from)} to ${showDay(since.to)}`;
  const hourly = body.hours && ofHours(body.hours, day);
  if (hourly)
    return {
      moisture: hourly.mean,
      entry,
      because: {
        text: `In the air of ${when}, hour by hour, sound wood takes on about ${inWords(hourly.mean)} by itself (${hourly.used} hours${hourly.out === 0 ? '' : `, ${hourly.out} outside the table left out`}).`,
        entries: [entry],
        source: EQUILIBRIUM,
      },
    };
  const typical = equilibriumMoisture(kelvin(body.temperature.si), relativeHumidity(body.relative_humidity.si));
  if (!typical.ok) return undefined;
  const inputs = { temperature_c: fromSi(body.temperature.si, 'temperature', 'c'), relative_humidity_percent: fromSi(body.relative_humidity.si, 'relative-humidity', 'percent') };
  const worked = { worksheet: 'wood-equilibrium-moisture', inputs };
  return {
    moisture: typical.value,
    entry,
    worked,
    because: {
      text: `In the air of ${when} sound wood takes on about ${inWords(typical.value)} by itself.`,
      entries: [entry],
      source: EQUILIBRIUM,
      worksheet: { id: worked.worksheet, inputs },
    },
  };
};
