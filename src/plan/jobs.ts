import type { Rig } from '../rig';
import { type Station, sooner, type Urgency } from '../terms';
import { type CivilDay, civilDay, showDay } from '../units';
import { belongingTogether } from './belong-together';
import { dangerOf } from './danger';
import { type Finding, isOpen, isWork, takenAs } from './finding';
import { fits } from './fitting-cautions';
import { byJobOrder } from './job-order';
import { inUrgency, type Judged, type JudgedScene } from './judge';
import { isRubberRoof, NO_PETROLEUM, onOneVisit, packed, type Quantity, quantitiesOf } from './materials';
import { inOrder } from './order';
import type { Job, Material } from './plan-types';
import { type Method, methodOf } from './reseal-method';
import { remedy } from './trade';

/** Remedies that lay a bead. */
const BEADS: ReadonlySet<string> = new Set(['reseal-roof-over', 'reseal-roof-strip', 'wall-top-bead', 'flange-refit', 'rebed-opening', 'corner-rebed']);
/** The trade table's minutes are for one opening or about this much seam. [m] */
const MINUTES_FOR_M = 3;
const TO_FIVE = 5;

type Planned = { readonly job: Job; readonly danger: number; readonly quantities: readonly Quantity[] };

/**
 * One job settles all findings of a place that one remedy puts right: the remedy is one of those of the most urgent finding,
 * and of these the one that settles most. Places on a face without a station are each a job of their own; findings of one leak go together.
 */
const grouped = (findings: readonly Finding[], together: boolean): readonly (readonly [remedy: string | undefined, findings: readonly Finding[]])[] => {
  const groups: (readonly [string | undefined, readonly Finding[]])[] = [];
  let rest = [...findings];
  for (let [first] = rest; first; [first] = rest) {
    const lead = first;
    const beside = (f: Finding): boolean => together || f === lead || (f.leak !== undefined && f.leak === lead.leak);
    const settledBy = (id: string): readonly Finding[] => rest.filter((f) => f.who === lead.who && beside(f) && f.remedies.includes(id));
    const [best] = [...lead.remedies].sort((a, b) => settledBy(b).length - settledBy(a).length);
    const mine = best === undefined ? [lead] : settledBy(best);
    groups.push([best, mine]);
    rest = rest.filter((f) => !mine.includes(f));
  }
  return groups;
};

const beadOf = (findings: readonly Finding[], station: Station | undefined): number | undefined => {
  const stretches = findings.flatMap((f) => (f.place.at === 'stretch' ? [f.place.to_m - f.place.from_m] : []));
  if (stretches.length === findings.length) return Math.round(stretches.reduce((a, b) => a + b, 0) * 1000) / 1000;
  return station && station.bead_m > 0 ? station.bead_m : undefined;
};

const minutesFor = (minutes: readonly [number, number], bead_m: number | undefined): readonly [number, number] => {
  const times = Math.max(1, (bead_m ?? 0) / MINUTES_FOR_M);
  const round = (n: number): number => Math.ceil((n * times) / TO_FIVE) * TO_FIVE;
  return times === 1 ? minutes : [round(minutes[0]), round(minutes[1])];
};

const titleOf = (findings: readonly Finding[]): string =>
  findings
    .map((f, i) => (i === 0 ? f.title : `${f.title.charAt(0).toLowerCase()}${f.title.slice(1)}`))
    .filter((t, i, all) => all.indexOf(t) === i)
    .join(', ');

/** Cautions that the rule itself gives, not those that come with one of the remedies it names. */
const ownCautions = (finding: Finding): readonly string[] => {
  const withRemedies = new Set(finding.remedies.flatMap((id) => remedy(id)?.cautions ?? []));
  return finding.remedies.length === 0 ? finding.cautions : finding.cautions.filter((c) => !withRemedies.has(c));
};

/** The day from which it is to be looked at again, where its findings say one; a decision's day is not one. */
const dueOf = (findings: readonly Finding[]): { readonly due?: CivilDay } => {
  const days = findings.flatMap((f) => (f.leak !== undefined && f.due !== undefined && f.settled_by === undefined ? [f.due] : []));
  return days.length === 0 ? {} : { due: civilDay(Math.min(...days)) };
};

