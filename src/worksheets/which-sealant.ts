import { bondSources, FAMILY_MOVEMENT, type MovementStanding, type SealantFor, TOUCHED, TOUCHING, type TouchedId, type TouchVerdict, whichSealant } from '../science';
import { defineWorksheet, ours } from '../terms';
import { accept, figure } from '../units';
import { step } from './working';

const surfaces = TOUCHED.map((t) => t.id) as readonly TouchedId[];
const NONE = 'none';

const VERDICT: Readonly<Record<TouchVerdict, string>> = { yes: 'goes', prep: 'goes with preparation', test: 'only where a test patch holds', no: 'never' };
const MOVEMENT: Readonly<Record<MovementStanding, string>> = {
  flows: 'follows any movement, squeezed under a flange',
  enough: 'bears it in every grade',
  'some-grades': 'bears it in its better grades only: read the class on the tube',
  'not-printed': 'nobody prints how far it stretches',
  'too-little': 'tears',
};

/** Squeezed under a flange or rolled over a joint; never an open bead. */
const TAPES: readonly string[] = ['butyl-tape', 'repair-tape'];

const wordOf = (id: string): string => TOUCHING.find((t) => t.id === id)?.word ?? id;
const listed = (found: readonly SealantFor[]): string => (found.length === 0 ? NONE : found.map((f) => wordOf(f.family)).join('; '));

export const whichSealantSheet = defineWorksheet({
  id: 'which-sealant',
  title: 'Which sealant for this seam',
  tells: 'Which families of sealant may seal a seam that has been stripped bare: by what its two sides are, and by how far it moves.',
  example: { one_side: 'tpo', other_side: 'abs', stretch_percent: 20 },
  inputs: {
    one_side: { type: 'word', meaning: TOUCHED.map((t) => `${t.id}: ${t.word}`).join('; '), words: surfaces },
    other_side: { type: 'word', meaning: 'the other side of the seam; same: both are of one', words: ['same', ...surfaces] as readonly (TouchedId | 'same')[], otherwise: 'same' },
    stretch_percent: {
      type: 'number',
      quantity: 'share',
      unit: 'percent',
      meaning: 'stretch that the movement asks of the bead, from the worksheet bead-demand; 0 passes movement over',
      limits: { least: 0, most: 20 },
      otherwise: 0,
    },
  },
  results: {
    bead: { type: 'text', meaning: 'what comes first for an open bead; none where nothing may be laid without a try' },
    bedding: { type: 'text', meaning: 'whether butyl tape may be squeezed under a flange here' },
    goes: { type: 'text', meaning: 'families that go, the best first' },
    prepared: { type: 'text', meaning: 'families that go with preparation' },
    tried: { type: 'text', meaning: 'families that go only where a test patch holds' },
    tears: { type: 'text', meaning: 'families that would stick but not bear the movement' },
    never: { type: 'text', meaning: 'families that must not touch one of the sides' },
  },
  calculate: (g) => {
    const found = whichSealant([g.one_side, g.other_side === 'same' ? g.one_side : g.other_side], g.stretch_percent);
    const lives = found.filter((f) => f.movement !== 'too-little');
    const of = (verdict: TouchVerdict): readonly SealantFor[] => lives.filter((f) => f.verdict === verdict);
    const bead = lives.find((f) => !TAPES.includes(f.family) && (f.verdict === 'yes' || f.verdict === 'prep'));
    const tape = found.find((f) => f.family === 'butyl-tape');
    const stretched = g.stretch_percent > 0;
    return accept({
      result: {
        bead: bead === undefined ? NONE : wordOf(bead.family),
        bedding: VERDICT[tape?.verdict ?? 'test'],
        goes: listed(of('yes')),
        prepared: listed(of('prep')),
        tried: listed(of('test')),
        tears: listed(found.filter((f) => f.movement === 'too-little' && f.verdict !== 'no')),
        never: listed(found.filter((f) => f.verdict === 'no')),
      },
      working: found.map((f) =>
        step(
          wordOf(f.family),
          f.reasons.map((r) => `${r.on}: ${VERDICT[r.verdict]}${r.words === '' ? '' : `, ${r.words}`}`).join('; '),
          stretched ? `at ${figure(100 * g.stretch_percent, 0)} % stretch: ${MOVEMENT[f.movement]}` : 'movement passed over',
          `${VERDICT[f.verdict]} (${f.confidence} confidence)`,
        ),
      ),
      remarks: [
        ...(bead?.family === 'silicone' || bead?.family === 'silicone-acetoxy'
          ? ['Nothing else will stick where silicone was, and paint does not stay on it. For panes in a frame that is the trade’s choice.']
          : []),
        ...(bead === undefined ? ['No open bead goes here without a try. Read the sheet of the product in hand, or ask the maker of the rig.'] : []),
      ],
    });
  },
  sources: [
    ...bondSources(),
    ...FAMILY_MOVEMENT.map((f) => f.source),
    ours('the order: what it sticks to, then movement, then how sure the sources are; silicone last among equals'),
  ],
  limits: [
    'Bare, clean, dry ground on both sides. What stays there, and silicone that nobody ruled out, is asked of the worksheet may-it-touch.',
    'Families, not products: the sheet of the tube in hand and the manual of the rig come first.',
    'Self-levelling sealant flows: only where it is level. Sun on a pane harms polyurethane behind it.',
  ],
  cautions: ['Polyurethane contains isocyanate until it has cured: gloves, air, no spraying. Solvent vapour is flammable and heavier than air: pilot lights off.'],
});
