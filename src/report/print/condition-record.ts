import { type Drawing, knownFrom, locator, numberedMarks, rigSheet, type SheetMark, svgText } from '../../drawing';
import type { State } from '../../logbook';
import type { Finding, Plan } from '../../plan';
import type { Rig } from '../../rig';
import { type Hash, MARK_WORD, MARKS, type Mark, type StationId } from '../../terms';
import { type CivilDay, showDay } from '../../units';
import { hasOwnPart, photosHtml, photosOf } from './photos-block';
import { blank, entryWords, markHtml, type PrintOptions, rigLine } from './print-words';
import { pressureThroughTime, recordedAt, sealThroughTime } from './seen-through-time';
import { type Block, e, paragraphMm, printed, roomOn } from './sheet-page';
import { wheelsBlock } from './wheels-block';

export type RecordOptions = PrintOptions & {
  /** The most urgent standing of each station. */
  readonly marks: Readonly<Record<StationId, Mark>>;
  /** What the round was, in words: `Full round of 3 October 2026, 78 of 80 stations looked at`. */
  readonly round?: string;
  /** Photographs to print, as data addresses, by hash; `photosToPrint` says which. */
  readonly photos?: Readonly<Record<Hash, string>>;
};

const MM_PX = 96 / 25.4;

/** True scales a sheet may have. */
const SCALES = [30, 40, 50, 60, 75, 100, 125, 150, 200] as const;

/** The unfolded rig at the largest true scale that fits, and that scale. */
export const netAtScale = (
  rig: Rig,
  plan: Plan,
  options: Pick<RecordOptions, 'marks' | 'preferences'>,
  w_mm: number,
  h_mm: number,
): { readonly svg: string; readonly mm: number; readonly scale: string } => {
  const marks = { known: knownFrom(plan, options.marks), numbered: numberedMarks(rig, plan) };
  const at = (scale: number): Drawing =>
    rigSheet(rig, marks, {
      px: (1000 / scale) * MM_PX,
      mark_px: 17,
      type_px: 10.5,
      heavy: true,
      preferences: options.preferences,
      show: { sound: false, not_seen: true },
      dimensions: 'scale',
    });
  const fits = (d: Drawing): boolean => (d.width * d.px) / MM_PX <= w_mm && (d.height * d.px) / MM_PX <= h_mm;
  const scale = SCALES.find((s) => fits(at(s))) ?? 200;
  const drawing = at(scale);
  return { svg: svgText(drawing, { theme: 'paper', paper: true, inline: true }), mm: (drawing.height * drawing.px) / MM_PX, scale: `1:${scale}` };
};

const READY: Readonly<Record<Plan['ready']['answer'], string>> = { yes: 'Ready to roll', no: 'Not ready to roll', 'not-known': 'Ready to roll: not known' };

/** How the answer stands at the head of a sheet, with its mark. */
export const readyHtml = (plan: Plan): string => {
  const { answer, because } = plan.ready;
  const mark: Mark = answer === 'yes' ? 'sound' : answer === 'no' ? 'before-moving' : 'not-seen';
  const words = answer === 'yes' ? 'everything on the pre-trip round was seen in time' : `${because.length} ${because.length === 1 ? 'thing stands' : 'things stand'} against it`;
  return `<div class="stand">${markHtml(mark, 36)}<div>${READY[answer]}<small>${e(words)}</small></div></div>`;
};

const countsRow = (plan: Plan): Block => {
  const cells = MARKS.map(
    (m) =>
      `<div style="display:flex;align-items:center;gap:1.6mm;padding:0 2.2mm;border-left:.35mm solid #000;flex:1 1 auto;font-size:8pt">${markHtml(m, 14)}<b style="font-size:11pt">${plan.counts[m]}</b> ${e(MARK_WORD[m])}</div>`,
  );
  return { html: `<div style="display:flex;height:9mm;border-top:.6mm solid #000;border-bottom:.6mm solid #000;margin-top:1.5mm">${cells.join('')}</div>`, mm: 11.5 };
};

const who = (m: SheetMark): string => (m.professional ? ', professional' : '');

const COLUMNS = { mark: 9, n: 8, where: 62 } as const;

const findingRows = (numbered: readonly SheetMark[], width: number): readonly Block[] => {
  const settle = 42;
  const what = width - COLUMNS.mark - COLUMNS.n - COLUMNS.where - settle;
  const head: Block = {
    html: `<div class="heads"><span style="width:${COLUMNS.mark + COLUMNS.n}mm"></span><span style="width:${COLUMNS.where}mm">Where</span><span style="width:${what}mm">What was found</span><span>To be settled</span></div>`,
    mm: 7,
    head: true,
    keep: true,
  };
  const rows = numbered
    .filter((m) => m.mark !== 'not-seen')
    .map((m): Block => {
      const lines = Math.max(1, Math.ceil(paragraphMm(m.where, 9, COLUMNS.where - 3, true) / 4.4), Math.ceil(paragraphMm(m.what, 9, what - 3) / 4.4));
      return {
        html: `<div class="r"><span style="width:${COLUMNS.mark}mm">${markHtml(m.mark, 14, m.professional)}</span><span class="n" style="width:${COLUMNS.n}mm">${m.number}</span><b style="width:${COLUMNS.where}mm">${e(m.where)}</b><span style="width:${what}mm">${e(m.what)}</span><span>${e(MARK_WORD[m.mark])}${who(m)}</span></div>`,
        mm: 2.1 + 4.32 * lines,
        row: true,
      };
    });
  return rows.length === 0 ? [{ html: '<p style="padding-top:3mm">Nothing open was found.</p>', mm: 9 }] : [head, ...rows];
};

