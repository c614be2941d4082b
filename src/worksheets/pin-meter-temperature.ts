import { PIN_METER_UNCERTAINTY, pinMeterLinear, pinMeterPfaffGarrahan, pinMeterReading, pinMeterTemperature } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure, kelvin, moistureContent } from '../units';
import { step } from './working';

export const pinMeterTemperatureSheet = defineWorksheet({
  id: 'pin-meter-temperature',
  title: 'Pin meter, corrected for the temperature of the wood',
  tells: 'What the meter would have shown had the wood been as warm as its calibration, so that cold and warm rounds can be compared.',
  example: { reading_percent: 15, wood_temperature_c: 10 },
  inputs: {
    reading_percent: {
      type: 'number',
      quantity: 'moisture-content',
      unit: 'percent',
      meaning: 'reading as shown, already set for the kind of wood if the meter does that',
      limits: { least: pinMeterReading.least, most: pinMeterReading.most },
    },
    wood_temperature_c: {
      type: 'number',
      quantity: 'temperature',
      unit: 'c',
      meaning: 'temperature of the wood, not of the air',
      limits: { least: pinMeterTemperature.least, most: pinMeterTemperature.most },
    },
    calibrated_at_c: {
      type: 'number',
      quantity: 'temperature',
      unit: 'c',
      meaning: 'temperature the meter is calibrated for, from its manual',
      limits: { least: 283.15, most: 303.15 },
      otherwise: 20,
    },
    rule: { type: 'word', meaning: 'which rule: the simple one of meter manuals, or the curve of Pfaff and Garrahan', words: ['linear', 'pfaff-garrahan'], otherwise: 'linear' },
  },
  results: {
    corrected_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'reading at calibration temperature', decimals: 1 },
    plus_minus_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'what makers differ by; carry it along', decimals: 0 },
    rule: { type: 'text', meaning: 'the rule that was used' },
  },
  calculate: ({ reading_percent, wood_temperature_c, calibrated_at_c, rule }) => {
    const R = figure(reading_percent * 100, 1);
    const T = figure(wood_temperature_c - 273.15, 1);
    const corrected =
      rule === 'linear'
        ? pinMeterLinear(moistureContent(reading_percent), kelvin(wood_temperature_c), kelvin(calibrated_at_c))
        : pinMeterPfaffGarrahan(moistureContent(reading_percent), kelvin(wood_temperature_c));
    if (!corrected.ok) return corrected;
    const gives = `${figure(corrected.value * 100, 1)} %`;
    return accept({
      result: { corrected_percent: corrected.value, plus_minus_percent: PIN_METER_UNCERTAINTY, rule },
      working: [
        rule === 'linear'
          ? step('Half a point for every 5 °C', 'M = R + 0.1 (T₀ − T)', `R = ${R} %, T₀ = ${figure(calibrated_at_c - 273.15, 1)} °C, T = ${T} °C`, gives)
          : step('Pfaff and Garrahan, kind of wood as read', 'M = (R + 0.567 − 0.026 T + 0.000051 T²) / (0.881 × 1.0056ᵀ)', `R = ${R} %, T = ${T} °C`, gives),
      ],
      remarks: wood_temperature_c < 275.15 ? ['The wood is close to freezing. Frost in it falsifies the reading; read again when it is warmer.'] : [],
    });
  },
  sources: [
    seen('Resistance-meter manual, correction page: add 0.5 % for every 5 °C below 20 °C, subtract above'),
    seen('Pin-probe meter manual, p. 37, temperature chart in whole numbers: four values'),
    memory('Pfaff and Garrahan 1986, Garrahan 1988, coefficients as used by Straube, Onysko and Schumacher 2002'),
  ],
  limits: [
    'Solid wood from 7 to 30 %. Above that a pin meter tells only that the wood is wet, below it only that it is dry.',
    'Makers differ by up to a point after correction. Plywood, glue lines, preservative and salt falsify the percentage; compare with a dry place of the same build.',
    'The linear rule is the one used unless the other is asked for by name; it comes from a manual that was read, the other from memory.',
  ],
  cautions: ['Wires, cables and gas lines run in walls. Unplug the rig and use short pins.'],
});
