import { jointWidth, type MovementClassId, movementClass } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, metres, showIn } from '../units';
import { CLASS_LIMITS, CLASS_SOURCES, classInput, movementInput, widthOutput } from './joint-inputs';
import { put, step } from './working';

export const jointWidthSheet = defineWorksheet({
  id: 'joint-width',
  title: 'How wide a bead must be',
  tells: 'How wide, from bond to bond, a bead of this class must be to live with the movement of its seam.',
  example: { opening_mm: 2, shear_mm: 3, class: '25' },
  inputs: {
    opening_mm: movementInput('how far warmth parts the two faces, from the worksheet joint-movement'),
    closing_mm: movementInput('how far it closes them up'),
    shear_mm: movementInput('how far one face slides along the other: a lap seam slides, a butt joint opens'),
    other_opening_mm: movementInput('what else parts them: racking on the road, a frame that twists, wood that dries'),
    other_closing_mm: movementInput('what else closes them up: wood that swells'),
    class: classInput,
    tolerance_mm: movementInput('by which the joint may come out narrower than meant', 0.05),
  },
  results: {
    width_mm: widthOutput('least width, tolerance added'),
    opening_width_mm: widthOutput('for opening and sliding together, tolerance added'),
    closing_width_mm: widthOutput('for closing up, tolerance added'),
  },
  calculate: (g) => {
    const cls = movementClass(g.class as MovementClassId);
    const opening = metres(g.opening_mm + g.other_opening_mm);
    const closing = metres(g.closing_mm + g.other_closing_mm);
    const w = jointWidth({ opening, closing, shear: metres(g.shear_mm) }, cls, metres(g.tolerance_mm));
    const mm = (si: number): string => put(si, 'small-length', 'mm', 2);
    const wide = (si: number): string => showIn(si, 'small-length', 'mm');
    const t = `t = ${mm(g.tolerance_mm)} mm`;
    return accept({
      result: { width_mm: w.width, opening_width_mm: w.for_opening, closing_width_mm: w.for_closing },
      working: [
        step('Opening', 'by warmth + by all else', `${mm(g.opening_mm)} + ${mm(g.other_opening_mm)} mm`, `${mm(opening)} mm`),
        step('Closing', 'by warmth + by all else', `${mm(g.closing_mm)} + ${mm(g.other_closing_mm)} mm`, `${mm(closing)} mm`),
        step(
          'For opening and sliding',
          'A = (1 + m)² − 1; w = (e + √(e² + A (e² + s²))) / A + t',
          `m = ${put(cls.extension, 'share', 'fraction', 3)}, e = ${mm(opening)} mm, s = ${mm(g.shear_mm)} mm, ${t}`,
          wide(w.for_opening),
        ),
        step('For closing', 'w = c / m + t', `m = ${put(cls.compression, 'share', 'fraction', 3)}, c = ${mm(closing)} mm, ${t}`, wide(w.for_closing)),
        step('Width', 'the larger of the two', '', `${wide(w.width)} (${showIn(w.width, 'small-length', 'in')})`),
      ],
      remarks: [
        ...(w.width > 0.025
          ? [
              'Wider than one bead is laid: 25 mm is the most that a handbook gives. Compress butyl tape under the flange and cap it wide and thin, or let a gasket take the movement.',
            ]
          : w.width < 0.006
            ? ['Building practice lays no joint under 6 mm wide; take 6 mm where there is room.']
            : []),
      ],
    });
  },
  sources: [
    seen('Cornell University ARCH 262, J. Ochshorn, assignment 3: W = (100/X)(α L ΔT + M) + t', 'https://courses.cit.cornell.edu/arch262/arch262f05/assign3comments.html'),
    seen('SCGMA technical bulletin, Sealant joint design: sliding by Pythagoras', 'https://scgma.com/sealant-joint-design'),
    ours('opening and sliding at once: closed form, which is the one or the other where only one happens'),
    seen('6 mm at least, 25 mm at most: Construction Waterproofing Handbook, p. 247; Architectural Detailing', 'https://www.northernarchitecture.us'),
    ...CLASS_SOURCES,
  ],
  limits: ['Movements are counted from the day the bead was laid, not from coldest to hottest.', ...CLASS_LIMITS],
  cautions: [],
});