const notSeenBlock = (numbered: readonly SheetMark[], width: number): readonly Block[] => {
  const unseen = numbered.filter((m) => m.mark === 'not-seen');
  if (unseen.length === 0) return [];
  const text = unseen.map((m) => `${m.number} ${m.where}: ${m.what}`).join('  ');
  const html = unseen.map((m) => `<b>${m.number}</b> ${e(m.where)}: ${e(m.what)}`).join(' &nbsp;');
  return [{ html: `<h3 style="padding-top:3mm">Not seen, and so not sound</h3><p>${html}</p>`, mm: 8 + paragraphMm(text, 9, width) }];
};

const howBlock: Block = {
  html: `<h3 style="padding-top:3.5mm">How it was looked at</h3><p style="padding-top:2.2mm;white-space:nowrap">${blank('Air', 18)}${blank('Weather', 34)}${blank('Meter', 34)}${blank('Gauge', 24)}</p><small>Seal grades S0 to S5 are a scale of this program’s own. What was not looked at is not judged.</small>`,
  mm: 20,
};

const PICTURE_MM = 46;

const pictureOf = (rig: Rig, state: State<Rig>, finding: Finding, options: RecordOptions): { readonly html: string; readonly mm: number } => {
  const station = rig.stations.find((s) => s.id === finding.station);
  if (!station) return { html: '', mm: 0 };
  const size = { width: PICTURE_MM * MM_PX, height: 34 * MM_PX, type_px: 9.5 };
  const kinds = new Set(finding.because.flatMap((b) => b.entries).map((id) => state.standing.get(id)?.entry.kind));
  const plot = kinds.has('tyre-pressure')
    ? pressureThroughTime(rig, state, station.id, station.name, options.preferences, size)
    : kinds.has('seal-grade')
      ? sealThroughTime(state, station.id, station.name, size)
      : undefined;
  const place = locator(rig, station, { fit_px: PICTURE_MM * MM_PX, height_px: 18 * MM_PX, side: 'side' in finding.place ? finding.place.side : 'outside' });
  const parts = [svgText(place, { theme: 'paper', inline: true }), ...(plot ? [svgText(plot, { theme: 'paper', inline: true })] : [])];
  const caption = plot && kinds.has('tyre-pressure') ? '<small>as read on the gauge; temperature not taken out</small>' : '';
  return {
    html: parts.map((p) => `<div style="line-height:0;margin-bottom:2mm">${p}</div>`).join('') + caption,
    mm: (place.height * place.px) / MM_PX + 2 + (plot ? 36 : 0) + (caption === '' ? 0 : 8),
  };
};

/** The last things recorded at the place; more would fill the page without adding to the judgement. */
const MOST_ROWS = 5;

const recordRows = (rig: Rig, state: State<Rig>, finding: Finding, options: RecordOptions, width: number): { readonly html: string; readonly mm: number } => {
  const id = finding.station;
  if (id === undefined || !rig.stations.some((s) => s.id === id)) return { html: '', mm: 0 };
  const side = 'side' in finding.place ? finding.place.side : 'outside';
  const list = recordedAt(state, id, side).slice(0, MOST_ROWS);
  if (list.length === 0) return { html: '', mm: 0 };
  const [day, by] = [26, 20];
  const rows = list.map((s) => {
    const words = `${entryWords(s, options.preferences)}${s.entry.note === undefined ? '' : `. ${s.entry.note}`}`;
    return {
      html: `<div class="r" style="min-height:5.4mm;height:auto;padding:.5mm 0"><span style="width:${day}mm">${e(showDay(s.day, true))}</span><span style="width:${width - day - by}mm" class="wrap">${e(words)}</span><span style="width:${by}mm" class="s">${e(s.entry.by)}</span></div>`,
      mm: Math.max(5.4, 1.2 + paragraphMm(words, 9, width - day - by - 3)),
    };
  });
  return {
    html: `<div class="heads" style="height:5.5mm"><span style="width:${day}mm">Seen or done</span><span>As recorded</span></div>${rows.map((r) => r.html).join('')}`,
    mm: 5.5 + rows.reduce((sum, r) => sum + r.mm, 0),
  };
};

