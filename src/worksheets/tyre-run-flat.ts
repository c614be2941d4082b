import { gaugeAfterChange, runFlat } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, figure, gaugePascals, kelvin, metres } from '../units';
import { pressureInputs, readingInput } from './tyre-pressure-inputs';
import { gaugeWords, put, step } from './working';

export const tyreRunFlat = defineWorksheet({
  id: 'tyre-run-flat',
  title: 'Tyre at or below 80 % of what it should show',
  tells: 'Whether a cold reading is so low that a tyre driven like this counts as run flat.',
  example: { set_pressure_psi: 65, set_temperature_f: 68, temperature_f: 41, reading_psi: 46 },
  inputs: { ...pressureInputs, reading_kpa: readingInput },
  results: {
    at_or_below_80_percent: { type: 'text', meaning: 'yes or no' },
    share_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'reading over what it should show', decimals: 1 },
    should_show_kpa: { type: 'number', quantity: 'gauge-pressure', unit: 'kpa', meaning: 'what the gauge should show now', decimals: 0 },
    should_show_psi: { type: 'number', quantity: 'gauge-pressure', unit: 'psi', meaning: 'the same', decimals: 1 },
    threshold_kpa: { type: 'number', quantity: 'gauge-pressure', unit: 'kpa', meaning: '80 % of that', decimals: 0 },
    threshold_psi: { type: 'number', quantity: 'gauge-pressure', unit: 'psi', meaning: 'the same', decimals: 1 },
  },
  calculate: (g) => {
    const should = gaugeAfterChange(
      gaugePascals(g.set_pressure_kpa),
      { temperature: kelvin(g.set_temperature_c), altitude: metres(g.set_altitude_m) },
      { temperature: kelvin(g.temperature_c), altitude: metres(g.altitude_m) },
    );
    if (!should.ok) return should;
    const found = runFlat(gaugePascals(g.reading_kpa), should.value);
    const kpa = (pa: number): string => put(pa, 'gauge-pressure', 'kpa', 1);
    return accept({
      result: {
        at_or_below_80_percent: found.at_or_below ? 'yes' : 'no',
        share_percent: found.share,
        should_show_kpa: should.value,
        should_show_psi: should.value,
        threshold_kpa: found.threshold,
        threshold_psi: found.threshold,
      },
      working: [
        step(
          'What it should show now',
          'p₂ = (p₁ + a₁) T₂ / T₁ − a₂, see the worksheet tyre-pressure-after-change',
          `p₁ = ${kpa(g.set_pressure_kpa)} kPa`,
          gaugeWords(should.value),
        ),
        step('Threshold', '0.8 p₂', `0.8 × ${kpa(should.value)} kPa`, gaugeWords(found.threshold)),
        step(
          'Reading against it',
          'reading ≤ threshold',
          `${kpa(g.reading_kpa)} kPa ${found.at_or_below ? '≤' : '>'} ${kpa(found.threshold)} kPa`,
          `${found.at_or_below ? 'yes' : 'no'}, ${figure(found.share * 100, 1)} %`,
        ),
      ],
      remarks: found.at_or_below
        ? ['Do not just add air. If it was driven like this, or that is not known, a professional takes it off and looks inside before it is filled.']
        : [],
    });
  },
  sources: [
    seen('29 CFR 1910.177(f)(2) as reproduced in a coach maker’s manual, p. 747: at or below 80 % of specified pressure, taken off and inspected before it is filled'),
    ours('The rule speaks of the specified pressure; here it is carried to today’s temperature and height, so that cold alone raises no alarm'),
  ],
  limits: [
    'The rule is written for truck tyres in workshops and leaves out light-truck and car tyres; the danger does not.',
    'A cold reading: hours of rest, less than a mile driven, out of the sun.',
  ],
  cautions: [
    'A tyre that was run low can burst while it is filled, with nothing to see beforehand. Stand away from the sidewall.',
    'Nobody but a professional fills a tyre that was driven at or below this threshold.',
  ],
});