const jobOf = (scene: string, id: string | undefined, findings: readonly Finding[], station: Station | undefined, rig: Rig, method: Method | undefined): Planned => {
  const [lead] = findings;
  if (!lead) throw new Error('a job settles at least one finding');
  const row = id === undefined ? undefined : remedy(id);
  const who = findings.some((f) => f.who === 'professional') || row?.skill === 'professional' ? 'professional' : 'yourself';
  const bead_m = id !== undefined && BEADS.has(id) ? beadOf(findings, station) : undefined;
  const rubber = isRubberRoof(station, rig) && row !== undefined;
  const quantities = who === 'professional' || id === undefined ? [] : quantitiesOf(id, station, rig, bead_m, method);
  const site = {
    rig,
    station,
    remedy: id,
    seals: id !== undefined && BEADS.has(id),
    beads: quantities.filter((q) => q.kind === 'bead').map((q) => q.material),
    defects: findings.flatMap((f) => f.defect ?? []),
  };
  const cautions = [...new Set([...findings.flatMap(ownCautions), ...(row?.cautions ?? []).filter((c) => fits(c, site))])];
  const job: Job = {
    id: id === undefined || station === undefined ? `job/${lead.id}` : `job/${scene}/${id}${lead.who === 'professional' ? '/professional' : ''}`,
    title: titleOf(findings),
    ...(station ? { station: station.id } : lead.station === undefined ? {} : { station: lead.station }),
    findings: findings.map((f) => f.id),
    urgency: findings.map(takenAs).reduce(sooner),
    who,
    ...(id === undefined ? {} : { remedy: id }),
    steps: findings.some((f) => f.steps)
      ? [...new Set(findings.flatMap((f) => f.steps ?? []))]
      : row
        ? [...(method && id !== undefined && BEADS.has(id) ? [method.text] : []), ...row.steps, ...(rubber ? [NO_PETROLEUM] : [])]
        : [lead.because.at(-1)?.text ?? 'Look again at the next round.'],
    ...(row ? { minutes: minutesFor(row.minutes, bead_m) } : {}),
    ...(row?.must_be_true ? { must_be_true: row.must_be_true } : {}),
    ...(row?.prove ? { prove: row.prove } : {}),
    ...(row?.hand_over ? { hand_over: row.hand_over } : {}),
    cautions,
    materials: packed(quantities),
    ...(row?.materials ? { needs: row.materials } : {}),
    ...(row?.tools ? { tools: row.tools } : {}),
    ...(bead_m === undefined ? {} : { bead_m }),
    ...dueOf(findings),
  };
  return { job, danger: Math.min(...findings.map((f) => dangerOf(f, station?.looks))), quantities };
};

/** A look that shows whether a repair holds: watched until its day, this season's work from then on. */
const proofJob = (finding: Finding, on: number, station: Station | undefined, rig: Rig): Planned => {
  const due = finding.due;
  const urgency: Urgency = due !== undefined && on >= due ? 'this-season' : 'watch';
  const row = finding.remedies.map(remedy).find((r) => r !== undefined);
  return {
    quantities: [],
    danger: dangerOf(finding, station?.looks),
    job: {
      id: `proof/${finding.id}`,
      title: `Look again: ${finding.title.charAt(0).toLowerCase()}${finding.title.slice(1)}`,
      ...(finding.station === undefined ? {} : { station: finding.station }),
      findings: [finding.id],
      urgency,
      who: 'yourself',
      steps: finding.steps ?? [...(due === undefined ? [] : [`From ${showDay(due)}.`]), row?.prove ?? 'Look again, and write down what you see.'],
      ...(finding.leak === undefined || due === undefined ? {} : { due }),
      cautions: finding.cautions.filter((c) => (c === 'ladder' || c === 'roof') && fits(c, { rig, station, remedy: undefined, seals: false, beads: [], defects: [] })),
      materials: [],
    },
  };
};

const plannedBefore = new WeakMap<JudgedScene, readonly Planned[]>();

/** The jobs of one scene. A scene that was not judged anew asks for the same jobs. */
const jobsIn = (scene: JudgedScene, judged: Judged): readonly Planned[] => {
  const known = plannedBefore.get(scene);
  if (known) return known;
  const { station } = scene;
  const findings = inUrgency(scene.findings, judged.rig);
  const work = findings.filter(isWork);
  const method = methodAt(scene, work);
  const planned = [
    ...grouped(work, station !== undefined).map(([id, mine]) => jobOf(scene.id, id, mine, station, judged.rig, method)),
    ...findings.filter((f) => isOpen(f) && f.life === 'proof-due').map((f) => proofJob(f, judged.on, station, judged.rig)),
  ];
  const jobs = belongingTogether(
    planned.map((p) => p.job),
    findings,
  );
  const linked = planned.map((p, i) => ({ ...p, job: jobs[i] ?? p.job }));
  plannedBefore.set(scene, linked);
  return linked;
};

const otherBefore = new WeakMap<Planned, { readonly key: string; readonly job: Job }>();

/** The same job with what the visit buys anyway; asked again for the same, it gives the same. */
const withOther = (planned: Planned, mine: readonly Quantity[]): Job => {
  const key = mine.map((q) => q.material).join(' ');
  const known = otherBefore.get(planned);
  if (known?.key === key) return known.job;
  const job = { ...planned.job, materials: packed(mine) };
  otherBefore.set(planned, { key, job });
  return job;
};

/** The job list, the most urgent first, and what to buy for all of it that is one's own work. */
export const jobsOf = (judged: Judged): { readonly jobs: readonly Job[]; readonly shopping: readonly Material[] } => {
  const all = [...judged.scenes.values()].flatMap((scene) => jobsIn(scene, judged));
  const bought = onOneVisit(all.flatMap((p) => p.quantities));
  let taken = 0;
  const jobs = all.map((planned) => {
    const mine = bought.slice(taken, taken + planned.quantities.length);
    taken += planned.quantities.length;
    return { danger: planned.danger, job: mine.every((q, i) => q === planned.quantities[i]) ? planned.job : withOther(planned, mine) };
  });
  return { jobs: jobs.sort(byJobOrder).map((j) => j.job), shopping: packed(bought) };
};

/** How the seal of a station is renewed, where one of its findings asks for that. */
const methodAt = ({ station, lists }: JudgedScene, findings: readonly Finding[]): Method | undefined => {
  if (!station || !findings.some((f) => f.remedies.some((r) => BEADS.has(r)))) return undefined;
  const last = inOrder(lists.filter((list) => list[0]?.entry.kind === 'resealed')).at(-1);
  return methodOf(station, last, {
    failed: findings.some((f) => f.title === 'Seal failed'),
    notAdhering: findings.some((f) => f.title === 'Seal does not stick' || (f.defect ?? '').endsWith('.not-adhering')),
  });
};
