import { type MouldSpell, mouldClass, mouldHumidity, mouldRisk, mouldThrough, mouldWords } from '../science';
import { defineWorksheet } from '../terms';
import { accept, figure, kelvin, type Result, refuse, relativeHumidity } from '../units';
import { declineSource, limitSource, MOULD_CAUTIONS, MOULD_LIMITS, mouldSources, surfaceInput } from './mould-inputs';
import { step } from './working';

const HOUR = 3600;
const YEAR_H = 8766;
/** Longer than anybody knows the air of a wall. */
const LONGEST_H = 10 * YEAR_H;
const SPELLS = 60;

const list = { type: 'numbers', least: 1, most: SPELLS } as const;

/** One spell for each length of time; lists that do not go together are refused. */
const spellsOf = (hours: readonly number[], temperatures: readonly number[], humidities: readonly number[]): Result<readonly MouldSpell[]> => {
  for (const [path, other] of [
    ['temperatures', temperatures],
    ['humidities', humidities],
  ] as const)
    if (other.length !== hours.length)
      return refuse({
        code: 'lengths-differ',
        path,
        expected: `${hours.length}, one for each length of time`,
        received: String(other.length),
        sentence: `There are ${hours.length} lengths of time and ${other.length} ${path}; each spell needs one of each.`,
      });
  return accept(hours.map((h, i) => ({ hours: h, temperature: kelvin(temperatures[i] ?? 0), relative_humidity: relativeHumidity(humidities[i] ?? 0) })));
};

export const mouldIndexSheet = defineWorksheet({
  id: 'mould-index',
  title: 'Mould risk through damp and dry',
  tells: 'How far mould would come on a surface through one spell of damp or dry after another: a class of risk, not the truth about a wall.',
  example: { surface: 'very-sensitive', hours_h: [672, 336], temperatures_c: [22, 22], humidities_percent: [97, 60] },
  inputs: {
    surface: surfaceInput,
    hours_h: { ...list, quantity: 'duration', unit: 'h', meaning: 'how long each spell lasts, one after another', limits: { least: 0, most: YEAR_H * HOUR } },
    temperatures_c: { ...list, quantity: 'temperature', unit: 'c', meaning: 'temperature of the surface in each spell', limits: { least: 233.15, most: 353.15 } },
    humidities_percent: {
      ...list,
      quantity: 'relative-humidity',
      unit: 'percent',
      meaning: 'relative humidity at the surface in each spell',
      limits: { least: mouldHumidity.least, most: mouldHumidity.most },
    },
    repeats_count: {
      type: 'number',
      quantity: 'count',
      unit: 'count',
      meaning: 'how often the whole run of spells comes, such as every day',
      limits: { least: 1, most: 3653 },
      otherwise: 1,
    },
    decline_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'how fast mould fades in dry times, against wood', limits: { least: 0, most: 1 }, otherwise: 1 },
    start_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'index to begin with', limits: { least: 0, most: 6 }, otherwise: 0 },
  },
  results: {
    risk: { type: 'text', meaning: 'class of risk: low, middle or high' },
    index_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'index at the end, 0 to 6', decimals: 1 },
    means: { type: 'text', meaning: 'what the highest index stands for' },
    highest_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'highest index on the way', decimals: 1 },
    after_number: { type: 'numbers', quantity: 'number', unit: 'number', meaning: 'index after each spell of the first run', decimals: 1 },
  },
  calculate: ({ surface, hours_h, temperatures_c, humidities_percent, repeats_count, decline_number, start_number }) => {
    const hours = hours_h.map((s) => s / HOUR);
    const spells = spellsOf(hours, temperatures_c, humidities_percent);
    if (!spells.ok) return spells;
    if (!Number.isInteger(repeats_count))
      return refuse({
        code: 'not-whole',
        path: 'repeats',
        expected: 'a whole number',
        received: figure(repeats_count, 3),
        sentence: 'The run of spells comes a whole number of times.',
      });
    const total = hours.reduce((a, b) => a + b, 0) * repeats_count;
    if (total > LONGEST_H)
      return refuse({
        code: 'too-long',
        path: 'hours',
        expected: 'ten years at most',
        received: `${figure(total, 0)} hours`,
        sentence: 'All spells together must last ten years at most.',
      });
    const run = mouldThrough(Array.from({ length: repeats_count }, () => spells.value).flat(), surface, decline_number, start_number);
    if (!run.ok) return run;
    const { index, highest, after } = run.value;
    const risk = mouldRisk(highest);
    const { k1_below, k1_from } = mouldClass(surface);
    return accept({
      result: { risk, index_number: index, means: mouldWords(highest), highest_number: highest, after_number: after.slice(0, hours.length) },
      working: [
        step(
          'Growth while damp and warm',
          'dM/dt = k₁ k₂ / (7 tₘ) a day, tₘ = exp(−0.68 ln T − 13.9 ln RH + 66.02), k₂ = 1 − exp(2.3 (M − Mmax))',
          `surface ${surface}`,
          `k₁ = ${k1_below}, from index 1 ${k1_from}`,
        ),
        step(
          'Decline while dry',
          '−0.032 a day for 6 h, 0 to 24 h, −0.016 a day after; times the factor',
          `factor ${figure(decline_number, 2)}`,
          `−${figure(0.032 * decline_number, 3)} and −${figure(0.016 * decline_number, 3)} a day`,
        ),
        step('Hour by hour from the start', 'M ← M + dM/dt / 24, never below 0', `M = ${figure(start_number, 1)}, ${figure(total, 0)} hours`, figure(index, 1)),
        step('Class of risk', 'low below 1, middle below 3, high from 3', `highest ${figure(highest, 1)}`, risk),
      ],
    });
  },
  sources: [...mouldSources, declineSource, limitSource],
  limits: [...MOULD_LIMITS, 'Growth between 0 and 50 °C; frost and heat count as dry times.'],
  cautions: MOULD_CAUTIONS,
});
