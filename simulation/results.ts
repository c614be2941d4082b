import type { Trial } from './trial';

/** The seed of the first world; every world takes the next. Worlds before it were used while the ranking was built. */
export const FIRST_SEED = 20_270_101;
/** Noticed leaks that the published table counts. */
export const WORLDS = 600;

const WORDS = ['likely', 'possible', 'unlikely'] as const;
const COLUMNS = [
  'seed',
  'when',
  'construction',
  'listed',
  'wet',
  'dry',
  'ranked',
  'nearest',
  'by_prior',
  'unknown_source',
  ...WORDS.flatMap((w) => [`${w}_times`, `${w}_right`, `${w}_chances`]),
];

/** One line of the file of results. Chances to three decimals: finer tells nothing. */
export const line = (t: Trial): string =>
  [
    t.seed,
    t.when,
    t.construction,
    t.listed,
    t.wet,
    t.dry,
    t.ranked,
    t.nearest,
    t.by_prior,
    t.unknown_source.toFixed(3),
    ...WORDS.flatMap((w) => [t.said[w].times, t.said[w].right, t.said[w].chances.toFixed(3)]),
  ].join(',');

export const resultsFile = (trials: readonly Trial[]): string => `${[COLUMNS.join(','), ...trials.map(line)].join('\n')}\n`;

export const readResults = (text: string): readonly Trial[] => {
  const [head, ...rows] = text.trim().split('\n');
  if (head !== COLUMNS.join(',')) throw new Error('the results were written by another version of the simulation: run it again');
  return rows.map((row): Trial => {
    const cells = row.split(',');
    const of = (name: string): string => cells[COLUMNS.indexOf(name)] ?? '';
    const n = (name: string): number => Number(of(name));
    const said = Object.fromEntries(WORDS.map((w) => [w, { times: n(`${w}_times`), right: n(`${w}_right`), chances: n(`${w}_chances`) }])) as Trial['said'];
    return {
      seed: n('seed'),
      when: of('when') as Trial['when'],
      construction: of('construction'),
      listed: of('listed') as Trial['listed'],
      wet: n('wet'),
      dry: n('dry'),
      ranked: n('ranked'),
      nearest: n('nearest'),
      by_prior: n('by_prior'),
      unknown_source: n('unknown_source'),
      said,
    };
  });
};
