import { loadOfIndex, readTyreSize, speedOfSymbol, type TyreSize } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept } from '../units';
import { put, step } from './working';

const NOT_TOLD = 'not told by the size';

const mm = (si: number): string => put(si, 'length', 'mm', 1);

const diameterStep = (s: TyreSize) =>
  s.overall_diameter === undefined || s.section_height === undefined
    ? step('Overall diameter', 'not in the name of this form', '', 'only the maker’s table tells')
    : s.aspect === undefined
      ? step('Section height', '(D − rim) / 2', `(${mm(s.overall_diameter)} − ${mm(s.rim)}) / 2`, `${mm(s.section_height)} mm`)
      : step('Overall diameter', 'D = rim + 2 × width × aspect', `${mm(s.rim)} + 2 × ${mm(s.section_width)} × ${s.aspect}`, `${mm(s.overall_diameter)} mm`);

export const tyreSize = defineWorksheet({
  id: 'tyre-size',
  title: 'Size of a tyre',
  tells: 'What the letters and figures of a tyre’s size say, and how large it is.',
  example: { size: 'ST225/75R15 117/112N' },
  inputs: { size: { type: 'text', meaning: 'size as moulded, with load index and load range if they stand there', example: 'ST225/75R15 117/112N' } },
  results: {
    service: { type: 'text', meaning: 'passenger, metric, light-truck, special-trailer, temporary, commercial, truck or unmarked' },
    construction: { type: 'text', meaning: 'radial, bias or belted' },
    section_width_mm: { type: 'number', quantity: 'length', unit: 'mm', meaning: 'nominal width', decimals: 1 },
    aspect_percent: { type: 'number', quantity: 'share', unit: 'percent', meaning: 'section height over width', decimals: 0 },
    rim_in: { type: 'number', quantity: 'length', unit: 'in', meaning: 'diameter of the rim', decimals: 1 },
    section_height_mm: { type: 'number', quantity: 'length', unit: 'mm', meaning: 'height of the sidewall', decimals: 1 },
    overall_diameter_mm: { type: 'number', quantity: 'length', unit: 'mm', meaning: 'nominal diameter, without load', decimals: 1 },
    load_index_single: { type: 'text', meaning: 'load index of a tyre alone' },
    load_index_dual: { type: 'text', meaning: 'load index of a tyre in a dual pair' },
    speed_symbol: { type: 'text', meaning: 'speed symbol' },
    load_range: { type: 'text', meaning: 'load range letter' },
  },
  calculate: ({ size }) => {
    const read = readTyreSize(size);
    if (!read.ok) return read;
    const s = read.value;
    const d = s.description;
    const load = d.load_index_single === undefined ? undefined : loadOfIndex(d.load_index_single);
    if (load !== undefined && !load.ok) return { ok: false, refusals: load.refusals.map((r) => ({ ...r, path: 'size' })) };
    const speed = d.speed_symbol === undefined ? undefined : speedOfSymbol(d.speed_symbol);
    if (speed !== undefined && !speed.ok) return { ok: false, refusals: speed.refusals.map((r) => ({ ...r, path: 'size' })) };
    return accept({
      result: {
        service: s.service,
        construction: s.construction,
        section_width_mm: s.section_width,
        aspect_percent: s.aspect ?? NOT_TOLD,
        rim_in: s.rim,
        section_height_mm: s.section_height ?? NOT_TOLD,
        overall_diameter_mm: s.overall_diameter ?? NOT_TOLD,
        load_index_single: d.load_index_single === undefined ? NOT_TOLD : String(d.load_index_single),
        load_index_dual: d.load_index_dual === undefined ? NOT_TOLD : String(d.load_index_dual),
        speed_symbol: d.speed_symbol ?? NOT_TOLD,
        load_range: d.load_range ?? NOT_TOLD,
      },
      working: [
        step('Rim', 'inches × 25.4', `${put(s.rim, 'length', 'in', 1)} × 25.4`, `${mm(s.rim)} mm`),
        ...(s.aspect === undefined || s.section_height === undefined
          ? []
          : [step('Section height', 'width × aspect', `${mm(s.section_width)} × ${s.aspect}`, `${mm(s.section_height)} mm`)]),
        diameterStep(s),
      ],
      remarks: s.service === 'passenger' || s.service === 'metric' ? ['A passenger tyre on a trailer or motorhome carries its rated load divided by 1.10.'] : [],
    });
  },
  sources: [
    seen('Size designations as explained in vehicle owners’ manuals; worked diameters'),
    seen('NHTSA interpretation of 17 November 1976 (FMVSS 120 S5.1.2): a passenger tyre’s load divided by 1.10', 'https://www.nhtsa.gov/node/71386'),
  ],
  limits: [
    'Nominal dimensions. On the rim and under load the tyre differs by about 1 %; clearances are taken on the vehicle.',
    'Equal dimensions do not mean equal load: the letters before and behind the size belong to it.',
  ],
  cautions: ['Fit only the size, load range and construction that the placard or manual names, the same on one axle.'],
});
