import { equilibriumHumidity, type MouldClassId, type MouldSpell, mouldRisk, mouldThrough } from '../../science';
import { memory, ours, seen } from '../../terms';
import { kelvin, moistureContent, relativeHumidity } from '../../units';
import type { Because } from '../finding';
import { inWood } from './bands';
import type { WetWarm } from './water-types';
import type { Weighed } from './yardsticks';

/** Wet enough and warm enough for rot to work: at or above 25 %, between 5 and 38 °C (notes on decay; ours as a count). */
const WET = 0.25;
const COLD_K = kelvin(278.15);
const HOT_K = kelvin(311.15);
/** What happened between readings farther apart is not known (ours). [d] */
const GAP = 120;
const DAY_H = 24;
/** The worksheet takes so many spells. */
const MOST_SPELLS = 60;

const WET_WARM = ours('days at or above 25 % and between 41 and 100 °F (5 and 38 °C), read off a straight line between readings: a count, not a promise of strength');
const MOULD = seen('Hukka and Viitanen 1999 and the improved VTT model, as read in public implementations: a class of risk, not the truth about a wall');
const LIMIT = memory('visible mould from index 3');

type Spell = { readonly days: number; readonly from: number; readonly to: number; readonly temperature_k: number; readonly entries: readonly string[] };

const spellsOf = (weighed: readonly Weighed[]): readonly Spell[] => {
  const usable = weighed.filter((w) => w.reading.scale === 'pin' && inWood(w.reading.material) && w.reading.value !== undefined);
  return usable.slice(1).flatMap((b, i): readonly Spell[] => {
    const a = usable[i];
    const days = a ? b.reading.day - a.reading.day : 0;
    if (!a || days <= 0 || days > GAP) return [];
    const temperatures = [a, b].flatMap((w) => w.reading.wood_temperature_k ?? []);
    if (temperatures.length === 0) return [];
    const temperature_k = temperatures.reduce((sum, t) => sum + t, 0) / temperatures.length;
    return [{ days, from: a.reading.value ?? 0, to: b.reading.value ?? 0, temperature_k, entries: [a.reading.entry, b.reading.entry] }];
  });
};

const daysWet = ({ days, from, to }: Spell): number => {
  if (from >= WET && to >= WET) return days;
  if (from < WET && to < WET) return 0;
  return (days * Math.abs(Math.max(from, to) - WET)) / Math.abs(to - from);
};

/** Humidity at which wood stays as moist; above what the equation covers it is saturated. */
const humidityOf = (moisture: number, temperature_k: number): number => {
  const h = equilibriumHumidity(kelvin(temperature_k), moistureContent(moisture));
  return h.ok ? h.value : moisture > 0.2 ? 1 : 0.05;
};

const surfaceOf = (weighed: readonly Weighed[]): MouldClassId =>
  weighed.some((w) => w.reading.material === 'softwood' || w.reading.material === 'hardwood') ? 'very-sensitive' : 'sensitive';

/**
 * How long one place stood wet and warm, and the class of mould risk that follows.
 *
 * @param weighed  its readings, oldest first; only pins in wood, with the wood's temperature, count
 * @returns        undefined with fewer than two such readings no more than four months apart
 * @assumes        moisture runs straight from one reading to the next, at the mean of their temperatures; the humidity at the surface is that in
 *                 balance with the wood
 */
export const wetWarmOf = (weighed: readonly Weighed[]): WetWarm | undefined => {
  const spells = spellsOf(weighed).slice(-MOST_SPELLS);
  const entries = [...new Set(spells.flatMap((s) => s.entries))];
  if (spells.length === 0) return undefined;
  const warm = spells.filter((s) => s.temperature_k > COLD_K && s.temperature_k < HOT_K);
  const days = Math.round(warm.reduce((sum, s) => sum + daysWet(s), 0));
  const surface = surfaceOf(weighed);
  const steps: readonly MouldSpell[] = spells.map((s) => ({
    hours: s.days * DAY_H,
    temperature: kelvin(s.temperature_k),
    relative_humidity: relativeHumidity(humidityOf((s.from + s.to) / 2, s.temperature_k)),
  }));
  const mould = mouldThrough(steps, surface);
  const because: Because[] = [
    {
      text:
        days === 0
          ? 'Between its readings it was not both wet and warm enough for rot.'
          : `Wet and warm enough for rot on about ${days} ${days === 1 ? 'day' : 'days'} between its readings.`,
      entries,
      source: WET_WARM,
    },
  ];
  if (!mould.ok) return { days, because };
  const risk = mouldRisk(mould.value.highest);
  because.push({
    text: `Mould by a model: ${risk} risk. The climate inside a wall is guessed from the readings: a class, not what is there.`,
    entries,
    source: risk === 'high' ? LIMIT : MOULD,
    worksheet: {
      id: 'mould-index',
      inputs: {
        surface,
        hours_h: steps.map((s) => s.hours),
        temperatures_c: steps.map((s) => s.temperature - 273.15),
        humidities_percent: steps.map((s) => s.relative_humidity * 100),
      },
    },
  });
  return { days, mould: risk, because };
};
