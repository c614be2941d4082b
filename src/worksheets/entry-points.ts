import { entryPosterior, leakSources } from '../science';
import { defineWorksheet, memory, ours } from '../terms';
import { accept, figure, type Refusal, type Result, refuse } from '../units';
import { step } from './working';

/** As many places as a person would write down; our own limit. */
const MOST_PLACES = 30;

const notWords = (received: string): Result<never> =>
  refuse({
    code: 'unknown-word',
    path: 'wet',
    expected: 'wet or dry for each place, such as “wet, dry, wet”',
    received,
    sentence: 'Write wet or dry for each place, with commas between: wet, dry, wet.',
  });

/** `wet, dry, wet`; undefined where a word is neither. */
const placesOf = (text: string): readonly boolean[] | undefined => {
  const words = text
    .toLowerCase()
    .split(/[\s,;]+/)
    .filter((w) => w !== '');
  return words.every((w) => w === 'wet' || w === 'dry') ? words.map((w) => w === 'wet') : undefined;
};

const count = (path: string, expected: number, received: number, sentence: string): Refusal => ({
  code: 'wrong-length',
  path,
  expected: `${expected} ${expected === 1 ? 'figure' : 'figures'}`,
  received: `${received} ${received === 1 ? 'figure' : 'figures'}`,
  sentence,
});

const percent = (p: number): string => `${figure(p * 100, 1)} %`;

export const entryPointsSheet = defineWorksheet({
  id: 'entry-points',
  title: 'Where the water comes in',
  tells: 'How likely each opening or seam lets water in, given which places are wet and which stayed dry.',
  example: { prior_fraction: [0.1, 0.05, 0.2], pass_fraction: [0.8, 0.1, 0.3, 0.7, 0.05, 0.3], background_fraction: [0.01, 0.02], wet: 'wet, dry' },
  inputs: {
    prior_fraction: {
      type: 'numbers',
      quantity: 'share',
      unit: 'fraction',
      meaning: 'for each source, the chance that it lets water in, before any place was looked at',
      limits: { least: 0, most: 1 },
      least: 1,
      most: leakSources.most,
    },
    pass_fraction: {
      type: 'numbers',
      quantity: 'share',
      unit: 'fraction',
      meaning: 'chance that water from a source gets to a place: all places of the first source, then all of the second, and so on',
      limits: { least: 0, most: 1 },
      least: 1,
      most: leakSources.most * MOST_PLACES,
    },
    background_fraction: {
      type: 'numbers',
      quantity: 'share',
      unit: 'fraction',
      meaning: 'for each place, the chance that something not listed wets it; one figure stands for all places',
      limits: { least: 0, most: 1 },
      least: 1,
      most: MOST_PLACES,
      otherwise: [0.02],
    },
    wet: { type: 'text', meaning: 'wet or dry for each place, in the same order', example: 'wet, dry' },
  },
  results: {
    posterior_fraction: { type: 'numbers', quantity: 'share', unit: 'fraction', meaning: 'for each source, the chance that it lets water in', decimals: 3 },
    through_fraction: {
      type: 'numbers',
      quantity: 'share',
      unit: 'fraction',
      meaning: 'for each source, the chance that it does and that its water got to a wet place',
      decimals: 3,
    },
    none_fraction: { type: 'number', quantity: 'share', unit: 'fraction', meaning: 'chance that none of them does, and something not listed wets the places', decimals: 3 },
    evidence_fraction: { type: 'number', quantity: 'share', unit: 'fraction', meaning: 'chance of just these wet and dry places, before looking', decimals: 6 },
  },
  calculate: ({ prior_fraction: prior, pass_fraction: passes, background_fraction: given, wet: words }) => {
    const wet = placesOf(words);
    if (wet === undefined || wet.length === 0) return notWords(words);
    const [n, m] = [prior.length, wet.length];
    if (passes.length !== n * m)
      return refuse(count('pass', n * m, passes.length, `With ${n} sources and ${m} places there must be ${n * m} chances of passing, but ${passes.length} came.`));
    if (given.length !== 1 && given.length !== m)
      return refuse(count('background', m, given.length, `Give one background chance for all places, or one for each of ${m}; ${given.length} came.`));
    const background = wet.map((_, j) => given[given.length === 1 ? 0 : j] ?? 0);
    const pass = prior.map((_, i) => passes.slice(i * m, (i + 1) * m));
    const ranked = entryPosterior({ prior, pass, background, wet });
    if (!ranked.ok) return ranked;
    const { evidence, posterior, through, none } = ranked.value;
    return accept({
      result: { posterior_fraction: posterior, through_fraction: through, none_fraction: none, evidence_fraction: evidence },
      working: [
        step(
          'A place is wet',
          'P(wet) = 1 − (1 − background) Π (1 − pass)^leaks',
          `${m} places: ${wet.filter((w) => w).length} wet, ${wet.filter((w) => !w).length} dry`,
          'for each combination',
        ),
        step('Combinations of leaking and sound sources', '2ⁿ', `n = ${n}`, String(2 ** n)),
        step('Chance of just these wet and dry places', 'Σ P(combination) Π P(place)', 'over all combinations', figure(evidence, 6)),
        ...posterior.map((p, i) =>
          step(
            `Source ${i + 1}`,
            'Σ over combinations in which it leaks / Σ over all',
            `before: ${percent(prior[i] ?? 0)}; passes to the places: ${(pass[i] ?? []).map((w) => figure(w, 2)).join(', ')}`,
            `leaks ${percent(p)}, and wetted a place ${percent(through[i] ?? 0)}`,
          ),
        ),
        step('None of them', 'combination in which no source leaks / Σ over all', '', percent(none)),
      ],
      remarks: n > 1 ? ['The chances do not add up to 100 %: two sources can leak at once, and so can something that is not listed.'] : [],
    });
  },
  sources: [memory('Pearl, Probabilistic Reasoning in Intelligent Systems (1988): noisy-OR'), ours('chances of passing and of the background are judgements, not measurements')],
  limits: [
    'Exact, but no better than the chances put in: nobody has published how often which opening of a rig leaks, or how far its water runs.',
    'Sources are taken to leak independently of one another, and places to be read without error.',
    'A dry place counts as evidence against every source whose water would have got there.',
  ],
  cautions: [],
});
