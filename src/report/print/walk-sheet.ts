import { type SealGrade, sealGradePicture, standing, stationWords, svgText, widthOf } from '../../drawing';
import { asksAt, type RoundForm, unitFor } from '../../entries';
import type { State } from '../../logbook';
import { look, type Plan, shownAs } from '../../plan';
import type { Rig } from '../../rig';
import type { AnyKind, Field, Side, Station, StationId } from '../../terms';
import { type Preferences, showDay, unitOf } from '../../units';
import { blank, entryWords, latestLook, markHtml, type PrintOptions, rigLine } from './print-words';
import { type Block, e, printed, roomOn } from './sheet-page';

/** One stop of the walk, in walking order. */
export type WalkStep = { readonly station: StationId; readonly side: Side; readonly group?: string };

export type WalkOptions = PrintOptions & { readonly state?: State<Rig>; readonly form?: RoundForm };

/** A row to write in with a gloved hand. [mm] */
const ROW_MM = 8.1;
const NAME_MM = 64;
const LAST_MM = 21;
const UNSEEN_MM = 12;
const NUMBER_MM = 8;
const PT_MM = 25.4 / 72;

const boxes = (words: readonly string[]): string => words.map((w) => `<span style="margin-right:3mm;white-space:nowrap"><span class="tick"></span>${e(w)}</span>`).join('');

const unitWords = (field: Extract<Field, { type: 'number' }>, preferences: Preferences): string => {
  return unitOf(field.quantity, unitFor(field, preferences)).symbol;
};

/** What one question looks like on paper; undefined for what is only asked after another answer. */
const onPaper = (field: Field, fields: Readonly<Record<string, Field>>, preferences: Preferences): string | undefined => {
  if (field.showIf || field.optional) return undefined;
  if (field.type === 'choice') {
    if (field.pictures === 'seal') return field.options.map((o) => `<span class="ring">${e(o.id.replace(/^S/, ''))}</span>`).join('');
    return boxes(field.options.map((o) => o.word.toLowerCase()));
  }
  if (field.type === 'number') {
    const partner = field.partner === undefined ? undefined : fields[field.partner];
    const at = partner?.type === 'number' ? ` at <span class="line" style="width:11mm"></span> ${e(unitWords(partner, preferences))}` : '';
    return `<span style="white-space:nowrap;margin-right:3mm"><span class="line" style="width:14mm"></span> ${e(unitWords(field, preferences))}${at}</span>`;
  }
  if (field.type === 'code') return `<span style="white-space:nowrap">date code <span class="line" style="width:16mm"></span></span>`;
  if (field.type === 'flag') return boxes([field.label]);
  return undefined;
};

const asked = (kind: AnyKind, preferences: Preferences, titled: boolean): string => {
  const fields = kind.fields as Readonly<Record<string, Field>>;
  const cells = Object.values(fields).flatMap((f) => onPaper(f, fields, preferences) ?? []);
  const name = titled && !cells.some((c) => c.includes('ring') || c.includes('date code')) ? `<small style="margin-right:2mm">${e(kind.title.replace(/^Tyre /, ''))}</small>` : '';
  return `${name}${cells.join('')}`;
};

/** Whole clauses of what to look at, as many as fit one line. */
const shortLook = (station: Station, column_mm: number): string => {
  const text = look(station.looks)?.look ?? '';
  let out = '';
  for (const clause of text.split(/[,;:.]\s*/)) {
    const next = out === '' ? clause : `${out}, ${clause}`;
    if (widthOf(next, 7.8 * PT_MM) > column_mm) break;
    out = next;
  }
  return out === '' ? text.slice(0, 0) : out;
};

const sealLegend = (width: number): Block => {
  const each = (width - 5 * 3) / 6;
  const words: readonly (readonly [SealGrade, string, string])[] = [
    ['S0', 'As new', 'no crack'],
    ['S1', 'Dull', 'cracks by lens only'],
    ['S2', 'Crazed', 'fine, under 0.2 mm'],
    ['S3', 'Cracked', '0.2 to 0.5 mm'],
    ['S4', 'Open', 'over 0.5 mm, lifted'],
    ['S5', 'Failed', 'gap, piece gone'],
  ];
  const px = ((each - 0.6) / 25.4) * 96;
  const cells = words.map(([id, word, line]) => {
    const picture = sealGradePicture(id);
    const svg = svgText(picture, { theme: 'paper', px: px / picture.width, inline: true });
    return `<div style="width:${each.toFixed(2)}mm"><div style="border:.3mm solid #000;line-height:0">${svg}</div><b>${id}</b> ${word}<br><small>${e(line)}</small></div>`;
  });
  return { html: `<div style="display:flex;gap:3mm;padding-top:3mm">${cells.join('')}</div>`, mm: 3 + ((each - 0.6) * 56) / 104 + 0.6 + 9.5 };
};

