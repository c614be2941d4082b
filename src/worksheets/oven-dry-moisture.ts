import { ovenDryMoisture } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, kilograms } from '../units';
import { step } from './working';

const mass = (meaning: string) => ({ type: 'number', quantity: 'small-mass', unit: 'g', meaning, limits: { least: 0.0005, most: 5 } }) as const;

export const ovenDryMoistureSheet = defineWorksheet({
  id: 'oven-dry-moisture',
  title: 'Moisture of a plug, weighed wet and dry',
  tells: 'The true moisture content of a piece cut out during a repair: the one figure that tells what your meter is worth in this wall.',
  example: { wet_mass_g: 57.3, oven_dry_mass_g: 49.8 },
  inputs: { wet_mass_g: mass('mass of the piece as it was cut, weighed at once'), oven_dry_mass_g: mass('mass after drying, when it no longer changes') },
  results: { moisture_content_percent: { type: 'number', quantity: 'moisture-content', unit: 'percent', meaning: 'mass of water over mass of dry wood', decimals: 1 } },
  calculate: ({ wet_mass_g: wet, oven_dry_mass_g: dry }) => {
    const result = ovenDryMoisture(kilograms(wet), kilograms(dry));
    // The law speaks of the dry mass; here it is the oven-dry one.
    if (!result.ok) return { ok: false, refusals: result.refusals.map((r) => ({ ...r, path: 'oven_dry_mass' })) };
    return accept({
      result: { moisture_content_percent: result.value },
      working: [
        step(
          'Water over dry wood',
          'M = (m_wet − m_dry) / m_dry',
          `(${figure(wet * 1000, 1)} g − ${figure(dry * 1000, 1)} g) / ${figure(dry * 1000, 1)} g`,
          `${figure(result.value * 100, 1)} %`,
        ),
      ],
      remarks: dry < 0.01 ? ['A piece below 10 g needs a balance that reads to a hundredth of a gram.'] : [],
    });
  },
  sources: [
    seen('Wood Handbook, FPL-GTR-282 (2021), equation 4-2; as quoted on a public page'),
    seen('103 ± 2 °C until less than 0.1 % is lost in two hours: practice of EN 13183-1, as quoted'),
  ],
  limits: ['A piece of solid wood or plywood without skin, foam or sealant on it.', 'Weigh it within minutes of cutting, or keep it in a closed bag.'],
  cautions: ['Never dry a piece with sealant, foam, adhesive or treated wood in a kitchen oven, and never leave the oven alone.'],
});
