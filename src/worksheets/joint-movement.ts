import { EXPANDING, type Expansion, expansionOf, expansionSources, HELD_STILL, jointMovement, oneExpansion, partTemperature, type SeamPart } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, figure, fromSi, kelvin, metres, refuse, showIn } from '../units';
import { put, step } from './working';

const MADE_OF = [...EXPANDING.map((m) => m.id), 'held-still', 'by-sheet'] as const;
type MadeOf = (typeof MADE_OF)[number];

const temperature = (meaning: string) =>
  ({ type: 'number', quantity: 'temperature', unit: 'c', meaning, limits: { least: partTemperature.least, most: partTemperature.most } }) as const;
const madeOf = (which: string) =>
  ({
    type: 'word',
    meaning: `what ${which} is made of; held-still: it does not move; by-sheet: its coefficient is given below`,
    words: MADE_OF,
  }) as const;
const coefficient = (which: string) =>
  ({
    type: 'number',
    quantity: 'expansion',
    unit: 'ppmk',
    meaning: `coefficient of ${which} from its sheet, where it is made of by-sheet`,
    limits: { least: 0, most: 300e-6 },
    otherwise: 0,
  }) as const;
const length = (meaning: string) => ({ type: 'number', quantity: 'small-length', unit: 'mm', meaning, decimals: 1 }) as const;

const expansion = (made: MadeOf, given: number): Expansion | undefined => (made === 'held-still' ? HELD_STILL : made === 'by-sheet' ? oneExpansion(given) : expansionOf(made));

const millionths = (n: number): string => put(n, 'expansion', 'ppmk', 1);
const spanWords = ({ low, high }: Expansion): string => `${low === high ? millionths(low) : `${millionths(low)} to ${millionths(high)}`} millionths per °C`;

const whence = (made: MadeOf): string =>
  made === 'held-still'
    ? 'does not move'
    : made === 'by-sheet'
      ? 'as given'
      : expansionSources(made)
          .map((s) => s.text)
          .join('; ');

