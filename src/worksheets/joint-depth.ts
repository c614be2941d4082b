import { type JointDepth, jointDepth, jointWidthValidity } from '../science';
import { COMMON_PRACTICE, defineWorksheet, seen } from '../terms';
import { accept, metres, showIn } from '../units';
import { widthOutput } from './joint-inputs';
import { put, step } from './working';

const RULES: Readonly<Record<JointDepth['rule'], string>> = {
  'half-the-width': 'half the width',
  'least-depth': 'half the width, but 6 mm at least',
  narrow: '3 mm, for a joint narrower than 6 mm',
};

export const jointDepthSheet = defineWorksheet({
  id: 'joint-depth',
  title: 'How deep a bead, and what rod behind it',
  tells: 'How deep the sealant of a joint should be, and which backer rod keeps it from bonding to the bottom.',
  example: { width_mm: 12 },
  inputs: {
    width_mm: {
      type: 'number',
      quantity: 'small-length',
      unit: 'mm',
      meaning: 'width of the joint, from face to face',
      limits: { least: jointWidthValidity.least, most: jointWidthValidity.most },
    },
  },
  results: {
    depth_mm: widthOutput('depth of sealant in the middle'),
    closed_rod_mm: widthOutput('diameter of closed-cell backer rod'),
    soft_rod_mm: widthOutput('diameter of soft, open-cell rod'),
  },
  calculate: ({ width_mm: w }) => {
    const found = jointDepth(metres(w));
    if (!found.ok) return found;
    const d = found.value;
    const mm = (si: number): string => showIn(si, 'small-length', 'mm');
    return accept({
      result: { depth_mm: d.depth, closed_rod_mm: d.closed_rod, soft_rod_mm: d.soft_rod },
      working: [
        step('Depth', RULES[d.rule], `w = ${put(w, 'small-length', 'mm', 1)} mm`, mm(d.depth)),
        step('Closed-cell rod', 'w + 1/8 in', '', mm(d.closed_rod)),
        step('Soft rod', '1.25 w', '', mm(d.soft_rod)),
      ],
      remarks:
        d.rule === 'narrow' || Math.abs(w - 0.006) < 1e-9
          ? ['Sources disagree on narrow joints: building practice lays none under 6 mm and fills 6 mm as deep as wide; one silicone sheet fills up to 6 mm of width 3 mm deep.']
          : [],
    });
  },
  sources: [
    seen('Architectural Detailing: depth half the width, 6 to 13 mm; 19 mm wide is 9 mm deep, 6 mm wide is 6 mm deep', 'https://www.northernarchitecture.us'),
    seen('Construction Waterproofing Handbook, p. 247: 6 mm wide at least, 25 mm at most'),
    seen('Acetoxy silicone 20HM data sheet: 3 mm deep up to 6 mm of width, 3 mm at least'),
    seen('Polyurethane technical data, p. 2: closed-cell rod 1/8 in over the width, soft rod a quarter over'),
    COMMON_PRACTICE,
  ],
  limits: [
    'Sealant bonds to the two faces and never to the bottom: where there is no room for rod, lay bond breaker tape.',
    'A bead over a lap or a flange has no rod; there the tape underneath takes the movement.',
  ],
  cautions: ['Do not puncture closed-cell rod: it gives off gas and blisters the bead.'],
});
