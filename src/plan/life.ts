import type { Standing } from '../logbook';
import { byUrgency, MARK_WORD, ours, type Urgency } from '../terms';
import { type CivilDay, civilDay, parseDay, showDay } from '../units';
import { type Episode, findingId, held, type Naming, names, proofDays, settles } from './episodes';
import type { Because, Finding, Life } from './finding';
import { byWhen } from './order';
import { defect, remedy } from './trade';

/** Kinds of decision and the life they give. A decision never takes a finding off the plan. */
const DECIDED: Readonly<Record<string, Life>> = { 'put-off': 'put-off', declined: 'declined', 'judged-otherwise': 'judged-otherwise', 'handed-over': 'handed-over' };

export const isDecision = (kind: string): boolean => kind in DECIDED;

type Now = {
  readonly life: Life;
  readonly settled_by?: Standing;
  readonly due?: CivilDay;
  readonly closed?: CivilDay;
  readonly because: readonly Because[];
  readonly judged?: Finding['judged'];
};

const LIFE_RULE = ours(
  'a mended finding stays on the plan until a later look finds it sound; a decision is shown with the finding and lasts until its day, or until a look finds it worse',
);

const line = (text: string, entries: readonly Standing[]): Because => ({ text, entries: entries.map((s) => s.entry.id), source: LIFE_RULE });

/** How urgent it was known to be at the time of a decision. */
const urgencyAt = (episode: Episode, when: Standing): Urgency => {
  let known = episode.urgencies[0] ?? 'watch';
  episode.seen.forEach((look, i) => {
    if (byWhen(look, when) <= 0) known = episode.urgencies[i] ?? known;
  });
  return known;
};

const worseSince = (episode: Episode, decision: Standing): Standing | undefined => {
  const then = urgencyAt(episode, decision);
  return episode.seen.find((look, i) => byWhen(look, decision) > 0 && byUrgency(episode.urgencies[i] ?? 'watch', then) < 0);
};

const decided = (episode: Episode, decision: Standing, on: CivilDay): Now => {
  const life = DECIDED[decision.entry.kind] ?? 'open';
  const said = `by ${decision.entry.by} on ${showDay(decision.day)}`;
  const worse = worseSince(episode, decision);
  if (worse) return { life: 'reopened', settled_by: worse, because: [line(`Found worse on ${showDay(worse.day)} than when it was decided about ${said}.`, [decision, worse])] };
  const body = decision.body as { readonly until?: string; readonly to?: string; readonly why?: string; readonly urgency?: Urgency | 'no-fault' };
  const why = body.why === undefined || body.why === '' ? '' : `: ${body.why}`;
  const until = body.until === undefined ? undefined : parseDay(body.until);
  if (until !== undefined && on >= until)
    return { life: 'open', settled_by: decision, due: until, because: [line(`Put off until ${showDay(until)} ${said}; that day has come.`, [decision])] };
  if (until !== undefined) return { life, settled_by: decision, due: until, because: [line(`Put off until ${showDay(until)} ${said}${why}.`, [decision])] };
  const judged = body.urgency === undefined ? undefined : { urgency: body.urgency, by: decision.entry.by };
  const words =
    life === 'handed-over'
      ? `Handed to ${body.to ?? 'somebody else'}`
      : life === 'declined'
        ? 'Declined by the owner, recorded'
        : `Judged otherwise, ${judgedWords(judged?.urgency)},`;
  return { life, settled_by: decision, because: [line(`${words} ${said}${why}.`, [decision])], ...(judged ? { judged } : {}) };
};

const judgedWords = (urgency: Urgency | 'no-fault' | undefined): string => (urgency === undefined || urgency === 'no-fault' ? 'no fault' : MARK_WORD[urgency].toLowerCase());

/** A professional may have looked and left it as it is. */
const doneWord = (care: Standing): string => (care.entry.kind === 'professional-work' ? 'Seen to by a professional' : 'Mended');

const closedNow = (closed: NonNullable<Episode['closed']>): Now => {
  const { by, life, care } = closed;
  const base = { life, settled_by: by, closed: by.day } as const;
  if (care && care === by) return { ...base, because: [line(`Another one was fitted on ${showDay(by.day)}.`, [by])] };
  if (by.entry.kind === 'proof-seen')
    return { ...base, because: [line(`Mended on ${showDay((care ?? by).day)}, and shown to hold on ${showDay(by.day)}.`, care ? [care, by] : [by])] };
  if (care) return { ...base, because: [line(`Mended on ${showDay(care.day)}, and found sound on ${showDay(by.day)}.`, [care, by])] };
  return { ...base, because: [line(`Found sound on ${showDay(by.day)}; no care is recorded.`, [by])] };
};

