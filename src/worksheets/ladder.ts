import { ladder, landingValidity } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, metres, showIn } from '../units';
import { put, step } from './working';

export const ladderSheet = defineWorksheet({
  id: 'ladder',
  title: 'Ladder length and foot distance',
  tells: 'How long a leaning ladder must be for an edge of this height, and how far out its foot stands.',
  example: { landing_height_ft: 10 },
  inputs: {
    landing_height_m: {
      type: 'number',
      quantity: 'length',
      unit: 'm',
      meaning: 'height above the ground of the edge it leans on',
      limits: { least: landingValidity.least, most: landingValidity.most },
    },
    rails_above_m: {
      type: 'number',
      quantity: 'length',
      unit: 'm',
      meaning: 'how far the rails reach above the edge, measured upright',
      limits: { least: 0, most: 2 },
      otherwise: 0.9144,
    },
  },
  results: {
    least_length_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'shortest ladder that reaches far enough', decimals: 2 },
    least_length_ft: { type: 'number', quantity: 'length', unit: 'ft', meaning: 'the same', decimals: 1 },
    working_length_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'along the ladder, from foot to edge', decimals: 2 },
    foot_distance_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'from the foot to below the edge', decimals: 2 },
    foot_distance_ft: { type: 'number', quantity: 'length', unit: 'ft', meaning: 'the same', decimals: 1 },
    angle_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'between ladder and ground', decimals: 1 },
  },
  calculate: ({ landing_height_m: H, rails_above_m: R }) => {
    const l = ladder(metres(H), metres(R));
    if (!l.ok) return l;
    const m = (si: number): string => put(si, 'length', 'm', 2);
    const both = (si: number): string => `${showIn(si, 'length', 'm')} (${showIn(si, 'length', 'ft')})`;
    return accept({
      result: {
        least_length_m: l.value.least_length,
        least_length_ft: l.value.least_length,
        working_length_m: l.value.working_length,
        foot_distance_m: l.value.foot_distance,
        foot_distance_ft: l.value.foot_distance,
        angle_deg: l.value.angle,
      },
      working: [
        step('Angle of a ladder whose foot stands out a quarter of its working length', 'α = arccos(1/4)', '', `${put(l.value.angle, 'angle', 'deg', 1)}°`),
        step('Working length', 'L = H / sin α', `${m(H)} m / 0.968`, both(l.value.working_length)),
        step('Foot distance', 'f = L / 4', `${m(l.value.working_length)} m / 4`, both(l.value.foot_distance)),
        step('Shortest ladder', '(H + rails above) / sin α', `(${m(H)} m + ${m(R)} m) / 0.968`, both(l.value.least_length)),
      ],
    });
  },
  sources: [
    seen(
      '29 CFR 1926.1053(b)(1) and (b)(5)(i): rails 3 ft above the landing; foot a quarter of the working length',
      'https://www.osha.gov/laws-regs/regulations/standardnumber/1926/1926.1053',
    ),
  ],
  limits: [
    'A leaning ladder on level, firm ground against a rigid edge; an awning, a gutter or a rack is none.',
    'The rule binds employers; for owners it is advice. The ladder’s own label comes first.',
  ],
  cautions: [
    'Falls from ladders are the likeliest way to be badly hurt in this work. Have someone at the foot.',
    'Tie the top or let the rails reach 3 ft (0.9 m) above the edge; keep your belt buckle between the rails and off the top three rungs.',
    'Look for overhead wires before it goes up. Not in wind, not at thunder.',
    'Step on a roof only if its maker says that it may be walked on.',
  ],
});
