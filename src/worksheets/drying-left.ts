import { fractionLeft } from '../science';
import { defineWorksheet } from '../terms';
import { accept, figure } from '../units';
import { DRYING_LIMITS, dryingSources, slabInputs, wayOut } from './drying-inputs';
import { step } from './working';

const DAY = 86400;

export const dryingLeft = defineWorksheet({
  id: 'drying-left',
  title: 'How much moisture is left after a time',
  tells: 'What share of the excess moisture is still in a board that dries through its open faces.',
  example: { thickness_mm: 12, open_faces: 'one', time_d: 7 },
  inputs: {
    ...slabInputs,
    time_d: { type: 'number', quantity: 'duration', unit: 'd', meaning: 'how long it has dried', limits: { least: 0, most: 36500 * DAY } },
  },
  results: {
    left_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'share of the excess moisture that is left', decimals: 0 },
    fourier_number: { type: 'number', quantity: 'number', unit: 'number', meaning: 'time against the square of the way out', decimals: 3 },
  },
  calculate: ({ thickness_mm, open_faces, diffusivity_mm2day: D, time_d: t }) => {
    const L = wayOut(thickness_mm, open_faces);
    const fourier = (D * t) / L ** 2;
    const left = fractionLeft(fourier);
    return accept({
      result: { left_percent: left, fourier_number: fourier },
      working: [
        step('Way out', open_faces === 'both' ? 'half the thickness' : 'the whole thickness', `${figure(thickness_mm * 1000, 1)} mm`, `${figure(L * 1000, 2)} mm`),
        step('Time against the way', 'Fo = D t / L²', `D = ${figure(D * DAY * 1e6, 2)} mm² a day, t = ${figure(t / DAY, 2)} days`, figure(fourier, 3)),
        step('Share left', 'Σ 8 / ((2n+1)² π²) × exp(−(2n+1)² π² Fo / 4)', `Fo = ${figure(fourier, 3)}`, `${figure(left * 100, 0)} %`),
      ],
    });
  },
  sources: dryingSources,
  limits: DRYING_LIMITS,
  cautions: [],
});
