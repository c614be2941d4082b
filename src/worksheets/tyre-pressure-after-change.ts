import { gaugeAfterChange, standardPressure } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, gaugePascals, kelvin, metres } from '../units';
import { pressureInputs } from './tyre-pressure-inputs';
import { gaugeWords, put, step } from './working';

export const tyrePressureAfterChange = defineWorksheet({
  id: 'tyre-pressure-after-change',
  title: 'Tyre pressure after a change of temperature and height',
  tells: 'What the gauge should show now on a tyre that lost nothing since it was set.',
  example: { set_pressure_psi: 80, set_temperature_f: 70, temperature_f: 20 },
  inputs: pressureInputs,
  results: {
    pressure_kpa: { type: 'number', quantity: 'gauge-pressure', unit: 'kpa', meaning: 'what the gauge should show now', decimals: 0 },
    pressure_psi: { type: 'number', quantity: 'gauge-pressure', unit: 'psi', meaning: 'the same', decimals: 1 },
    change_kpa: { type: 'number', quantity: 'gauge-pressure', unit: 'kpa', meaning: 'change since it was set', decimals: 0 },
  },
  calculate: (g) => {
    const p = gaugeAfterChange(
      gaugePascals(g.set_pressure_kpa),
      { temperature: kelvin(g.set_temperature_c), altitude: metres(g.set_altitude_m) },
      { temperature: kelvin(g.temperature_c), altitude: metres(g.altitude_m) },
    );
    const before = standardPressure(metres(g.set_altitude_m));
    const after = standardPressure(metres(g.altitude_m));
    if (!p.ok) return p;
    if (!before.ok) return before;
    if (!after.ok) return after;
    const kpa = (pa: number): string => put(pa, 'gauge-pressure', 'kpa', 1);
    return accept({
      result: { pressure_kpa: p.value, pressure_psi: p.value, change_kpa: p.value - g.set_pressure_kpa },
      working: [
        step('Pressure of the air where it was set', 'a₁ = 101.325 kPa × (1 − 2.25577·10⁻⁵ Z₁)^5.2559', `Z₁ = ${figure(g.set_altitude_m, 0)} m`, `${kpa(before.value)} kPa`),
        step('Pressure of the air here', 'a₂ = 101.325 kPa × (1 − 2.25577·10⁻⁵ Z₂)^5.2559', `Z₂ = ${figure(g.altitude_m, 0)} m`, `${kpa(after.value)} kPa`),
        step(
          'Gauge pressure now',
          'p₂ = (p₁ + a₁) T₂ / T₁ − a₂',
          `(${kpa(g.set_pressure_kpa)} + ${kpa(before.value)}) × ${figure(g.temperature_c, 2)} K / ${figure(g.set_temperature_c, 2)} K − ${kpa(after.value)}`,
          gaugeWords(p.value),
        ),
      ],
    });
  },
  sources: [
    seen('Gay-Lussac’s law with absolute pressures; worked figures of a tyre trade page and a vehicle manual'),
    seen('Height above sea level: 14.7, 12.2 and 10.1 psi at 0, 5 000 and 10 000 ft, as printed on a public page; formula of the standard atmosphere'),
  ],
  limits: [
    'The tyre’s own temperature counts, not the air’s: shade, hours of rest, less than a mile driven.',
    'The volume is taken as constant and the weather as a standard day’s; together good to about 1 psi.',
    'The pressure to set does not change with height: set it as read, at the place and temperature of use.',
  ],
  cautions: [
    'Set the pressure that the placard, the manual or the tyre maker’s table gives. Never go above the lowest limit of tyre, wheel and valve.',
    'Never let air out of a hot tyre.',
    'A tyre at or below 80 % of what it should show must not simply be filled: see the worksheet tyre-run-flat.',
  ],
});
