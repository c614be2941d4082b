import { loadOfIndex, readServiceDescription, speedOfSymbol } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure, type Kilograms, refuse, showIn } from '../units';
import { step } from './working';

const NOT_MOULDED = 'not moulded';

export const tyreLoadIndex = defineWorksheet({
  id: 'tyre-load-index',
  title: 'Load index and speed symbol',
  tells: 'The most one tyre may carry, alone and in a dual pair, and the speed for which it is rated.',
  example: { service_description: '117/112N' },
  inputs: { service_description: { type: 'text', meaning: 'what stands behind the size: one index, or two with a slash, and the letter', example: '117/112N' } },
  results: {
    single_kg: { type: 'number', quantity: 'mass', unit: 'kg', meaning: 'load on a tyre alone', decimals: 0 },
    single_lb: { type: 'number', quantity: 'mass', unit: 'lb', meaning: 'the same', decimals: 0 },
    dual_kg: { type: 'number', quantity: 'mass', unit: 'kg', meaning: 'load on each tyre of a dual pair', decimals: 0 },
    dual_lb: { type: 'number', quantity: 'mass', unit: 'lb', meaning: 'the same', decimals: 0 },
    speed_kmh: { type: 'number', quantity: 'speed', unit: 'kmh', meaning: 'speed at that load', decimals: 0 },
    speed_mph: { type: 'number', quantity: 'speed', unit: 'mph', meaning: 'the same', decimals: 0 },
  },
  calculate: ({ service_description }) => {
    const { description: d, unread } = readServiceDescription(service_description);
    const wrong = (received: string) =>
      refuse({
        code: 'not-a-service-description',
        path: 'service_description',
        expected: 'a load index, or two with a slash, and a speed symbol, such as 117/112N',
        received: `“${received}”`,
        sentence: `“${received}” cannot be read here. Type what stands behind the size, such as 117/112N, 96H or 121.`,
      });
    if (unread !== undefined || d.load_index_single === undefined) return wrong(service_description.trim());
    const under = <T extends { readonly ok: boolean }>(r: T): T =>
      'refusals' in r ? { ...r, refusals: (r.refusals as readonly object[]).map((x) => ({ ...x, path: 'service_description' })) } : r;
    const single = loadOfIndex(d.load_index_single);
    if (!single.ok) return under(single);
    const dual = d.load_index_dual === undefined ? undefined : loadOfIndex(d.load_index_dual);
    if (dual !== undefined && !dual.ok) return under(dual);
    const speed = d.speed_symbol === undefined ? undefined : speedOfSymbol(d.speed_symbol);
    if (speed !== undefined && !speed.ok) return under(speed);
    const words = (kg: Kilograms): string => `${figure(kg, 0)} kg (${showIn(kg, 'mass', 'lb')})`;
    const loads = [single.value, ...(dual === undefined ? [] : [dual.value])];
    return accept({
      result: {
        single_kg: single.value.load,
        single_lb: single.value.load,
        dual_kg: dual?.value.load ?? NOT_MOULDED,
        dual_lb: dual?.value.load ?? NOT_MOULDED,
        speed_kmh: speed?.value.speed ?? NOT_MOULDED,
        speed_mph: speed?.value.speed ?? NOT_MOULDED,
      },
      working: [
        step('Tyre alone', 'load index table', `index ${d.load_index_single}`, words(single.value.load)),
        ...(dual === undefined || d.load_index_dual === undefined
          ? []
          : [step('Each tyre of a dual pair', 'load index table', `index ${d.load_index_dual}`, words(dual.value.load))]),
        ...(speed === undefined || d.speed_symbol === undefined
          ? []
          : [step('Speed', 'speed symbol table', d.speed_symbol, `${showIn(speed.value.speed, 'speed', 'kmh')} (${showIn(speed.value.speed, 'speed', 'mph')})`)]),
      ],
      remarks: [
        ...(loads.some((l) => l.certainty === 'from-memory') ? ['Loads of index 151 and above are from memory, unconfirmed.'] : []),
        ...(loads.some((l) => l.certainty === 'disputed') ? ['Printed tables give 2180 or 2190 kg for index 135; the lower is shown.'] : []),
        ...(speed !== undefined && !speed.value.read ? [`The speed of symbol ${d.speed_symbol} is from memory, unconfirmed.`] : []),
        ...(d.load_index_single < (d.load_index_dual ?? 0) ? ['The index for a dual pair is higher than for a tyre alone: that is unusual. Read it again.'] : []),
      ],
    });
  },
  sources: [
    seen('Load index tables of a tyre maker (75 to 150) and of a public page (60 to 119); a misprint in each was set right'),
    memory('Load index 151 to 170, and 2180 kg for index 135'),
    seen('Speed symbols: tyre sellers’ tables and EU product sheets'),
    memory('Speed symbols B to F, J and P'),
  ],
  limits: [
    'At the pressure moulded beside it. Pounds on a sidewall may differ by rounding; what is moulded there governs.',
    'Trailer tyres without a symbol: 65 mph, from memory, unconfirmed.',
  ],
  cautions: ['The rating of the axle, the wheel and the vehicle may be lower. Weigh the rig loaded as it travels; too much weight is not cured by more air.'],
});
