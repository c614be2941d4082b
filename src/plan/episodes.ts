import { kinds } from '../entries';
import type { Standing } from '../logbook';
import { byUrgency, type EntryId, type Place, type Urgency } from '../terms';
import type { CivilDay } from '../units';
import { byWhen } from './order';
import { covers, placeName, threads } from './places';
import { firstProofDays } from './recheck';
import type { Rule, RuleHead, Scene, Verdict } from './rule';
import { defect } from './trade';

/**
 * An episode: from the look that first showed something by one rule at one place, through every look that still shows it,
 * to the look that finds it sound. One episode is one finding, and its first entry gives the finding its name.
 */
export type Episode = {
  readonly rule: RuleHead;
  readonly key: string;
  readonly place: Place;
  /** The looks that showed it, oldest first, and how urgent each was. */
  readonly seen: Standing[];
  readonly urgencies: Urgency[];
  verdict: Verdict;
  since: CivilDay;
  closed?: { readonly by: Standing; readonly life: 'proved' | 'seen-sound'; readonly care?: Standing };
  /** A look after the care that found nothing, too early to count as proof. */
  early?: Standing;
  /** Care that mends it although nobody named it: work on what it comes from. */
  readonly mended?: readonly Standing[];
};

/** Care or a decision, and the findings or entries it names, already taken apart. */
export type Naming = { readonly standing: Standing; readonly group: 'care' | 'proof' | 'decision'; readonly names: readonly Named[] };
export type Named = { readonly entry: EntryId; readonly rule?: string; readonly place?: string /** The entry it names no longer stands. */; readonly gone?: boolean };

export const ruleTag = (rule: RuleHead, key: string): string => (key === '' ? rule.id : `${rule.id}:${key}`);

export const findingId = (rule: RuleHead, key: string, place: Place, raised_by: EntryId): string => `${ruleTag(rule, key)}/${placeName(place)}/${raised_by}`;

/** Takes a finding's id apart; an entry's id stands alone. */
export const readName = (concern: string): Named => {
  const [first, last] = [concern.indexOf('/'), concern.lastIndexOf('/')];
  return first < 0 || first === last ? { entry: concern } : { rule: concern.slice(0, first), place: concern.slice(first + 1, last), entry: concern.slice(last + 1) };
};

const answersTo = (episode: Episode, tag: string): boolean => tag === ruleTag(episode.rule, episode.key) || (episode.rule.formerly?.includes(tag) ?? false);

/** The place in a finding's id is that of the finding, or of the look it names: one finding may be about several places. */
const isPlaced = (episode: Episode, n: Named): boolean =>
  n.place === placeName(episode.place) || episode.seen.some((s) => s.entry.id === n.entry && placeName(s.place) === n.place);

/** Whether care or a decision names this episode: by the finding's id under any of its looks, or by one of its looks. */
export const names = (naming: Naming, episode: Episode): boolean =>
  naming.names.some((n) => {
    if (n.rule !== undefined && !(answersTo(episode, n.rule) && isPlaced(episode, n))) return false;
    if (episode.seen.some((s) => s.entry.id === n.entry)) return true;
    const first = episode.seen[0];
    return n.rule !== undefined && n.gone === true && first !== undefined && byWhen(first, naming.standing) <= 0;
  });

const soundAnswers: ReadonlyMap<string, { readonly field: string; readonly answer: string }> = new Map(kinds.flatMap((k) => (k.sound ? [[k.id, k.sound] as const] : [])));

/** The one answer of its kind that says that nothing is wrong. */
export const saysSound = (look: Standing): boolean => {
  const sound = soundAnswers.get(look.entry.kind);
  return sound !== undefined && (look.body as Readonly<Record<string, unknown>>)[sound.field] === sound.answer;
};

/** Care that mends nothing by itself, whatever it names. */
const NO_REPAIR: ReadonlySet<string> = new Set(['covered']);

/** Whether this care can settle what the rule raised; some things only a trade settles. */
export const settles = (naming: Naming, episode: Episode): boolean =>
  naming.group === 'care' && !NO_REPAIR.has(naming.standing.entry.kind) && (episode.rule.settles?.(naming.standing, episode.verdict) ?? true);

export const held = (proof: Standing): boolean => (proof.body as { readonly result?: string }).result === 'held';

/** The last care after the problem was last seen and up to a moment (or up to now), unless a proof since then says that it did not hold. */
const careBefore = (episode: Episode, until: Standing | undefined, namings: readonly Naming[]): Standing | undefined => {
  const last = episode.seen.at(-1);
  let care: Standing | undefined;
  for (const n of namings) {
    if (until && byWhen(n.standing, until) > 0) break;
    if (last && byWhen(n.standing, last) <= 0) continue;
    if (!names(n, episode)) continue;
    if (n.group === 'proof') care = held(n.standing) ? care : undefined;
    else if (settles(n, episode)) care = n.standing;
  }
  return care;
};

