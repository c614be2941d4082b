import { numberedMarks, stationWords } from '../../drawing';
import { caution, type Job, type Material, type Plan } from '../../plan';
import type { Rig } from '../../rig';
import { MARK_WORD } from '../../terms';
import { show, showDay } from '../../units';
import { readyHtml } from './condition-record';
import { markHtml, type PrintOptions, rigLine } from './print-words';
import { type Block, e, paragraphMm, printed, roomOn } from './sheet-page';

const whereOf = (rig: Rig, job: Job): string => {
  const station = rig.stations.find((s) => s.id === job.station);
  return station ? stationWords(rig, station) : '';
};

const minutesWords = ([least, most]: readonly [number, number]): string => {
  const words = (m: number): string => (m < 90 ? `${m} min` : `${Math.round(m / 30) / 2} h`);
  return least === most ? `about ${words(least)}` : `${words(least)} to ${words(most)}`;
};

const materialWords = (m: Material): string => `${m.packages} ${m.package_words}: ${m.words}`;

/** The warning stands at the job; what to do about it stands once, at the end, for all jobs. */
const warningHtml = (job: Job, width: number): { readonly html: string; readonly mm: number } => {
  const rows = job.cautions.flatMap((id) => caution(id) ?? []);
  const text = rows.map((c) => c.warning).join(' ');
  return rows.length === 0
    ? { html: '', mm: 0 }
    : { html: `<p class="caution s" style="margin-top:1.4mm"><b>${e(text)}</b></p>`, mm: 2 + paragraphMm(text, 7.8, width - 6, true, 1.3) };
};

const cautionBlocks = (plan: Plan, width: number): readonly Block[] => {
  const ids = [...new Set(plan.jobs.flatMap((j) => j.cautions))];
  const rows = ids.flatMap((id) => caution(id) ?? []);
  if (rows.length === 0) return [];
  const body = width - 62;
  return [
    { html: '<h2 style="padding-top:5mm">Before the hand moves</h2><p class="s">The manual, local rules and licensed trades come before this sheet.</p>', mm: 15, keep: true },
    ...rows.map((c): Block => {
      const mm = 2 + Math.max(paragraphMm(c.warning, 8.4, 58, true), paragraphMm(c.do, 8.4, body - 2));
      return {
        html: `<div class="r" style="align-items:flex-start;padding-top:.8mm;font-size:8.4pt"><b style="width:62mm">${e(c.warning)}</b><span style="width:${body}mm;padding:0">${e(c.do)}</span></div>`,
        mm,
      };
    }),
  ];
};

const jobBlock = (rig: Rig, job: Job, n: number, numbers: ReadonlyMap<string, number>, width: number, options: PrintOptions): Block => {
  const body = width - 12;
  const settles = job.findings.flatMap((id) => numbers.get(id) ?? []);
  const facts = [
    ...(settles.length === 0 ? [] : [`${settles.length === 1 ? 'finding' : 'findings'} ${settles.join(', ')}`]),
    ...(job.minutes ? [minutesWords(job.minutes)] : []),
    ...(job.bead_m === undefined ? [] : [`bead ${show(job.bead_m, 'length', options.preferences)}`]),
    ...job.materials.map(materialWords),
    ...(job.tools === undefined ? [] : [`tools: ${job.tools}`]),
  ].join(' · ');
  const steps = job.steps
    .map((step, i) => {
      const [first = '', ...rest] = step.split(' ');
      return `<span style="white-space:nowrap"><span class="tick" style="width:3.4mm;height:3.4mm;vertical-align:-.5mm"></span>${i + 1}. ${e(first)}</span> ${e(rest.join(' '))}`;
    })
    .join(' &ensp;');
  const stepText = job.steps.map((s, i) => `▢▢▢ ${i + 1}. ${s}`).join('  ');
  const tail = [
    ...(job.must_be_true === undefined ? [] : [`Only if: ${job.must_be_true}.`]),
    ...(job.prove === undefined ? [] : [`It holds when: ${job.prove}.`]),
    ...(job.hand_over === undefined ? [] : [`For a professional: ${job.hand_over}.`]),
  ].join(' ');
  const warn = warningHtml(job, body);
  const where = whereOf(rig, job);
  const title = where === '' ? job.title : `${where}: ${job.title.charAt(0).toLowerCase()}${job.title.slice(1)}`;
  const html = `<div style="border-top:.35mm solid #000;padding:1.6mm 0 2mm;display:flex"><div style="width:12mm;flex:none">${markHtml(job.urgency, 18, job.who === 'professional')}<div class="n" style="text-align:left;padding-top:1mm">${n}</div></div><div style="width:${body}mm"><div style="display:flex;justify-content:space-between"><h3>${e(title)}</h3><span class="s" style="white-space:nowrap">${e(MARK_WORD[job.urgency])}${job.who === 'professional' ? ', professional' : ''}</span></div>${facts === '' ? '' : `<p class="s">${e(facts)}</p>`}<p style="padding-top:.8mm">${steps}</p>${tail === '' ? '' : `<p class="s" style="padding-top:.8mm">${e(tail)}</p>`}${warn.html}<p class="s" style="padding-top:2.4mm">Done by <span class="line" style="width:34mm"></span> on <span class="line" style="width:24mm"></span> with <span class="line" style="width:48mm"></span></p></div></div>`;
  const mm =
    5 +
    paragraphMm(title, 9, body - 34, true) +
    (facts === '' ? 0 : paragraphMm(facts, 7.8, body, false, 1.3)) +
    paragraphMm(stepText, 9, body) +
    0.8 +
    (tail === '' ? 0 : 0.8 + paragraphMm(tail, 7.8, body, false, 1.3)) +
    warn.mm +
    8;
  return { html, mm: Math.max(mm, 16) };
};

