import { emcHumidity, emcTemperature, emcTerms, equilibriumMoisture } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure, kelvin, relativeHumidity } from '../units';
import { step } from './working';

export const woodEquilibriumMoisture = defineWorksheet({
  id: 'wood-equilibrium-moisture',
  title: 'Equilibrium moisture content of wood',
  tells: 'What sound, dry wood takes on by itself in air like this: the reading of a wall that does not leak.',
  example: { temperature_c: 20, relative_humidity_percent: 65 },
  inputs: {
    temperature_c: {
      type: 'number',
      quantity: 'temperature',
      unit: 'c',
      meaning: 'temperature of the air that the wood has lived in for weeks',
      limits: { least: emcTemperature.least, most: emcTemperature.most },
    },
    relative_humidity_percent: {
      type: 'number',
      quantity: 'relative-humidity',
      unit: 'percent',
      meaning: 'relative humidity of that air',
      limits: { least: emcHumidity.least, most: emcHumidity.most },
    },
  },
  results: { moisture_content_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'mass of water over mass of dry wood', decimals: 1 } },
  calculate: ({ temperature_c, relative_humidity_percent }) => {
    const result = equilibriumMoisture(kelvin(temperature_c), relativeHumidity(relative_humidity_percent));
    if (!result.ok) return result;
    const T = temperature_c - 273.15;
    const h = relative_humidity_percent;
    const t = emcTerms(T);
    const percent = `${figure(result.value * 100, 1)} %`;
    return accept({
      result: { moisture_content_percent: result.value },
      working: [
        step('Coefficient W', 'W = 349 + 1.29 T + 0.0135 T²', `T = ${figure(T, 1)} °C`, figure(t.W, 1)),
        step('Coefficient K', 'K = 0.805 + 0.000736 T − 0.00000273 T²', `T = ${figure(T, 1)} °C`, figure(t.K, 4)),
        step('Coefficient K₁', 'K₁ = 6.27 − 0.00938 T − 0.000303 T²', `T = ${figure(T, 1)} °C`, figure(t.K1, 3)),
        step('Coefficient K₂', 'K₂ = 1.91 + 0.0407 T − 0.000293 T²', `T = ${figure(T, 1)} °C`, figure(t.K2, 3)),
        step(
          'Moisture content',
          'M = 1800/W × [ K h / (1 − K h) + (K₁ K h + 2 K₁ K₂ K² h²) / (1 + K₁ K h + K₁ K₂ K² h²) ]',
          `W = ${figure(t.W, 1)}, K = ${figure(t.K, 4)}, K₁ = ${figure(t.K1, 3)}, K₂ = ${figure(t.K2, 3)}, h = ${figure(h, 3)}`,
          percent,
        ),
      ],
      remarks: h > 0.85 ? ['Above about 85 % humidity kinds of wood differ widely; take this as a guide.'] : [],
    });
  },
  sources: [
    seen(
      'Glass and Zelinka, Wood Handbook, chapter 4, FPL-GTR-282 (2021), equation 4-5, p. 4-3; as quoted on a public page',
      'https://research.fs.usda.gov/download/treesearch/62243.pdf',
    ),
    seen('Wood Handbook, FPL-GTR-190 (2010), table 4-2: 342 values, 30 to 200 °F, 5 to 95 %'),
    memory('Plywood and fibre board sit about 1 to 2 points lower'),
  ],
  limits: [
    'Solid wood, midway between wetting and drying; by how it got there wood may stand 1 to 4 points away at middling humidity.',
    'Plywood, thin panel and fibre board sit somewhat lower: take it as an upper guide for them.',
    'The air of weeks counts, not of an hour. Tenths are shown as the source prints them; they are not worth more than a comparison.',
  ],
  cautions: [],
});
