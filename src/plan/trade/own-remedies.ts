import type { Remedy } from './trade-types';

/** Ways of putting right that the rules ask for and the trade table does not hold. */
export const ownRemedies: readonly Remedy[] = [
  {
    id: 'tyre-from-a-distance',
    for: ['tyre.low'],
    steps: [
      'Look over tread, both sidewalls, valve and rim; a cut, a bulge or a crack ends this job',
      'cold, in the shade, nobody beside the wheel',
      'clip-on chuck, gauge in the line, stand out of line with the sidewall',
      'fill in small steps to the set cold pressure, never above what the sidewall says; a crackle or a bulge: stop, let it out, leave it to the trade',
      'leave it standing, read again after 24 h, then weekly',
    ],
    materials: 'Air',
    tools: 'Clip-on chuck with a long hose, gauge',
    minutes: [15, 40],
    skill: 'practised',
    must_be_true: 'Certain that it was not moved since it was right',
    prove: 'Holds its pressure, temperature counted, for 24 h and then for a month',
    cautions: ['tyre'],
    hand_over: 'It was moved, or that is not known; it has been this low before; anything shows on it',
    sources: [['TYRE80']],
    status: 'seen',
    extent: 'part',
  },
];
