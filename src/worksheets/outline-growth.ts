import { LIKE_TEMPERATURE_K, outlineGrowth } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, figure } from '../units';
import { step } from './working';

const area = { least: 1e-6, most: 1000 };
const temperature = { least: 223.15, most: 373.15 };

export const outlineGrowthSheet = defineWorksheet({
  id: 'outline-growth',
  title: 'Growth of an outline',
  tells: 'Whether a bubble has grown between two rounds, where the skin was about as warm both times.',
  example: { earlier_area_m2: 0.12, later_area_m2: 0.16, earlier_skin_c: 18, later_skin_c: 21 },
  inputs: {
    earlier_area_m2: { type: 'number', quantity: 'area', unit: 'm2', meaning: 'area at the earlier round', limits: area },
    later_area_m2: { type: 'number', quantity: 'area', unit: 'm2', meaning: 'area at the later round', limits: area },
    earlier_skin_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'temperature of the skin at the earlier round', limits: temperature },
    later_skin_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'temperature of the skin at the later round', limits: temperature },
  },
  results: { growth_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'how many times as large it has become', decimals: 2 } },
  calculate: ({ earlier_area_m2, later_area_m2, earlier_skin_c, later_skin_c }) => {
    const ratio = outlineGrowth(earlier_area_m2, later_area_m2, later_skin_c - earlier_skin_c);
    if (!ratio.ok) return ratio;
    return accept({
      result: { growth_number: ratio.value },
      working: [step('Growth', 'later area / earlier area', `${figure(later_area_m2, 3)} m² / ${figure(earlier_area_m2, 3)} m²`, figure(ratio.value, 2))],
    });
  },
  sources: [
    seen('Wall repair firm, questions and answers on delamination: outline, date, temperature; repeat at similar temperature; growth matters more than size'),
    ours(`outlines taken more than ${LIKE_TEMPERATURE_K} K apart are not compared`),
  ],
  limits: ['Both outlines drawn the same way, in raking light or by tapping; a finger’s width round the edge of a small bubble is a tenth of its area or more.'],
  cautions: [],
});
