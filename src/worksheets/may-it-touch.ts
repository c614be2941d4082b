import { bondSources, type MayTouch, mayTouch, TOUCHED, TOUCHING, type TouchedId, type TouchingId, type TouchReason, type TouchVerdict } from '../science';
import { defineWorksheet, ours, type Source } from '../terms';
import { accept, refuse } from '../units';
import { step } from './working';

const material = TOUCHING.map((t) => t.id) as readonly TouchingId[];
const surfaces = TOUCHED.map((t) => t.id) as readonly TouchedId[];
const NONE = 'none';

const WORDS: Readonly<Record<TouchVerdict, string>> = { yes: 'yes', prep: 'with preparation', test: 'only where a test patch holds', no: 'no' };

const ABOUT: Readonly<Record<TouchReason['about'], string>> = {
  'one-side': 'One side',
  'other-side': 'Other side',
  'there-now': 'What stays underneath',
  silicone: 'Silicone',
  patch: 'Test patch',
};

const STATUS: Readonly<Record<Source['status'], string>> = { seen: 'read', practice: 'not published', memory: 'from memory', own: 'ours' };
const sourceWords = (sources: readonly Source[]): string => sources.map((s) => `${s.text} (${STATUS[s.status]})`).join('; ');

const LEAD: Readonly<Record<TouchVerdict, string>> = { yes: 'Yes', prep: 'With preparation', test: 'Only where a test patch holds', no: 'No' };
const WAY_OUT = 'Strip it to bare ground, or prove it with a test patch first';

const capital = (sentence: string): string => `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`;

/** The verdict in words: what decides, and how to prepare or why not; leave to go on tells every side that asks for something. */
const says = ({ verdict, by_table, reasons }: MayTouch, own: string | undefined): string => {
  if (own !== undefined) return `${LEAD[verdict]}, by your own rule (${own}). The table says ${WORDS[by_table]}`;
  const deciding = reasons.filter((r) => (verdict === 'yes' || verdict === 'prep' ? r.words !== '' : r.verdict === verdict));
  const only_silicone = verdict === 'no' && deciding.every((r) => r.about === 'silicone');
  const told = deciding.map((r) => capital(r.words === '' ? r.on : `${r.on}: ${r.words}`));
  return [only_silicone ? 'Not yet' : LEAD[verdict], ...told, ...(only_silicone ? [WAY_OUT] : [])].join('. ');
};

