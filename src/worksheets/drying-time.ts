import { dryingTime, fractionValidity, timesLonger } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, metres, share } from '../units';
import { DRYING_LIMITS, dryingSources, slabInputs, wayOut } from './drying-inputs';
import { step } from './working';

const DAY = 86400;
const days = (s: number): string => `${figure(s / DAY, s < 10 * DAY ? 1 : 0)} days`;

export const dryingTimeSheet = defineWorksheet({
  id: 'drying-time',
  title: 'How long a wall takes to dry, and why a laminated one does not',
  tells: 'How long until only a share of the excess moisture is left: in a board with open faces, and in the same board shut in between skins, which dries through its edge alone.',
  example: { thickness_mm: 3.2, edge_way_m: 0.3 },
  inputs: {
    ...slabInputs,
    left_percent: {
      type: 'number',
      quantity: 'share',
      unit: 'percent',
      meaning: 'share of the excess moisture that may be left',
      limits: { least: fractionValidity.least, most: fractionValidity.most },
      otherwise: 50,
    },
    edge_way_m: {
      type: 'number',
      quantity: 'length',
      unit: 'm',
      meaning: 'way from the wet spot to the nearest cut edge, where both faces are shut in',
      limits: { least: 0.001, most: 15 },
      otherwise: 0.3,
    },
  },
  results: {
    open_d: { type: 'number', quantity: 'duration', unit: 'd', meaning: 'with its faces open, at the least', decimals: 2 },
    laminated_d: { type: 'number', quantity: 'duration', unit: 'd', meaning: 'shut in, through the edge alone', decimals: 0 },
    times_longer_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'so many times longer: the square of the two ways', decimals: 0 },
    says: { type: 'text', meaning: 'whether the laminated wall dries by itself' },
  },
  calculate: ({ thickness_mm, open_faces, diffusivity_mm2day: D, left_percent, edge_way_m }) => {
    const way = wayOut(thickness_mm, open_faces);
    const open = dryingTime(way, D, share(left_percent));
    if (!open.ok) return open;
    const shut = dryingTime(metres(edge_way_m), D, share(left_percent));
    if (!shut.ok) return shut;
    const times = timesLonger(metres(edge_way_m), way);
    const season = shut.value > 90 * DAY;
    return accept({
      result: {
        open_d: open.value,
        laminated_d: shut.value,
        times_longer_number: times,
        says: season ? 'it does not dry by itself in a season' : 'it may dry through its edge in a season; measure again',
      },
      working: [
        step(
          'Way out through the faces',
          open_faces === 'both' ? 'half the thickness' : 'the whole thickness',
          `${figure(thickness_mm * 1000, 1)} mm`,
          `${figure(way * 1000, 2)} mm`,
        ),
        step('Time with open faces', 't = Fo L² / D, Fo from the share left', `D = ${figure(D * DAY * 1e6, 2)} mm² a day`, days(open.value)),
        step('Time through the edge', 'the same, L = way to the edge', `${figure(edge_way_m, 2)} m`, days(shut.value)),
        step('So many times longer', '(way to the edge / way through the faces)²', '', figure(times, 0)),
      ],
    });
  },
  sources: [...dryingSources, seen('Open plywood takes weeks to a month: web pages of the trade, weak')],
  limits: [...DRYING_LIMITS, 'Along the grain moisture may spread ten times faster; a wall then still takes ten times less than very long.'],
  cautions: ['Do not shut a wet wall in: opened, it must dry before it is closed again. Wires and gas lines run in walls; opening them is work for somebody who knows where.'],
});
