import type { Standing } from '../logbook';
import { byUrgency, ours, type Urgency } from '../terms';
import { type CivilDay, civilDay, parseDay, showDay } from '../units';
import { type Episode, findingId, type Naming, names, proofDays, settles } from './episodes';
import type { Because, Finding, Life } from './finding';
import { byWhen } from './order';
import { defect, remedy } from './trade';

/** Kinds of decision and the life they give. A decision never takes a finding off the plan. */
const DECIDED: Readonly<Record<string, Life>> = { 'put-off': 'put-off', declined: 'declined', 'judged-otherwise': 'judged-otherwise', 'handed-over': 'handed-over' };

export const isDecision = (kind: string): boolean => kind in DECIDED;

type Now = { readonly life: Life; readonly settled_by?: Standing; readonly due?: CivilDay; readonly closed?: CivilDay; readonly because: readonly Because[]; readonly handed?: boolean };

const LIFE_RULE = ours('a mended finding stays on the plan until a later look finds it sound; a decision is shown with the finding and lasts until its day, or until a look finds it worse');

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
  const until = parseDay(String((decision.body as { until?: unknown }).until ?? ''));
  if (life !== 'put-off' || until === undefined) return { life, settled_by: decision, because: [line(`${DECISION_WORDS[life] ?? 'Decided'} ${said}${why(decision)}.`, [decision])], handed: life === 'handed-over' };
  if (on >= until) return { life: 'open', settled_by: decision, due: until, because: [line(`Put off until ${showDay(until)} ${said}; that day has come.`, [decision])] };
  return { life, settled_by: decision, due: until, because: [line(`Put off until ${showDay(until)} ${said}${why(decision)}.`, [decision])] };
};

const DECISION_WORDS: Readonly<Partial<Record<Life, string>>> = { 'put-off': 'Put off', declined: 'Declined by the owner, recorded', 'judged-otherwise': 'Judged otherwise', 'handed-over': 'Handed over' };

const why = (decision: Standing): string => {
  const body = decision.body as { why?: unknown; to?: unknown };
  const words = [typeof body.to === 'string' ? `to ${body.to}` : '', typeof body.why === 'string' && body.why !== '' ? body.why : ''].filter((w) => w !== '');
  return words.length === 0 ? '' : `: ${words.join('; ')}`;
};

/** Where a finding stands after everything that was done and decided about it. */
const now = (episode: Episode, namings: readonly Naming[], on: CivilDay): Now => {
  const mine = namings.filter((n) => names(n, episode));
  const cares = mine.filter((n) => settles(n, episode)).map((n) => n.standing);
  const { closed } = episode;
  if (closed) {
    const care = cares.at(-1);
    const text = closed.life === 'proved' ? `Found sound on ${showDay(closed.by.day)}, after it was mended on ${showDay((care ?? closed.by).day)}.` : `Found sound on ${showDay(closed.by.day)}; no care is recorded.`;
    return { life: closed.life, settled_by: closed.by, closed: closed.by.day, because: [line(text, care ? [care, closed.by] : [closed.by])] };
  }
  const last = episode.seen.at(-1);
  const care = cares.at(-1);
  if (care && last && byWhen(care, last) > 0) {
    const due = civilDay(care.day + proofDays(episode.verdict));
    const early = episode.early ? ` Looked at on ${showDay(episode.early.day)} and nothing found, too early to count.` : '';
    return { life: 'proof-due', settled_by: care, due, because: [line(`Mended on ${showDay(care.day)}; a look from ${showDay(due)} shows whether it holds.${early}`, episode.early ? [care, episode.early] : [care])] };
  }
  const decision = mine.filter((n) => !n.care && (!care || byWhen(n.standing, care) > 0)).at(-1)?.standing;
  const again = care && last ? episode.seen.find((look) => byWhen(look, care) >= 0) : undefined;
  if (again && care && !(decision && byWhen(decision, again) > 0)) {
    return { life: 'reopened', settled_by: again, because: [line(`Mended on ${showDay(care.day)}, and found again on ${showDay(again.day)}: the repair did not hold.`, [care, again])] };
  }
  const notEnough = mine.filter((n) => n.care && !settles(n, episode)).at(-1)?.standing;
  const short = notEnough ? [line(`What was recorded as done on ${showDay(notEnough.day)} does not settle this.`, [notEnough])] : [];
  if (decision) return decided(episode, decision, on);
  return { life: 'open', because: short };
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
    who: state.handed ? 'professional' : verdict.who,
    because: [...verdict.because, ...state.because],
    ...(worse_if === undefined ? {} : { worse_if }),
    life: state.life,
    ...(state.settled_by ? { settled_by: state.settled_by.entry.id } : {}),
    ...(state.due === undefined ? {} : { due: state.due }),
    ...(state.closed === undefined ? {} : { closed: state.closed }),
    remedies,
    cautions: verdict.cautions ?? [...new Set(remedies.flatMap((id) => remedy(id)?.cautions ?? []))],
    ...(verdict.suspects && verdict.suspects.length > 0 ? { suspects: verdict.suspects } : {}),
  };
};