export const jointMovementSheet = defineWorksheet({
  id: 'joint-movement',
  title: 'How far a seam moves with the weather',
  tells: 'How far two parts of a seam move against each other between the coldest and the hottest they get, counted from the day the bead was laid.',
  example: {
    length_mm: 3000,
    one_part: 'aluminium',
    other_part: 'plywood',
    one_coldest_c: -15,
    one_hottest_c: 65,
    other_coldest_c: -10,
    other_hottest_c: 35,
    laid_coldest_c: 15,
    laid_warmest_c: 25,
  },
  inputs: {
    length_mm: {
      type: 'number',
      quantity: 'small-length',
      unit: 'mm',
      meaning: 'from where the parts are fixed to each other to the far end of the bead; the whole part where only one end is fixed',
      limits: { least: 0.01, most: 20 },
    },
    one_part: madeOf('the first part'),
    other_part: madeOf('the other part'),
    one_expansion_ppmk: coefficient('the first part'),
    other_expansion_ppmk: coefficient('the other part'),
    one_coldest_c: temperature('coldest that the first part gets: a roof falls below the air on a clear night'),
    one_hottest_c: temperature('hottest that the first part gets: a skin in sun as the worksheet surface-temperature gives it, by its colour'),
    other_coldest_c: temperature('coldest that the other part gets'),
    other_hottest_c: temperature('hottest that the other part gets: a frame inside stays near the air in the rig'),
    laid_coldest_c: temperature('the parts when the bead is laid; where that is not known, the coldest they may have been'),
    laid_warmest_c: temperature('the same; where it is not known, the warmest they may have been'),
  },
  results: {
    movement_mm: length('the most that the seam moves away from where the bead was laid'),
    least_movement_mm: length('what it comes to with the kindest coefficients: the sources disagree'),
    grows_mm: length('the most by which the first part outgrows the other'),
    shrinks_mm: length('the most by which the first part falls short of the other'),
  },
  calculate: (g) => {
    const parts = [
      { which: 'one', made: g.one_part, given: g.one_expansion_ppmk },
      { which: 'other', made: g.other_part, given: g.other_expansion_ppmk },
    ] as const;
    const missing = parts.filter((p) => p.made === 'by-sheet' && p.given === 0);
    if (missing.length > 0)
      return refuse(
        ...missing.map((p) => ({
          code: 'missing',
          path: `${p.which}_expansion_ppmk`,
          expected: 'a coefficient above 0 for a part that is made of by-sheet',
          received: 'nothing',
          sentence: 'Give the coefficient of this part, or say what it is made of.',
        })),
      );
    const [one, other] = [expansion(g.one_part, g.one_expansion_ppmk), expansion(g.other_part, g.other_expansion_ppmk)];
    if (one === undefined || other === undefined) throw new Error(`no coefficient for ${g.one_part} or ${g.other_part}`);
    const part = (e: Expansion, coldest: number, hottest: number): SeamPart => ({ expansion: e, coldest: kelvin(coldest), hottest: kelvin(hottest) });
    const found = jointMovement({
      length: metres(g.length_mm),
      one: part(one, g.one_coldest_c, g.one_hottest_c),
      other: part(other, g.other_coldest_c, g.other_hottest_c),
      alike: g.one_part === g.other_part && g.one_part !== 'by-sheet',
      laid_coldest: kelvin(g.laid_coldest_c),
      laid_warmest: kelvin(g.laid_warmest_c),
    });
    if (!found.ok) return found;
    const m = found.value;
    const mm = (si: number): string => showIn(si, 'small-length', 'mm');
    const c = (k: number): string => figure(fromSi(k, 'temperature', 'c'), 0);
    const laid = `laid at ${c(g.laid_coldest_c)} to ${c(g.laid_warmest_c)} °C`;
    return accept({
      result: { movement_mm: m.most, least_movement_mm: m.least, grows_mm: m.grows, shrinks_mm: m.shrinks },
      working: [
        step('First part', 'least and most that its sources say', whence(g.one_part), spanWords(one)),
        step('Other part', 'least and most that its sources say', whence(g.other_part), spanWords(other)),
        step(
          'Hottest',
          '(α₁ ΔT₁ − α₂ ΔT₂) L',
          `first ${c(g.one_hottest_c)} °C, other ${c(g.other_hottest_c)} °C, ${laid}, L = ${mm(g.length_mm)}`,
          `first outgrows by up to ${mm(m.grows)}`,
        ),
        step('Coldest', '(α₁ ΔT₁ − α₂ ΔT₂) L', `first ${c(g.one_coldest_c)} °C, other ${c(g.other_coldest_c)} °C, ${laid}`, `first falls short by up to ${mm(m.shrinks)}`),
        step('Movement', 'the larger of the two', '', `${mm(m.least)} to ${mm(m.most)} (${showIn(m.most, 'small-length', 'in')})`),
      ],
      remarks: [
        ...(m.most > 0 && m.least < 0.75 * m.most ? ['The sources on how much these materials stretch are far apart, or the day of laying is open. Take the larger figure.'] : []),
        ...([g.one_part, g.other_part].some((p) => p === 'stainless-steel') ? ['The coefficient of stainless steel is from memory, unconfirmed.'] : []),
      ],
    });
  },
  sources: [
    seen(
      'Cornell University ARCH 262, J. Ochshorn, assignment 3, fall 2005 and 2007: ΔL = α L ΔT, counted from the temperatures of installation',
      'https://courses.cit.cornell.edu/arch262/arch262f05/assign3comments.html',
    ),
    seen('SCGMA technical bulletin, Sealant joint design', 'https://scgma.com/sealant-joint-design'),
    seen('Construction Waterproofing Handbook, p. 247; Architectural Detailing: spans of temperature for design', 'https://www.northernarchitecture.us'),
    ours('the difference of two parts, each with its own temperatures: closed form; the corners of what disagreeing sources say'),
  ],
  limits: [
    'Free movement. Screws every hand’s width, glue or a bonded wall hold parts together: then the seam sees less, and the fasteners more.',
    'Hottest and coldest count together. A skin in sudden shade over a frame still warm is given as other temperatures.',
    'Where nobody knows how cold and how hot: a school of architecture takes 72 K between for air, a handbook 83 K, Architectural Detailing 100 K for dark masonry in sun.',
    'Wood and plywood move far more by damp than by warmth; that is not in here.',
    'Membranes are left out: glued down they go with what is under them.',
  ],
  cautions: [],
});