/** Lines of questions at one stop: two short ones may share a line. */
const answerLines = (kinds: readonly AnyKind[], preferences: Preferences): readonly string[] => {
  const many = kinds.length > 1;
  const cells = kinds.map((k) => asked(k, preferences, many)).filter((c) => c !== '');
  const lines: string[] = [];
  for (const cell of cells) {
    const last = lines.at(-1);
    const short = !cell.includes('tick') && !cell.includes('ring');
    if (last !== undefined && short && !last.includes('ring') && !last.includes('tick') && (last.match(/class="line"/g) ?? []).length < 2)
      lines[lines.length - 1] = `${last} ${cell}`;
    else lines.push(cell);
  }
  return lines.length === 0 ? [boxes(['sound', 'something wrong'])] : lines;
};

/**
 * The walk on paper, for full sun and for people without a phone: every stop in walking order with room for its answers,
 * what was seen last, and a dotted circle to cross where it could not be seen.
 */
export const walkSheet = (rig: Rig, steps: readonly WalkStep[], plan: Plan, options: WalkOptions): string => {
  const { paper, preferences, state } = options;
  const room = roomOn(paper);
  const today = room.w - NUMBER_MM - NAME_MM - LAST_MM - UNSEEN_MM;
  const stations = new Map(rig.stations.map((s) => [s.id, s]));
  // The most urgent is set last and stays.
  const worst = new Map(
    standing(plan)
      .toReversed()
      .flatMap((f) => (f.station === undefined ? [] : [[f.station, f] as const])),
  );
  const top: Block = {
    html: `<div class="top"><div><h1>Walk sheet</h1><div class="sub">Ring or tick. Not seen: cross the dotted circle, say why.</div></div><div style="font-size:7.8pt;display:flex;gap:5mm">${[
      ['Date', 26],
      ['By', 30],
      ['Air', 16],
    ]
      .map(([w, mm]) => `<div style="width:${mm}mm;height:11.5mm;border-bottom:.35mm solid #000">${w}</div>`)
      .join('')}</div></div>`,
    mm: 18.5,
  };
  const heads: Block = {
    html: `<div class="heads"><span style="width:${NUMBER_MM}mm"></span><span style="width:${NAME_MM}mm">Station, in walking order</span><span style="width:${LAST_MM}mm">Last</span><span style="width:${today}mm">Today, and notes</span><span style="margin-left:auto;padding:0;width:${UNSEEN_MM}mm;text-align:right">Not seen</span></div>`,
    mm: 7,
    head: true,
    keep: true,
  };
  let group = '';
  const rows = steps.flatMap((step, i): readonly Block[] => {
    const station = stations.get(step.station);
    if (!station) return [];
    const out: Block[] = [];
    if (step.group !== undefined && step.group !== group) {
      group = step.group;
      out.push({ html: `<div class="group">${e(group)}</div>`, mm: 7, keep: true, row: true });
    }
    const kinds = asksAt(station, step.side, options.form ?? 'full').asks;
    const lines = answerLines(kinds, preferences);
    const seen = state && latestLook(state, step.station, step.side);
    const last = seen ? `<span class="s">${e(shortLast(entryWords(seen, preferences)))}<br>${e(showDay(seen.day, true))}</span>` : '';
    const finding = worst.get(step.station);
    const mark = finding ? markHtml(shownAs(finding), 11, finding.who === 'professional') : '';
    const inside = step.side === 'inside' ? ', inside' : '';
    const long = lines.length > 1 ? '' : 'overflow:hidden;white-space:nowrap;text-overflow:ellipsis;';
    const name = `<div style="width:${NAME_MM}mm"><div style="font-weight:700;line-height:1.2;${long}">${e(`${stationWords(rig, station)}${inside}`)} ${mark}</div><div class="s" style="white-space:nowrap">${e(shortLook(station, NAME_MM - 3))}</div></div>`;
    const answers = lines.map((l) => `<div style="height:${ROW_MM - 0.3}mm;display:flex;align-items:center;white-space:nowrap">${l}</div>`).join('');
    out.push({
      html: `<div class="r"><span class="n" style="width:${NUMBER_MM}mm">${i + 1}</span>${name}<div style="width:${LAST_MM}mm;line-height:1.15">${last}</div><div style="width:${today}mm">${answers}</div><span style="margin-left:auto;padding:0">${markHtml('not-seen', 17)}</span></div>`,
      mm: ROW_MM * lines.length,
      row: true,
    });
    return out;
  });
  const close: Block = { html: `<div style="padding-top:6mm">${blank('Anything out of the ordinary', 120)}</div>`, mm: 14 };
  return printed(
    {
      paper,
      title: 'Walk sheet',
      about: `${steps.length} stops`,
      rig: rig.name,
      rigWords: rigLine(rig, preferences),
      date: `Printed ${showDay(options.on, true)}`,
      person: options.by ?? '',
      ...(options.digest === undefined ? {} : { digest: options.digest }),
    },
    [top, sealLegend(room.w), heads, ...rows, close],
  );
};

/** The first clause of what was recorded, cut to its column. */
const shortLast = (words: string): string => {
  const first = words.split(/[,;]/)[0] ?? words;
  const fits = (text: string): boolean => widthOf(text, 7.8 * PT_MM) <= LAST_MM - 3;
  if (fits(first)) return first;
  let cut = first;
  while (cut.length > 1 && !fits(`${cut}…`)) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
};
