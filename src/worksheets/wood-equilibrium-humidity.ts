import { emcTemperature, equilibriumHumidity } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure, kelvin, moistureContent } from '../units';
import { step } from './working';

export const woodEquilibriumHumidity = defineWorksheet({
  id: 'wood-equilibrium-humidity',
  title: 'Air that wood this moist lives in',
  tells: 'How humid the air about the wood must be for it to keep this moisture: the climate in the wall, as its wood tells it.',
  example: { temperature_c: 20, moisture_content_percent: 16 },
  inputs: {
    temperature_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'temperature of the wood', limits: { least: emcTemperature.least, most: emcTemperature.most } },
    moisture_content_percent: {
      type: 'number',
      quantity: 'moisture-content',
      unit: 'percent',
      meaning: 'moisture content of the wood, corrected for its temperature',
      limits: { least: 0.005, most: 0.3 },
    },
  },
  results: {
    relative_humidity_percent: { type: 'number', quantity: 'relative-humidity', unit: 'percent', meaning: 'relative humidity of the air in equilibrium with it', decimals: 0 },
  },
  calculate: ({ temperature_c, moisture_content_percent }) => {
    const result = equilibriumHumidity(kelvin(temperature_c), moistureContent(moisture_content_percent));
    if (!result.ok) return result;
    return accept({
      result: { relative_humidity_percent: result.value },
      working: [
        step(
          'Humidity at which the equilibrium moisture content is this',
          'M(T, h) = M, solved for h by halving; M(T, h) see the worksheet wood-equilibrium-moisture',
          `T = ${figure(temperature_c - 273.15, 1)} °C, M = ${figure(moisture_content_percent * 100, 1)} %`,
          `${figure(result.value * 100, 0)} %`,
        ),
      ],
      remarks: result.value > 0.85 ? ['Above about 85 % humidity kinds of wood differ widely; take this as a guide.'] : [],
    });
  },
  sources: [
    seen(
      'Glass and Zelinka, Wood Handbook, chapter 4, FPL-GTR-282 (2021), equation 4-5, p. 4-3; as quoted on a public page',
      'https://research.fs.usda.gov/download/treesearch/62243.pdf',
    ),
    seen('Wood Handbook, FPL-GTR-190 (2010), table 4-2, read backwards'),
    memory('Plywood and fibre board hold about 1 to 2 points less at the same humidity'),
  ],
  limits: [
    'Solid wood, and only where it goes with 5 to 95 % humidity; wetter or drier wood is refused.',
    'A point of moisture is worth 2 to 4 points of humidity, and by how it got there wood may stand 1 to 4 points away.',
  ],
  cautions: [],
});