export const mayItTouch = defineWorksheet({
  id: 'may-it-touch',
  title: 'May it touch?',
  tells: 'Whether a sealant, a tape or a cleaner may go on a seam as it is: both its sides, what is there already, and silicone that nobody ruled out.',
  example: { material: 'butyl-tape', one_side: 'epdm', other_side: 'abs', there_now: 'nothing', silicone_ever: 'no' },
  inputs: {
    material: { type: 'word', meaning: TOUCHING.map((t) => `${t.id}: ${t.word}`).join('; '), words: material },
    one_side: { type: 'word', meaning: TOUCHED.map((t) => `${t.id}: ${t.word}`).join('; '), words: surfaces },
    other_side: { type: 'word', meaning: 'the other side of the seam; same: both are of one', words: ['same', ...surfaces] as readonly (TouchedId | 'same')[], otherwise: 'same' },
    there_now: {
      type: 'word',
      meaning: 'what stays there under the new bead; nothing: it is bare',
      words: ['nothing', 'unknown', ...material.slice(0, material.indexOf('isopropyl-alcohol'))] as readonly (TouchingId | 'nothing' | 'unknown')[],
      otherwise: 'unknown',
    },
    silicone_ever: { type: 'word', meaning: 'was silicone ever used here? What is not known counts as yes', words: ['no', 'yes', 'unknown'], otherwise: 'unknown' },
    test_patch: {
      type: 'word',
      meaning: 'a test patch of this product on this seam, prepared the same way and pulled once cured',
      words: ['none', 'held', 'failed'],
      otherwise: 'none',
    },
    sheet_names: { type: 'word', meaning: 'which side the product’s own sheet names', words: ['neither', 'one-side', 'other-side', 'both'], otherwise: 'neither' },
    own_rule: { type: 'word', meaning: 'what the manual of the rig or a dealer says; it goes before the table', words: [NONE, 'yes', 'prep', 'test', 'no'], otherwise: NONE },
    own_source: { type: 'text', meaning: 'where your own rule stands', example: 'owner’s manual, p. 41', otherwise: NONE },
  },
  results: {
    verdict: { type: 'text', meaning: 'yes, prep (with preparation), test (only where a test patch holds) or no' },
    says: { type: 'text', meaning: 'the same in words, with what decides' },
    confidence: { type: 'text', meaning: 'how sure the sources are of it' },
    one_side_verdict: { type: 'text', meaning: 'of the first side by itself' },
    other_side_verdict: { type: 'text', meaning: 'of the other side by itself' },
    table_verdict: { type: 'text', meaning: 'what the table says, where your own rule goes before it' },
    disagreement: { type: 'text', meaning: 'sources that do not agree, each as it has it' },
  },
  calculate: (g) => {
    const source = g.own_source.trim();
    if (g.own_rule !== NONE && (source === '' || source === NONE))
      return refuse({
        code: 'missing',
        path: 'own_source',
        expected: 'where your own rule stands',
        received: 'nothing',
        sentence: 'A rule of your own needs its source: the page of a manual, or who said it and when.',
      });
    const own = g.own_rule === NONE ? undefined : { verdict: g.own_rule, source };
    const found = mayTouch({
      material: g.material,
      sides: [g.one_side, g.other_side === 'same' ? g.one_side : g.other_side],
      named: [g.sheet_names === 'one-side' || g.sheet_names === 'both', g.sheet_names === 'other-side' || g.sheet_names === 'both'],
      there_now: g.there_now,
      silicone: g.silicone_ever,
      patch: g.test_patch,
      ...(own === undefined ? {} : { own }),
    });
    const of = (about: TouchReason['about']): TouchVerdict | undefined => found.reasons.find((r) => r.about === about)?.verdict;
    const one = of('one-side') ?? found.by_table;
    const disagree = found.reasons.flatMap((r) => r.disagree.map((d) => `${d.source.text}: ${d.says}`));
    const lap = g.material === 'lap-self-levelling' || g.material === 'lap-non-sag';
    return accept({
      result: {
        verdict: found.verdict,
        says: says(found, own?.source),
        confidence: found.confidence ?? 'that of your own source',
        one_side_verdict: one,
        other_side_verdict: of('other-side') ?? one,
        table_verdict: found.by_table,
        disagreement: disagree.length === 0 ? NONE : disagree.join('; '),
      },
      working: [
        ...found.reasons.map((r) =>
          step(`${ABOUT[r.about]}: ${r.on}`, r.words === '' ? 'by the table' : r.words, sourceWords(r.sources), `${WORDS[r.verdict]} (${r.confidence} confidence)`),
        ),
        step('Together', 'the worst of them', '', WORDS[found.by_table]),
        ...(own === undefined ? [] : [step('Your own rule', 'goes before the table', own.source, WORDS[own.verdict])]),
      ],
      remarks: [
        ...(disagree.length > 0 && !lap ? ['Sources disagree here. The sheet of the product in hand decides.'] : []),
        ...(lap && disagree.length > 0
          ? [
              'A lap sealant made for rubber may carry a petroleum distillate: the little there is flashes off. The ban on petroleum is one on cleaners, oil and asphalt that stand on the sheet.',
            ]
          : []),
        ...(g.test_patch === 'held' ? ['A patch proves the place where it was, not the whole seam: silicone lies in streaks.'] : []),
        ...(own !== undefined && own.verdict !== found.by_table ? [`Your own rule and the table differ: the table says ${WORDS[found.by_table]}.`] : []),
      ],
    });
  },
  sources: [
    ...bondSources(),
    ours('what nobody knows counts as silicone until a test patch holds; a test patch answers whether it sticks, not whether it harms the surface in time'),
  ],
  limits: [
    'Families, not products. The product’s own sheet comes first, then the manual of the rig: type either in as your own rule.',
    'A pair that no source speaks of is to be tried, never taken for a yes.',
    'A test patch: a hand’s width where silicone was most likely, prepared as the seam will be, pulled once it has cured (common practice: 7 days).',
  ],
  cautions: [
    'Oil and petroleum-based cleaners never go on a rubber roof.',
    'Polyurethane contains isocyanate until it has cured: gloves, air, no spraying. Solvent vapour is flammable and heavier than air: pilot lights off.',
  ],
});
