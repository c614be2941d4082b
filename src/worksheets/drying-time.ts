import { dryingTime, fractionValidity, timesLonger } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, metres, share } from '../units';
import { DRYING_LIMITS, dryingSources, slabInputs, wayOut } from './drying-inputs';
import { step } from './working';

const DAY = 86400;
const SPANS = [
  { name: 'year', s: 365.25 * DAY },
  { name: 'month', s: 30.4 * DAY },
  { name: 'day', s: DAY },
  { name: 'hour', s: 3600 },
  { name: 'minute', s: 60 },
] as const;

/** One figure only: the answer is not worth more. */
const roughly = (s: number): string => {
  const span = SPANS.find((x) => s >= 0.95 * x.s);
  if (span === undefined) return 'less than a minute';
  const n = Number((s / span.s).toPrecision(1));
  return n >= 1000 ? 'more than a thousand years' : `about ${n} ${span.name}${n === 1 ? '' : 's'}`;
};

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
    says: { type: 'text', meaning: 'whether the laminated wall dries by itself' },
    with_open_faces: { type: 'text', meaning: 'with its faces open, at the least' },
    through_the_edge: { type: 'text', meaning: 'shut in between skins, through the edge alone' },
    times_longer_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'so many times longer: the square of the two ways', decimals: 0 },
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
        says: season ? 'it does not dry by itself in a season' : 'it may dry through its edge in a season; measure again',
        with_open_faces: roughly(open.value),
        through_the_edge: roughly(shut.value),
        times_longer_number: times,
      },
      working: [
        step(
          'Way out through the faces',
          open_faces === 'both' ? 'half the thickness' : 'the whole thickness',
          `${figure(thickness_mm * 1000, 1)} mm`,
          `${figure(way * 1000, 2)} mm`,
        ),
        step('Time with open faces', 't = Fo L² / D, Fo from the share left', `D = ${figure(D * DAY * 1e6, 2)} mm² a day`, roughly(open.value)),
        step('Time through the edge', 'the same, L = way to the edge', `${figure(edge_way_m, 2)} m`, roughly(shut.value)),
        step('So many times longer', '(way to the edge / way through the faces)²', '', figure(times, 0)),
      ],
    });
  },
  sources: [...dryingSources, seen('Open plywood takes weeks to a month: web pages of the trade, weak')],
  limits: [...DRYING_LIMITS, 'Along the grain moisture may spread ten times as fast; try ten times the value for a core whose grain runs to the edge.'],
  cautions: ['Do not shut a wet wall in: opened, it must dry before it is closed again. Wires and gas lines run in walls; opening them is work for somebody who knows where.'],
});
