import { cureThrough } from '../science';
import { COMMON_PRACTICE, defineWorksheet, memory, seen } from '../terms';
import { accept, metres, showIn } from '../units';
import { put, step } from './working';

const depth = (meaning: string, most: number) => ({ type: 'number', quantity: 'small-length', unit: 'mm', meaning, limits: { least: 0.0005, most } }) as const;
const days = (meaning: string) => ({ type: 'number', quantity: 'duration', unit: 'd', meaning, decimals: 1 }) as const;

export const cureThroughSheet = defineWorksheet({
  id: 'cure-through',
  title: 'When a bead has cured through',
  tells: 'How long a bead that cures by the damp of the air takes to cure right through: a span, from what its sheet says of the first day.',
  example: { depth_mm: 6, first_day_mm: 3 },
  inputs: {
    depth_mm: depth('from the open face of the bead to its deepest place', 0.05),
    first_day_mm: depth('depth that cures in the first 24 h, by its sheet: 2 to 3 mm is usual', 0.02),
  },
  results: {
    soonest_d: days('if every day cures as much as the first'),
    latest_d: days('if it gets slower the deeper it goes; plan with this'),
  },
  calculate: ({ depth_mm: d, first_day_mm: k }) => {
    const t = cureThrough(metres(d), metres(k));
    const mm = (si: number): string => `${put(si, 'small-length', 'mm', 1)} mm`;
    const numbers = `d = ${mm(d)}, k = ${mm(k)} in the first day`;
    const within = d < k;
    const told = (seconds: number): string => showIn(seconds, 'duration', 'h');
    return accept({
      result: { soonest_d: t.soonest, latest_d: t.latest },
      working: [step('Soonest', within ? 't = (d / k)²' : 't = d / k', numbers, told(t.soonest)), step('Latest', within ? 't = d / k' : 't = (d / k)²', numbers, told(t.latest))],
    });
  },
  sources: [
    seen(
      'Data sheets: at least 3 mm in the first 24 h at 20 °C and 50 % humidity for a polyurethane; makers’ articles: one-part sealants cure inward, slower with depth, cold and dry air',
    ),
    memory('Cure grows as the square root of time, d = k √t'),
    COMMON_PRACTICE,
  ],
  limits: [
    'The air of the sheet, mostly 20 to 25 °C and 50 % humidity. Colder or drier air is slower; no table of by how much was found, and below 5 °C or 30 % humidity nothing is known.',
    'Not for lap sealants, which dry by losing solvent, nor for butyl, which never cures.',
    'The product’s own sheet comes first.',
  ],
  cautions: ['Do not drive before the bead has cured: it fails unseen.'],
});
