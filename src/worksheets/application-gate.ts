import { applicationGate, DEW_MARGIN, gateSurface } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, figure, kelvin } from '../units';
import { step } from './working';

const temperature = (meaning: string) => ({ type: 'number', quantity: 'temperature', unit: 'c', meaning, limits: { least: gateSurface.least, most: gateSurface.most } }) as const;
const difference = (meaning: string, most: number, otherwise: number) =>
  ({ type: 'number', quantity: 'temperature-difference', unit: 'k', meaning, limits: { least: 0, most }, otherwise }) as const;
const celsius = (k: number): string => `${figure(k - 273.15, 1)} °C`;

const WORDS = { kept: 'kept', 'too-close': 'too close to say', broken: 'broken', wet: 'wet', 'too-near': 'too near', clear: 'kept' } as const;

export const applicationGateSheet = defineWorksheet({
  id: 'application-gate',
  title: 'May it be laid now?',
  tells: 'Whether a sealant, tape or paint may be laid on a surface of this temperature: within the limits of its sheet and far enough above the dew point.',
  example: { surface_c: 14, dew_point_c: 12, least_surface_c: 4, most_surface_c: 37 },
  inputs: {
    surface_c: temperature('temperature of the surface itself, measured or from the worksheet surface-temperature'),
    dew_point_c: temperature('dew point of the air, from the worksheet dew-point'),
    least_surface_c: temperature('coldest surface that the product’s sheet allows'),
    most_surface_c: temperature('warmest surface that it allows'),
    needed_k: difference('how much warmer than the dew point the surface must be; the sheet may ask for more', 20, DEW_MARGIN),
    plus_minus_k: difference('how far the surface’s temperature may be off', 30, 0),
  },
  results: {
    allowed: { type: 'text', meaning: 'yes, no, or too close to say' },
    cold: { type: 'text', meaning: 'against the coldest allowed' },
    warm: { type: 'text', meaning: 'against the warmest allowed' },
    dew: { type: 'text', meaning: 'against the dew point' },
    margin_k: { type: 'number', quantity: 'temperature-difference', unit: 'k', meaning: 'how much warmer than the dew point the surface is', decimals: 1 },
  },
  calculate: ({ surface_c: s, dew_point_c: d, least_surface_c: least, most_surface_c: most, needed_k, plus_minus_k: open }) => {
    const surface = kelvin(s);
    const found = applicationGate({ coldest: surface, cold_open: open, warmest: surface, warm_open: open }, kelvin(d), {
      least: kelvin(least),
      most: kelvin(most),
      dew_margin: needed_k,
    });
    if (!found.ok) return found;
    const g = found.value;
    const shut = g.cold === 'broken' || g.warm === 'broken' || g.dew === 'wet' || g.dew === 'too-near';
    return accept({
      result: { allowed: g.open ? 'yes' : shut ? 'no' : 'too close to say', cold: WORDS[g.cold], warm: WORDS[g.warm], dew: WORDS[g.dew], margin_k: s - d },
      working: [
        step('Against cold', 'surface ≥ coldest allowed', `${celsius(s)} ± ${figure(open, 1)} K; ${celsius(least)}`, WORDS[g.cold]),
        step('Against heat', 'surface ≤ warmest allowed', `${celsius(s)} ± ${figure(open, 1)} K; ${celsius(most)}`, WORDS[g.warm]),
        step('Against the dew point', 'surface − dew point ≥ margin', `${celsius(s)} − ${celsius(d)} = ${figure(s - d, 1)} K; ${figure(needed_k, 1)} K needed`, WORDS[g.dew]),
      ],
    });
  },
  sources: [
    seen('ISO 8502-4 practice as quoted on coating inspection pages: at least 3 K above the dew point'),
    ours('The limits themselves are allowed; within the uncertainty of a limit nothing is said for certain'),
  ],
  limits: ['Rain, wind and light are not in it. The limits are those of the product’s own sheet; without a sheet there are none to give here.'],
  cautions: ['Wet or frosted roofs are slippery.'],
});
