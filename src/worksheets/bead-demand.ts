import { type BeadFate, beadDemand, classWidths, IN_RESERVE, jointWidth, type MovementClassId, movementClass } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, figure, metres, showIn } from '../units';
import { CLASS_LIMITS, CLASS_SOURCES, classInput, movementInput, shareOutput, widthOutput } from './joint-inputs';
import { put, step } from './working';

/** What to do instead, in the words of the trade. */
const INSTEAD = 'compress butyl tape under the flange and cap it wide and thin';

const SAYS: Readonly<Record<BeadFate, (width: string) => string>> = {
  holds: () => 'this bead lives with the movement',
  'no-reserve': (width) => `this bead just bears it, with nothing in reserve; lay it wider than ${width}`,
  tears: (width) => `this bead will tear; ${INSTEAD}, or make it ${width} wide`,
  squeezed: (width) => `this bead will be squeezed out; ${INSTEAD}, or make it ${width} wide`,
};

export const beadDemandSheet = defineWorksheet({
  id: 'bead-demand',
  title: 'Will this bead tear?',
  tells: 'What the movement of a seam asks of a bead of this width and class, and whether the bead lives with it.',
  example: { width_mm: 6, shear_mm: 5, class: '25' },
  inputs: {
    width_mm: {
      type: 'number',
      quantity: 'small-length',
      unit: 'mm',
      meaning: 'width of the bead from bond to bond: the gap it bridges, not the cap that is seen',
      limits: { least: 0.0005, most: 0.1 },
    },
    opening_mm: movementInput('how far the two faces part, from the worksheet joint-movement'),
    closing_mm: movementInput('how far they close up'),
    shear_mm: movementInput('how far one face slides along the other: a lap seam slides, a butt joint opens'),
    class: classInput,
  },
  results: {
    verdict: { type: 'text', meaning: 'holds, no-reserve, tears or squeezed' },
    says: { type: 'text', meaning: 'what comes of it, and what to do' },
    demand_percent: shareOutput('stretch of the bead, of its width'),
    squeeze_percent: shareOutput('squeeze of the bead, of its width'),
    used_percent: shareOutput('how much of its class that uses up; above 100 it is beyond it'),
    needed_width_mm: widthOutput('least width at which its class would bear it'),
    narrowest_mm: widthOutput('how narrow a joint of this width may become in its class'),
    widest_mm: widthOutput('how wide it may become'),
  },
  calculate: (g) => {
    const cls = movementClass(g.class as MovementClassId);
    const asked = { opening: metres(g.opening_mm), closing: metres(g.closing_mm), shear: metres(g.shear_mm) };
    const d = beadDemand(asked, metres(g.width_mm), cls);
    const needed = jointWidth(asked, cls, metres(0)).width;
    const may = classWidths(metres(g.width_mm), cls);
    const mm = (si: number): string => put(si, 'small-length', 'mm', 1);
    const percent = (share: number): string => `${figure(100 * share, 0)} %`;
    return accept({
      result: {
        verdict: d.fate,
        says: SAYS[d.fate](showIn(needed, 'small-length', 'mm')),
        demand_percent: d.stretch,
        squeeze_percent: d.squeeze,
        used_percent: d.used,
        needed_width_mm: needed,
        narrowest_mm: may.narrowest,
        widest_mm: may.widest,
      },
      working: [
        step('Stretch', '√((w + e)² + s²) / w − 1', `w = ${mm(g.width_mm)} mm, e = ${mm(g.opening_mm)} mm, s = ${mm(g.shear_mm)} mm`, percent(d.stretch)),
        step('Squeeze', 'c / w', `c = ${mm(g.closing_mm)} mm`, percent(d.squeeze)),
        step(
          'Of its class',
          'stretch / extension, squeeze / compression, the larger',
          `class ${cls.id}: ${percent(cls.extension)} and ${percent(cls.compression)}`,
          percent(d.used),
        ),
        step('Width that would do', 'see the worksheet joint-width', '', showIn(needed, 'small-length', 'mm')),
      ],
      remarks: cls.extension < 0.125 ? ['Below the lowest class of ASTM C920: such a sealant is for seams that hardly move.'] : [],
    });
  },
  sources: [
    seen('SCGMA technical bulletin, Sealant joint design: sliding by Pythagoras', 'https://scgma.com/sealant-joint-design'),
    ours(`a bead counts as safe up to ${figure(100 * IN_RESERVE, 0)} % of its class, because sources on expansion differ by up to a quarter`),
    ours('butyl under the flange seals by flow and follows any movement; the cap keeps sun and water off: seams of rigs rarely have room for a joint as wide as buildings give it'),
    ...CLASS_SOURCES,
  ],
  limits: [
    'A cap over a lap is stretched where it bridges the edge: count the free width there, which is less than the cap.',
    'No width makes up for a bead that bonds on three sides, or for silicone left underneath.',
    ...CLASS_LIMITS,
  ],
  cautions: [],
});
