import type { Likelihood } from '../src/plan';
import { FIRST_SEED } from './results';
import type { Trial } from './trial';

type By = 'ranked' | 'nearest' | 'by_prior';

const share = (hits: number, of: number): string => (of === 0 ? '–' : `${Math.round((hits / of) * 100)} %`);

/** Half-width of the 95 % interval of a share, in points: what chance alone moves it by. */
const give = (hits: number, of: number): string => {
  const p = hits / of;
  return `± ${Math.round(196 * Math.sqrt((p * (1 - p)) / of))}`;
};

const row = (words: string, trials: readonly Trial[]): string => {
  const cell = (by: By, within: number): string => {
    const hits = trials.filter((t) => t[by] > 0 && t[by] <= within).length;
    return by === 'ranked' ? `${share(hits, trials.length)} ${give(hits, trials.length)}` : share(hits, trials.length);
  };
  return `| ${words} | ${trials.length} | ${cell('ranked', 1)} | ${cell('ranked', 3)} | ${cell('nearest', 1)} | ${cell('nearest', 3)} | ${cell('by_prior', 1)} | ${cell('by_prior', 3)} |`;
};

const WORDS: readonly Likelihood[] = ['likely', 'possible', 'unlikely'];

const wordRow = (word: Likelihood, trials: readonly Trial[]): string => {
  const sum = (of: 'times' | 'right' | 'chances'): number => trials.reduce((all, t) => all + t.said[word][of], 0);
  return `| ${word} | ${sum('times')} | ${share(sum('right'), sum('times'))} | ${share(sum('chances'), sum('times'))} |`;
};

/** The tables of the docs page, as markdown. */
export const simulationTables = (trials: readonly Trial[]): string => {
  const unnoticed = (trials.at(-1)?.seed ?? 0) - FIRST_SEED + 1 - trials.length;
  const listed = trials.filter((t) => t.listed !== 'none');
  const none = trials.filter((t) => t.listed === 'none');
  const rows = [
    row('every leak', trials),
    row('at least one way in is an opening or seam', listed),
    row(
      'of these, parked',
      listed.filter((t) => t.when === 'parked'),
    ),
    row(
      'of these, driving',
      listed.filter((t) => t.when === 'driving'),
    ),
    row(
      'of these, bonded walls',
      listed.filter((t) => t.construction === 'bonded'),
    ),
    row(
      'of these, hung walls',
      listed.filter((t) => t.construction === 'hung'),
    ),
  ];
  const falsely = none.filter((t) => t.said.likely.times > 0).length;
  const saidUnknown = none.filter((t) => t.unknown_source >= 0.15).length;
  const saidUnknownElse = listed.filter((t) => t.unknown_source >= 0.15).length;
  const middle = (pick: (t: Trial) => number): number => trials.map(pick).toSorted((a, b) => a - b)[Math.floor(trials.length / 2)] ?? 0;
  return [
    '| leaks | number | ranked first | in the first three | nearest above: first | in three | seals alone: first | in three |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |',
    ...rows,
    '',
    '| what was said of a candidate | times | it was so | mean of the chances given |',
    '| --- | ---: | ---: | ---: |',
    ...WORDS.map((w) => wordRow(w, trials)),
    '',
    `Of ${none.length} leaks that were at no opening or seam at all, ${falsely} had some candidate falsely called likely (${share(falsely, none.length)}); “somewhere not listed” was at least possible in ${saidUnknown} (${share(saidUnknown, none.length)}), against ${share(saidUnknownElse, listed.length)} of the others.`,
    `A leak had ${middle((t) => t.wet)} wet and ${middle((t) => t.dry)} dry readings in the middle case. ${unnoticed} of ${trials.length + unnoticed} worlds showed nothing that anybody would have noticed; they are not counted.`,
  ].join('\n');
};
