import { type MouldClassId, mouldClasses } from '../science';
import { type Input, memory, type Source, seen } from '../terms';

const [first, ...others] = mouldClasses.map((c) => c.id);

/** Which surface; the same question in every worksheet about mould. */
export const surfaceInput = {
  type: 'word',
  meaning: 'how readily the surface grows mould',
  words: [first ?? 'very-sensitive', ...others] as readonly MouldClassId[],
  otherwise: 'sensitive',
} as const satisfies Input;

export const mouldSources: readonly Source[] = [
  seen('Hukka and Viitanen 1999, Wood Science and Technology 33:475–485: equations read in public implementations', 'https://doi.org/10.1007/s002260050131'),
  seen('Sensitivity classes: Viitanen and Ojanen 2007, Ojanen and others 2010, as read in public implementations'),
  seen('Berger and others 2018, abstract: the model is not reliable enough to find its own parameters', 'https://arxiv.org/abs/1804.02992'),
];

export const declineSource: Source = memory('Decline in dry times against wood: factors 1, 0.5, 0.25, 0.1');
export const limitSource: Source = memory('Index 3 as the limit: ASHRAE 160, with its addendum of 2016');

export const MOULD_LIMITS: readonly string[] = [
  `Surfaces: ${mouldClasses.map((c) => `${c.id} is ${c.examples}`).join('; ')}.`,
  'A class of risk from a model fitted to test pieces, not the truth about this wall. Only looking, smelling and sampling find mould.',
  'Humidity and temperature at the surface count; inside a wall they are rarely known. What wood reads can be turned into humidity by the worksheet wood-equilibrium-humidity.',
];

export const MOULD_CAUTIONS: readonly string[] = [
  'Disturbed mould gets into the air. Wear gloves, goggles and a close-fitting N95 mask, and air the room. With asthma or weak immunity, or more than about a square metre, leave it to a professional.',
];