/** A proof by test, rain or use that the last care held. */
const provedBefore = (episode: Episode, until: Standing | undefined, namings: readonly Naming[]): { readonly by: Standing; readonly care: Standing } | undefined => {
  for (const n of namings) {
    if (until && byWhen(n.standing, until) > 0) break;
    if (n.group !== 'proof' || !held(n.standing) || !names(n, episode)) continue;
    const care = careBefore(episode, n.standing, namings);
    if (care) return { by: n.standing, care };
  }
  return undefined;
};

export const proofDays = (verdict: Verdict): number => verdict.proof_days ?? firstProofDays(verdict.defect === undefined ? undefined : defect(verdict.defect)?.recheck);

const later = (day: CivilDay, other: CivilDay | undefined): CivilDay => (other !== undefined && other > day ? other : day);

/** The day on which it first was so: that of the first look, or the one on which the calendar made it true. */
export const opened = (episode: Episode): CivilDay => later(episode.seen[0]?.day ?? episode.since, episode.verdict.from?.first);

/**
 * Walks the looks of one rule through time.
 *
 * @param looks    entries of the kinds the rule reads, in order
 * @param namings  care and decisions that name something in this scene, in order
 */
export const episodesOf = (rule: Rule, looks: readonly Standing[], scene: Scene, namings: readonly Naming[]): readonly Episode[] => {
  const all: Episode[] = [];
  const open = new Map<string, Episode>();
  const threadOf = threads();

  const start = (id: string, verdict: Verdict, look: Standing): void => {
    const since = later(look.day, verdict.from?.as_urgent);
    const episode: Episode = { rule, key: verdict.key, place: look.place, seen: [look], urgencies: [verdict.urgency], verdict, since };
    all.push(episode);
    open.set(id, episode);
  };
  const end = (id: string, episode: Episode, by: Standing, life: 'proved' | 'seen-sound', care?: Standing): void => {
    episode.closed = care ? { by, life, care } : { by, life };
    open.delete(id);
  };
  const endProved = (until: Standing | undefined): void => {
    if (namings.length === 0) return;
    for (const [id, episode] of [...open]) {
      const proof = provedBefore(episode, until, namings);
      if (proof) end(id, episode, proof.by, 'proved', proof.care);
    }
  };

  for (const look of looks) {
    endProved(look);
    const own = rule.reads.includes(look.entry.kind);
    const verdicts = own ? rule.judge(look, scene) : [];
    if (rule.endedBy?.includes(look.entry.kind)) for (const [id, episode] of [...open]) end(id, episode, look, 'proved', look);
    if (!own && !saysSound(look)) continue;
    if (verdicts.length === 0 && open.size === 0) continue;
    const thread = threadOf(look.place);
    const told = new Set<string>();
    for (const verdict of verdicts) {
      const id = `${thread}|${verdict.key}`;
      told.add(id);
      const episode = open.get(id);
      if (!episode) {
        start(id, verdict, look);
        continue;
      }
      const care = careBefore(episode, look, namings);
      if (care && verdict.urgency === 'watch' && episode.verdict.urgency !== 'watch') {
        // What was mended holds; what is left to watch is a new and smaller matter.
        end(id, episode, look, look.day >= care.day + proofDays(episode.verdict) ? 'proved' : 'seen-sound', care);
        start(id, verdict, look);
        continue;
      }
      if (byUrgency(verdict.urgency, episode.verdict.urgency) < 0) episode.since = look.day;
      episode.seen.push(look);
      const weaker = verdict.weak === true && byUrgency(verdict.urgency, episode.verdict.urgency) > 0;
      episode.urgencies.push(weaker ? episode.verdict.urgency : verdict.urgency);
      episode.verdict = weaker ? { ...episode.verdict, because: [...episode.verdict.because, ...verdict.because] } : verdict;
      delete episode.early;
    }
    for (const [id, episode] of [...open]) {
      if (told.has(id)) continue;
      if (!id.startsWith(`${thread}|`) && !covers(look.place, episode.place)) continue;
      if (own && !rule.together && look.entry.kind !== episode.seen.at(-1)?.entry.kind) continue;
      const care = careBefore(episode, look, namings);
      if (care) {
        if (look.day >= care.day + proofDays(episode.verdict)) end(id, episode, look, 'proved', care);
        else episode.early = look;
      } else if (own && (rule.closes?.(look, episode.key) ?? true)) end(id, episode, look, 'seen-sound');
    }
  }
  endProved(undefined);
  return all.filter((e) => e.closed === undefined || opened(e) <= e.closed.by.day);
};