/** Where a finding stands after everything that was done and decided about it. */
const now = (episode: Episode, namings: readonly Naming[], on: CivilDay): Now => {
  if (episode.closed) return closedNow(episode.closed);
  const mine = namings.filter((n) => names(n, episode));
  const care = [...mine.filter((n) => settles(n, episode)).map((n) => n.standing), ...(episode.mended ?? [])].toSorted(byWhen).at(-1);
  const last = episode.seen.at(-1);
  const failed = care && mine.find((n) => n.group === 'proof' && !held(n.standing) && byWhen(n.standing, care) >= 0)?.standing;
  const again = (care && episode.seen.find((look) => byWhen(look, care) >= 0)) ?? failed;
  if (care && last && !again) {
    const { proof } = episode.verdict;
    if (proof) return { life: 'proof-due', settled_by: care, due: proof.due, because: [line(`${doneWord(care)} on ${showDay(care.day)}. ${proof.text}`, [care])] };
    const due = civilDay(care.day + proofDays(episode.verdict));
    const early = episode.early ? ` Looked at on ${showDay(episode.early.day)} and nothing found, too early to count.` : '';
    return {
      life: 'proof-due',
      settled_by: care,
      due,
      because: [line(`${doneWord(care)} on ${showDay(care.day)}; a look from ${showDay(due)} shows whether it holds.${early}`, episode.early ? [care, episode.early] : [care])],
    };
  }
  const decision = mine.filter((n) => n.group === 'decision' && (!care || byWhen(n.standing, care) > 0)).at(-1)?.standing;
  if (again && care && !(decision && byWhen(decision, again) > 0))
    return {
      life: 'reopened',
      settled_by: again,
      because: [line(`${doneWord(care)} on ${showDay(care.day)}, and found again on ${showDay(again.day)}: the repair did not hold.`, [care, again])],
    };
  if (decision) return decided(episode, decision, on);
  const short = mine.filter((n) => n.group === 'care' && !settles(n, episode)).at(-1)?.standing;
  return {
    life: 'open',
    because: short
      ? [
          line(short.entry.kind === 'covered' ? `Covered on ${showDay(short.day)}: a cover is not a repair.` : `What was done on ${showDay(short.day)} does not settle this.`, [
            short,
          ]),
        ]
      : [],
  };
};

/** The finding that an episode amounts to on a day. */
export const findingOf = (episode: Episode, namings: readonly Naming[], on: CivilDay): Finding => {
  const { verdict, rule, seen, place } = episode;
  const [first, last] = [seen[0], seen.at(-1)];
  if (!first || !last) throw new Error('an episode has at least one look');
  const state = now(episode, namings, on);
  const row = verdict.defect === undefined ? undefined : defect(verdict.defect);
  const remedies = verdict.remedies ?? row?.remedies ?? [];
  const worse_if = verdict.worse_if ?? row?.worse_if;
  return {
    id: findingId(rule, episode.key, place, first.entry.id),
    rule: rule.id,
    place,
    ...('station' in place ? { station: place.station } : {}),
    ...(verdict.defect === undefined ? {} : { defect: verdict.defect }),
    raised_by: first.entry.id,
    since: episode.since,
    last_seen: last.day,
    title: verdict.title,
    urgency: verdict.urgency,
    who: state.life === 'handed-over' ? 'professional' : verdict.who,
    because: [...verdict.because, ...state.because],
    ...(worse_if === undefined ? {} : { worse_if }),
    life: state.life,
    ...(state.settled_by ? { settled_by: state.settled_by.entry.id } : {}),
    ...(state.judged ? { judged: state.judged } : {}),
    ...(state.due !== undefined ? { due: state.due } : verdict.due !== undefined && !state.closed ? { due: verdict.due } : {}),
    ...(state.closed === undefined ? {} : { closed: state.closed }),
    remedies,
    cautions: verdict.cautions ?? [...new Set(remedies.flatMap((id) => remedy(id)?.cautions ?? []))],
    ...(verdict.suspects && verdict.suspects.length > 0 ? { suspects: verdict.suspects } : {}),
    ...(verdict.steps ? { steps: verdict.steps } : {}),
    ...(verdict.leak === undefined ? {} : { leak: verdict.leak }),
  };
};