const readyBlock = (plan: Plan, width: number): readonly Block[] => {
  if (plan.ready.because.length === 0) return [];
  const most = 8;
  const rows = plan.ready.because.slice(0, most).map((b) => b.text);
  const more = plan.ready.because.length - rows.length;
  const lines = [...rows, ...(more > 0 ? [`and ${more} more on the list`] : [])];
  return [
    {
      html: `<ul style="list-style:none;padding-top:2.5mm">${lines.map((l) => `<li>${e(l)}</li>`).join('')}</ul>`,
      mm: 4 + lines.reduce((sum, l) => sum + paragraphMm(l, 9, width), 0),
    },
  ];
};

const shoppingBlock = (plan: Plan, width: number): readonly Block[] => {
  if (plan.shopping.length === 0) return [];
  const side = width - 62 - 8;
  const rows = plan.shopping.map((m): Block => {
    const text = `${m.packages} ${m.package_words}; ${m.because}`;
    const mm = Math.max(6.4, 2 + Math.max(paragraphMm(text, 7.8, side - 2, false, 1.3), paragraphMm(m.words, 9, 60, true)));
    return {
      html: `<div class="r" style="height:${mm.toFixed(2)}mm"><span class="tick" style="padding:0"></span><b style="width:62mm">${e(m.words)}</b><span style="width:${side}mm" class="s wrap">${e(text)}</span></div>`,
      mm,
    };
  });
  return [{ html: '<h2 style="padding-top:5mm">To buy for one visit</h2>', mm: 11, keep: true }, ...rows];
};

const serviceBlock = (rig: Rig, plan: Plan, width: number): readonly Block[] => {
  if (plan.service_due.length === 0) return [];
  const rows = plan.service_due.map((s) => {
    const where = s.stations.flatMap((id) => rig.stations.find((x) => x.id === id)?.name ?? []);
    const text = `${s.words}${where.length > 0 && where.length <= 3 ? `: ${where.join(', ')}` : ''}`;
    return {
      html: `<div class="r"><span class="tick" style="padding:0"></span><span style="width:${width - 48}mm">${e(text)}</span><span class="s">${s.due === undefined ? 'never recorded' : `due ${e(showDay(s.due, true))}`}</span></div>`,
      mm: 2 + paragraphMm(text, 9, width - 52),
    };
  });
  return [{ html: '<h2 style="padding-top:5mm">Care that is due</h2>', mm: 11, keep: true }, ...rows];
};

/** The list of work on paper: what stands against moving, each job with its steps, what to buy, room to write who did it. */
export const planSheet = (rig: Rig, plan: Plan, options: PrintOptions): string => {
  const room = roomOn(options.paper);
  const numbers = new Map(numberedMarks(rig, plan).map((m) => [m.id, m.number]));
  const next = plan.next_round ? `Next round by ${showDay(plan.next_round.on)}: ${plan.next_round.because.replace(/\.$/, '')}.` : '';
  const top: Block = {
    html: `<div class="top"><div style="max-width:${room.w - 70}mm"><h1>Plan</h1><div class="sub">${e(`${rig.name}, ${rigLine(rig, options.preferences)}. As of ${showDay(plan.on)}.`)}</div></div>${readyHtml(plan)}</div>`,
    mm: 25,
  };
  const jobs: readonly Block[] =
    plan.jobs.length === 0
      ? [{ html: '<p style="padding-top:4mm">No work is open.</p>', mm: 10 }]
      : [
          { html: '<h2 style="padding-top:4mm">Jobs, the most urgent first</h2>', mm: 10.5, keep: true },
          ...plan.jobs.map((j, i) => jobBlock(rig, j, i + 1, numbers, room.w, options)),
        ];
  return printed(
    {
      paper: options.paper,
      title: 'Plan',
      about: `${plan.jobs.length} ${plan.jobs.length === 1 ? 'job' : 'jobs'}`,
      rig: rig.name,
      rigWords: rigLine(rig, options.preferences),
      date: showDay(plan.on),
      person: options.by ?? '',
      ...(options.digest === undefined ? {} : { digest: options.digest }),
    },
    [
      top,
      ...readyBlock(plan, room.w),
      ...jobs,
      ...shoppingBlock(plan, room.w),
      ...serviceBlock(rig, plan, room.w),
      ...cautionBlocks(plan, room.w),
      ...(next === '' ? [] : [{ html: `<p style="padding-top:5mm">${e(next)}</p>`, mm: 6 + paragraphMm(next, 9, room.w) }]),
    ],
  );
};
