import { squeezedWidth, squeezeOut } from '../science';
import { COMMON_PRACTICE, defineWorksheet, ours, seen } from '../terms';
import { accept, metres, refuse, showIn } from '../units';
import { widthOutput } from './joint-inputs';
import { put, step } from './working';

const size = (meaning: string, most: number) => ({ type: 'number', quantity: 'small-length', unit: 'mm', meaning, limits: { least: 0.0002, most } }) as const;

export const tapeSqueeze = defineWorksheet({
  id: 'tape-squeeze',
  title: 'Butyl tape under a flange',
  tells: 'How wide a butyl tape gets when the screws squeeze it, whether it fills the flange, and how much comes out at the edge.',
  example: { width_mm: 19, thickness_mm: 3.2, squeezed_mm: 1.6, flange_mm: 25 },
  inputs: {
    width_mm: size('width of the tape off the roll', 0.15),
    thickness_mm: size('thickness of the tape off the roll', 0.02),
    squeezed_mm: size('gap that is left once the screws are down', 0.02),
    flange_mm: size('width of the flange', 0.15),
  },
  results: {
    width_squeezed_mm: widthOutput('width under the flange'),
    comes_out_mm: widthOutput('what comes out on each side of a tape laid down the middle of the flange'),
    says: { type: 'text', meaning: 'whether it fills the flange' },
  },
  calculate: (g) => {
    if (g.squeezed_mm >= g.thickness_mm)
      return refuse({
        code: 'not-squeezed',
        path: 'squeezed_mm',
        expected: `less than the ${showIn(g.thickness_mm, 'small-length', 'mm')} of the tape`,
        received: showIn(g.squeezed_mm, 'small-length', 'mm'),
        sentence: 'A tape seals only when it is squeezed. Take one that is thicker than the gap it fills.',
      });
    const wide = squeezedWidth(metres(g.width_mm), metres(g.thickness_mm), metres(g.squeezed_mm));
    const out = Math.max(0, squeezeOut(metres(g.flange_mm), wide));
    const mm = (si: number): string => put(si, 'small-length', 'mm', 1);
    return accept({
      result: {
        width_squeezed_mm: wide,
        comes_out_mm: out,
        says: wide >= g.flange_mm ? 'fills the flange and shows at its edge: trim it when it stops flowing' : 'does not reach the edge of the flange: take wider or thicker tape',
      },
      working: [
        step('Width under the flange', 'w t / t₂', `${mm(g.width_mm)} mm × ${mm(g.thickness_mm)} mm / ${mm(g.squeezed_mm)} mm`, showIn(wide, 'small-length', 'mm')),
        step('Comes out on each side', '(squeezed − flange) / 2, nothing where it stays under', `(${mm(wide)} − ${mm(g.flange_mm)}) / 2`, showIn(out, 'small-length', 'mm')),
      ],
    });
  },
  sources: [
    ours('closed form: butyl keeps its volume'),
    seen('Metal Roof and Wall Cladding Code of Practice, New Zealand, strip sealants: the tape must be thicker than the gap, and is not stretched', 'https://metalroofing.org.nz'),
    COMMON_PRACTICE,
  ],
  limits: ['Cold butyl hardly flows: warm it, and turn the screws a second time after some days. Never overtighten a plastic flange.'],
  cautions: [],
});
