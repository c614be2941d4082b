import type { Rig } from '../../rig';
import type { StationId } from '../../terms';
import type { Candidate } from './water-types';

/** The name of a station within a sentence: `window 2, road side`; `TV aerial` stays as it is. */
export const nameOf = (rig: Rig, id: StationId): string => {
  const name = rig.stations.find((s) => s.id === id)?.name ?? id;
  return /^[A-Z][a-z' -]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
};

/** Names hold commas, so that several are set apart by semicolons. */
const either = (names: readonly string[]): string => (names.length < 3 ? names.join(', or ') : `${names.slice(0, -1).join('; ')}; or ${names.at(-1)}`);

/** More names than this in one sentence help nobody. */
const MOST_NAMES = 3;

/** The ranking in one sentence for the page. */
export const sentenceOf = (rig: Rig, candidates: readonly Candidate[], unknown: number, confirmed: StationId | undefined): string => {
  if (confirmed !== undefined) return `It comes in at ${nameOf(rig, confirmed)}: a hose test made it come in there.`;
  const [first] = candidates;
  if (first === undefined) return 'No opening or seam on this rig is known from which water would run here.';
  const named = (word: Candidate['word']): readonly string[] => candidates.filter((c) => c.word === word).map((c) => nameOf(rig, c.station));
  const likely = named('likely').slice(0, MOST_NAMES);
  if (likely.length > 0) return `Water most likely comes in at ${either(likely)}.`;
  if (unknown > first.probability) return `No opening or seam explains it well; the best fit so far is ${nameOf(rig, first.station)}.`;
  const possible = named('possible');
  if (possible.length === 0) return 'Many ways in would explain it and none stands out; more readings, or a water test, would tell.';
  if (possible.length > MOST_NAMES)
    return `It may come in at ${either(possible.slice(0, MOST_NAMES))}, or at one of ${possible.length - MOST_NAMES} more; nothing known yet tells which.`;
  return possible.length === 1
    ? `It may come in at ${possible[0]}; that is not yet likely enough to rely on.`
    : `It may come in at ${either(possible)}; nothing known yet tells which.`;
};
