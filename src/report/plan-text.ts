import { type Finding, isOpen, type Job, type Plan, type ReadyToRoll } from '../plan';
import type { Rig } from '../rig';
import { MARK_WORD, URGENCIES } from '../terms';
import { type Preferences, show, showDay } from '../units';
import { type SourceNumbers, sourceLines, sourceNumbers, wrap } from './lines';
import { waterLines } from './water-text';

const readyHead = (ready: ReadyToRoll): string =>
  ready.answer === 'yes' ? 'Ready to roll: yes.' : ready.answer === 'no' ? 'Ready to roll: no, because' : 'Ready to roll: not known, because';

const readyText = (ready: ReadyToRoll): readonly string[] => {
  const unknown = ready.answer === 'no' ? ready.because.filter((b) => b.unknown) : [];
  const first = ready.because.filter((b) => !unknown.includes(b));
  return [readyHead(ready), ...first.map((b) => wrap(b.text, 2)), ...(unknown.length === 0 ? [] : ['Not known either']), ...unknown.map((b) => wrap(b.text, 2))];
};

const lower = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

const minutes = (job: Job): string => (job.minutes ? `, about ${job.minutes[0]} to ${job.minutes[1]} min` : '');

const LIFE_WORDS: Readonly<Partial<Record<Finding['life'], string>>> = {
  reopened: 'open again',
  'put-off': 'put off',
  declined: 'declined by the owner',
  'judged-otherwise': 'judged otherwise',
  'handed-over': 'handed over',
  'proof-due': 'mended, proof due',
};

const lifeText = (finding: Finding): readonly string[] => {
  const word = LIFE_WORDS[finding.life];
  return word === undefined ? [] : [finding.life === 'proof-due' && finding.due !== undefined ? `${word} from ${showDay(finding.due)}` : word];
};

/** Where a table says that something is always for a professional, the job says so already. */
const HANDED = /^(Always|When wished|None)/;

/** Where a job is: its station, the side of the face, or the rig as a whole. */
const whereOf = (job: Job, findings: readonly Finding[], rig: Rig, names: ReadonlyMap<string, string>): string => {
  if (job.station !== undefined) return names.get(job.station) ?? job.station;
  const place = findings[0]?.place;
  const face = place && 'face' in place ? rig.faces.find((f) => f.id === place.face) : undefined;
  return face && place && 'side' in place ? `${face.name}${place.side === 'inside' ? ', inside' : ''}` : 'Rig';
};

const jobText = (job: Job, number: number, plan: Plan, rig: Rig, names: ReadonlyMap<string, string>, preferences: Preferences, sources: SourceNumbers): readonly string[] => {
  const findings = job.findings.flatMap((id) => plan.findings.find((f) => f.id === id) ?? []);
  const where = whereOf(job, findings, rig, names);
  const lives = [...new Set(findings.flatMap(lifeText))];
  const head = wrap(
    `${number}. ${where}: ${job.title}${job.who === 'professional' ? ' [professional]' : ''}${lives.length === 0 ? '' : ` (${lives.join(', ')})`}${job.due === undefined ? '' : `, from ${showDay(job.due)}`}${minutes(job)}`,
    2,
  );
  // What is only watched is told in one line; its reasons stand in the plan as data.
  if (job.urgency === 'watch') return [head];
  const because = findings.flatMap((f) => f.because.map((b) => `${b.text} ${sources.of(b.source)}`));
  const beside = (job.belongs_with ?? []).map((id) => plan.jobs.findIndex((j) => j.id === id) + 1).filter((n) => n > 0);
  return [
    head,
    ...(beside.length === 0 ? [] : [wrap(`Belongs with job ${beside.join(' and ')}: one repair may settle both.`, 6)]),
    ...[...new Set(because)].map((b) => wrap(b, 6)),
    ...(job.hand_over === undefined || job.who === 'professional' || HANDED.test(job.hand_over) ? [] : [wrap(`For a professional if: ${lower(job.hand_over)}.`, 6)]),
    ...(job.bead_m === undefined ? [] : [wrap(`Bead by practice: ${show(job.bead_m, 'length', preferences)}.`, 6)]),
  ];
};

/** The plan as plain text for a terminal or a message. */
export const planText = (plan: Plan, rig: Rig, preferences: Preferences): string => {
  const names = new Map(rig.stations.map((s) => [s.id, s.name]));
  const lines: string[] = [`${rig.name === '' ? 'Rig' : rig.name}, ${showDay(plan.on)}`, '', ...readyText(plan.ready)];
  const sources = sourceNumbers();
  let number = 0;
  for (const urgency of URGENCIES) {
    const jobs = plan.jobs.filter((j) => j.urgency === urgency);
    if (jobs.length === 0) continue;
    lines.push('', `${MARK_WORD[urgency]} (${jobs.length})`);
    for (const job of jobs) {
      number += 1;
      lines.push(...jobText(job, number, plan, rig, names, preferences, sources));
    }
  }
  if (number === 0) lines.push('', 'No work stands on the plan.');
  const water = waterLines(plan.water, rig);
  if (water.length > 0) lines.push('', `Water (${water.length})`, ...water);
  if (plan.shopping.length > 0) {
    lines.push('', 'To buy, for one visit');
    for (const m of plan.shopping) lines.push(wrap(`${m.packages} ${m.package_words}: ${m.words}. ${m.because}`, 2));
  }
  if (plan.not_seen.length > 0) {
    lines.push('', `Not seen (${plan.not_seen.length})`);
    for (const n of plan.not_seen) lines.push(wrap(`${n.because.text} ${sources.of(n.because.source)}`, 2));
  }
  if (plan.next_round) lines.push('', wrap(`Next round: ${showDay(plan.next_round.on)}. ${plan.next_round.because} ${sources.of(plan.next_round.source)}`, 0));
  if (plan.service_due.length > 0) {
    lines.push('', `Care due (${plan.service_due.length})`);
    for (const s of plan.service_due) lines.push(wrap(`${s.because.text} ${sources.of(s.because.source)}`, 2));
  }
  const { counts } = plan;
  const open = plan.findings.filter(isOpen).length;
  lines.push('', `${open} open ${open === 1 ? 'finding' : 'findings'}; ${counts.sound} stations sound, ${counts['not-seen']} not seen.`);
  lines.push(...sourceLines(sources));
  return `${lines.join('\n')}\n`;
};
