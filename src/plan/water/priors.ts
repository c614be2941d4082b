import type { Rig } from '../../rig';
import { type EntryId, ours, type Station, type StationId } from '../../terms';
import { type CivilDay, figure, isoDay, parseWhen, showDay } from '../../units';
import type { Because } from '../finding';
import { isA } from '../trade';
import { GRADE_HALF_LIFE_A, GRADED_RIGHT, GRADES, type Grade, ODDS_BY_AGE, ODDS_BY_STATE, OTHER_WAY_IN, WAYS_IN } from './way-in-chances';

/** What is known of the bead of one opening or seam when the water showed. */
export type SealKnown = {
  readonly grade?: Grade;
  readonly graded?: CivilDay;
  /** When it was last sealed or taken off and set anew. */
  readonly sealed?: CivilDay;
  readonly entries: readonly EntryId[];
};

/** Chance that one opening or seam lets water in, before any wet or dry place is looked at. */
export type Prior = { readonly chance: number; readonly because: readonly Because[] };

const PRIORS = ours('chances by kind of opening, grade and age of the bead: our judgement, no published figures; only the order leans on trade practice');

const YEAR_D = 365.25;

/**
 * By how much a grade changes the odds, people being one step off now and then.
 *
 * @assumes  one step off on either side is as likely; at the ends of the scale all of it falls on the one neighbour
 */
const oddsOfGrade = (grade: Grade): number => {
  const at = GRADES.indexOf(grade);
  const beside = [GRADES[at - 1], GRADES[at + 1]].flatMap((g) => g ?? []);
  const off = (1 - GRADED_RIGHT) / beside.length;
  return GRADED_RIGHT * ODDS_BY_STATE[grade] + beside.reduce((sum, g) => sum + off * ODDS_BY_STATE[g], 0);
};

const oddsOfAge = (age_a: number): number => ODDS_BY_AGE.find(([under]) => age_a < under)?.[1] ?? 1;

const yearsBetween = (from: CivilDay, to: CivilDay): number => Math.max(0, (to - from) / YEAR_D);

/** Age in words no finer than it is worth. */
const ageWords = (years: number): string => (years < 1 ? 'less than a year' : years < 2 ? 'about a year' : `about ${figure(years, 0)} years`);

/** When it was sealed, as far as anybody knows: an entry, else what the description says, else with the rig itself. */
const sealedOn = (rig: Rig, station: Station, known: SealKnown | undefined): { readonly day: CivilDay; readonly as: 'entry' | 'description' | 'built' } | undefined => {
  if (known?.sealed !== undefined) return { day: known.sealed, as: 'entry' };
  const said = station.last_sealed === 'unknown' ? undefined : parseWhen(station.last_sealed);
  if (said !== undefined) return { day: said.form === 'instant' ? said.day : said.to, as: 'description' };
  const built = rig.year === 'unknown' ? undefined : parseWhen(`${String(rig.year).padStart(4, '0')}-01-01`);
  return built?.form === 'span' ? { day: built.from, as: 'built' } : undefined;
};

const SEALED_WORDS = { entry: 'sealed', description: 'sealed, by the description,', built: 'no seal work is recorded: as old as the rig,' } as const;

const wayIn = (station: Station) => WAYS_IN.find((w) => isA(station.looks, w.looks)) ?? OTHER_WAY_IN;

/**
 * Chance that an opening or seam lets water in, before any wet or dry place is looked at: its kind, the last grade of its
 * bead, and the bead's age. A grade fades with the years; the better the grade is known, the less the age adds.
 *
 * @param known  grade and sealing as they were when the water showed
 * @param on     the day for which ages are counted
 * @returns      chance between 0 and 1, never 0 or 1, with its reasons
 * @source       ours
 */
export const priorOf = (rig: Rig, station: Station, known: SealKnown | undefined, on: CivilDay): Prior => {
  const kind = wayIn(station);
  const entries = known?.entries ?? [];
  const graded = known?.grade !== undefined && known.graded !== undefined ? { grade: known.grade, day: known.graded } : undefined;
  const fresh = graded === undefined ? 0 : 0.5 ** (yearsBetween(graded.day, on) / GRADE_HALF_LIFE_A);
  const sealed = sealedOn(rig, station, known);
  const age = sealed === undefined ? undefined : yearsBetween(sealed.day, on);
  const byGrade = graded === undefined ? 1 : oddsOfGrade(graded.grade) ** fresh;
  const byAge = age === undefined ? 1 : oddsOfAge(age) ** (1 - fresh / 2);
  const odds = (kind.chance / (1 - kind.chance)) * byGrade * byAge;
  const gradeText =
    graded === undefined
      ? 'Its bead was never graded, so that it counts as the usual one of its kind.'
      : `Its bead was graded ${graded.grade} on ${showDay(graded.day)}; a grade can be one step off, and fades with the years.`;
  const ageText =
    sealed === undefined || age === undefined
      ? 'How old the seal is, is not known.'
      : `The seal is ${ageWords(age)} old (${SEALED_WORDS[sealed.as]} ${isoDay(sealed.day).slice(0, 4)}).`;
  return { chance: odds / (1 + odds), because: [{ text: `${gradeText} ${ageText} Its kind: ${kind.why}.`, entries, source: PRIORS }] };
};

/** What is known of each seal, by station. */
export type SealsKnown = ReadonlyMap<StationId, SealKnown>;
