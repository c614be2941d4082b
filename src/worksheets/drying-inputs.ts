import { type Input, memory, type Source } from '../terms';
import type { Metres } from '../units';
import { metres } from '../units';

export const slabInputs = {
  thickness_mm: { type: 'number', quantity: 'small-length', unit: 'mm', meaning: 'thickness of the wet board', limits: { least: 0.0005, most: 0.3 } },
  open_faces: { type: 'word', meaning: 'how many of its faces are open to dry air', words: ['both', 'one'], otherwise: 'both' },
  diffusivity_mm2day: {
    type: 'number',
    quantity: 'diffusivity',
    unit: 'mm2day',
    meaning: 'how fast moisture spreads in it; the usual value is an order of magnitude for wood across the grain',
    limits: { least: 1e-14, most: 1e-5 },
    otherwise: 10,
  },
} as const satisfies Readonly<Record<string, Input>>;

/** From the wettest place to the open face: half the board where both are open. */
export const wayOut = (thickness: number, open_faces: 'both' | 'one'): Metres => metres(open_faces === 'both' ? thickness / 2 : thickness);

export const dryingSources: readonly Source[] = [
  memory('Crank, The Mathematics of Diffusion, 2nd edition (1975), plane sheet'),
  memory('Moisture in wood across the grain at room temperature: about 10⁻¹⁰ m²/s, 10 mm² a day, as an order of magnitude'),
];

export const DRYING_LIMITS: readonly string[] = [
  'An order of magnitude: no measured drying rate of a wall of a recreational vehicle was found, and paint, glue and still air slow it further. A thin open board may take days where this says hours.',
  'Evenly wet at first, dry air at the open face, one way out.',
];