const becauseRows = (finding: Finding, width: number): { readonly html: string; readonly mm: number } => {
  const source = 70;
  const rows = finding.because.map((b, i) => {
    const text = `${i === 0 ? 'Because. ' : ''}${b.text}`;
    const mm = 1.4 + Math.max(paragraphMm(text, 9, width - source - 3), paragraphMm(b.source.text, 7.8, source - 1, false, 1.3));
    return {
      html: `<div class="r" style="height:${mm.toFixed(2)}mm;align-items:flex-start;padding-top:.6mm"><span style="width:${width - source}mm">${i === 0 ? '<b>Because.</b> ' : ''}${e(b.text)}</span><span class="s wrap" style="width:${source}mm;padding:0">${e(b.source.text)}</span></div>`,
      mm,
    };
  });
  return { html: rows.map((r) => r.html).join(''), mm: rows.reduce((sum, r) => sum + r.mm, 0) };
};

/** One finding: its place and what was recorded side by side, the reasons and the work below, so that a sheet may end between. */
const findingBlocks = (rig: Rig, state: State<Rig>, plan: Plan, finding: Finding, m: SheetMark, options: RecordOptions, width: number): readonly Block[] => {
  const right = width - PICTURE_MM - 6;
  const picture = pictureOf(rig, state, finding, options);
  const record = recordRows(rig, state, finding, options, right);
  const because = becauseRows(finding, width);
  const job = plan.jobs.find((j) => j.findings.includes(finding.id));
  const list = (job?.steps ?? []).map((s) => s.replace(/\.$/, '')).join('. ');
  const todo = job ? [`${job.who === 'professional' ? 'Asked for' : 'To do'}. `, `${list}.`] : undefined;
  const worse = finding.worse_if === undefined ? undefined : ['Worse if. ', `${finding.worse_if}.`];
  const photos = photosHtml(photosOf(state, finding), options.photos ?? {});
  const head = `<div style="border-top:1mm solid #000;display:flex;align-items:center;gap:3mm;height:13mm">${markHtml(m.mark, 24, m.professional)}<span style="font-size:15pt;font-weight:700">${m.number}</span><h2 style="flex:1">${e(m.where)}</h2><b>${e(MARK_WORD[m.mark])}${m.professional ? ', by a professional' : ''}</b></div>`;
  const rightMm = paragraphMm(m.what, 10.5, right) + record.mm + photos.mm;
  const texts = [todo, worse].filter((t) => t !== undefined);
  return [
    {
      html: `${head}<div style="display:flex;gap:6mm"><div style="width:${PICTURE_MM}mm;flex:none">${picture.html}</div><div style="width:${right}mm"><p style="font-size:10.5pt">${e(m.what)}</p>${record.html}${photos.html}</div></div>`,
      mm: 15 + Math.max(rightMm, picture.mm),
      keep: true,
    },
    { html: because.html, mm: because.mm + 1 },
    {
      html: texts.map(([name = '', text = '']) => `<p style="padding-top:1.4mm"><b>${e(name)}</b>${e(text)}</p>`).join(''),
      mm: 5 + texts.reduce((sum, t) => sum + 1.4 + paragraphMm(t.join(''), 9, width), 0),
    },
  ];
};

const signing: Block = { html: `<div style="border-top:.35mm solid #000;padding-top:4mm">${blank('Looked at by', 58)}${blank('Date', 32)}${blank('Handed to', 48)}</div>`, mm: 16 };

/** From when the record is, for its foot. */
const since = (plan: Plan): CivilDay => plan.on;

/**
 * The state of the rig on paper: the unfolded drawing with its numbers, what was found and how soon it is to be settled,
 * then every finding with what was recorded, the reasons and their sources.
 */
export const conditionRecord = (rig: Rig, state: State<Rig>, plan: Plan, options: RecordOptions): string => {
  const room = roomOn(options.paper);
  const numbered = numberedMarks(rig, plan);
  const net = netAtScale(rig, plan, options, room.w, 136);
  const about = [rigLine(rig, options.preferences), ...(options.round === undefined ? [] : [options.round])].join('. ');
  const top: Block = {
    html: `<div class="top"><div style="max-width:${room.w - 68}mm"><h1>Condition record</h1><div class="sub">${e(rig.name)}, ${e(about)}.</div></div>${readyHtml(plan)}</div>`,
    mm: 13 + paragraphMm(about, 9.5, room.w - 68) + 4,
  };
  const drawing: Block = { html: `<div style="display:flex;justify-content:center;padding-top:2mm;line-height:0">${net.svg}</div>`, mm: net.mm + 2 };
  const own = new Map(plan.findings.filter(hasOwnPart).map((f) => [f.id, f]));
  const pages = numbered.flatMap((m): readonly Block[] => {
    const f = own.get(m.id);
    return f ? findingBlocks(rig, state, plan, f, m, options, room.w) : [];
  });
  return printed(
    {
      paper: options.paper,
      title: 'Condition record',
      about: 'Faces and findings',
      rig: rig.name,
      rigWords: rigLine(rig, options.preferences),
      date: showDay(since(plan)),
      person: options.by ?? '',
      scale: net.scale,
      ...(options.digest === undefined ? {} : { digest: options.digest }),
    },
    [
      top,
      drawing,
      countsRow(plan),
      ...findingRows(numbered, room.w),
      ...notSeenBlock(numbered, room.w),
      ...wheelsBlock(rig, state, numbered, options.marks, options.preferences, room.w),
      howBlock,
      ...pages,
      signing,
    ],
  );
};
