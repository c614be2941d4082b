import type { Panel } from '../../plan';
import type { Rig } from '../../rig';
import { figure } from '../../units';
import type { Onto } from '../path';
import { penOn } from '../pen';
import type { Drawing, Ink, Primitive } from '../primitives';
import { widthOf } from '../type-width';
import { levelsOf, type MapLayer } from './bands';
import type { DrawnField } from './drawn-field';
import { mappedParts } from './map-words';
import { type MapOptions, type MapParts, mapParts, moistureMap } from './moisture-map';
import { figureOf, showsTenths } from './soundings';
import { wrapped } from './words-placed';

/** Points of moisture, or of a meter's own scale, as they are spoken of: `3`, `3.5`. */
const points = (v: number): string => figure(Math.round(v * 1000) / 10, Math.abs(v * 100 - Math.round(v * 100)) < 0.05 ? 0 : 1);

const unitOf = (panel: Panel): string => (panel.scale === 'relative' ? 'on its scale' : '%');

const METER_WORDS: Readonly<Record<Panel['scale'], string>> = { pin: 'pin meter', pinless: 'pinless meter', relative: 'relative scale' };

/** What the tones stand for. */
export const thresholdWords = (panel: Panel, field: DrawnField, layer: MapLayer = 'chance'): string => {
  if (layer === 'error') return 'Standard error, in points';
  return field.of === 'excess'
    ? `Chance of being more than ${points(field.threshold)} points above the dry places`
    : `Chance of being above ${points(field.threshold)} ${panel.scale === 'relative' ? 'on the meter’s scale' : '%'}`;
};

/** How well the map foretells a reading that is left out, against taking the mean: one line for each mapped part. */
export const leaveOneOutWords = (parts: MapParts): readonly string[] => {
  const mapped = mappedParts(parts.view, parts.shown);
  return mapped.flatMap((q, i) => {
    const l = q.leave_one_out;
    return l ? [`${mapped.length > 1 ? `bay ${i + 1}: ` : ''}${points(l.error)} points, the mean alone ${points(l.of_the_mean)}`] : [];
  });
};

type Row = { readonly draw: (x: number, y: number) => readonly Primitive[]; readonly words: string; readonly more?: string };

/** Width of the key in its own px, and of its signs. */
const [WIDE, SIGN] = [176, 34] as const;

/** What stands on a map, explained: only what is on it. Drawn from a corner, one unit of its own px being `k` of the sheet. */
const keyAt = (
  onto: Onto,
  k: number,
  type: number,
  panel: Panel,
  field: DrawnField,
  parts: MapParts,
  layer: MapLayer,
  wide: number = WIDE,
): { readonly primitives: readonly Primitive[]; readonly height: number } => {
  const pen = penOn(onto);
  const text = (ink: Ink, x: number, y: number, words: string, size = type, anchor: 'start' | 'middle' = 'start'): Primitive => pen.text(ink, x, y, words, size * k, anchor);
  const out: Primitive[] = [];
  let y = 0;
  const say = (ink: Ink, words: string, size = type): void => {
    for (const line of wrapped(words, size, wide, ink === 'text-bold')) {
      y += size * 1.3;
      out.push(text(ink, 0, y, line, size));
    }
  };
  const levels = levelsOf(parts.shown, layer);
  if (parts.shown.some((q) => q.drawn === 'map') && levels.length > 0) {
    say('text-bold', thresholdWords(panel, field, layer));
    y += type * 0.8;
    const box = type * 1.75;
    [...levels].reverse().forEach((l, i) => {
      out.push(pen.box(l.ink, 0, y + i * box, 26, box));
    });
    const all = levels.length + 1;
    out.push(
      pen.box('contour', 0, y, 26, all * box),
      ...[...levels]
        .reverse()
        .flatMap((l, i): readonly Primitive[] => [
          pen.line(l.heavy ? 'contour-half' : 'contour', [0, y + (i + 1) * box], [26, y + (i + 1) * box]),
          text(l.heavy ? 'text-bold' : 'text', SIGN, y + (i + 1) * box + type * 0.36, layer === 'chance' ? `${l.words} in 100` : l.words),
        ]),
    );
    y += all * box + type * 0.6;
  }
  const readings = parts.soundings.flatMap((s) => s.spot.readings.slice(-1));
  const sample = [...readings].sort((a, b) => b.as_read - a.as_read)[0];
  const tenths = showsTenths(readings);
  const dry = readings.find((r) => r.dry_reference);
  const doubtful = readings.find((r) => r.no_number !== undefined);
  const signed = (open: boolean, line: boolean) => (x: number, at: number) => {
    const shown = (line ? dry : open ? doubtful : undefined) ?? sample;
    if (!shown) return [];
    const f = figureOf(shown, tenths);
    const whole = open ? `(${f.whole}` : f.whole;
    const [w1, w2] = [widthOf(whole, type), widthOf(f.tenth, type * 0.73)];
    return [
      text('text', x, at, whole),
      ...(f.tenth === '' ? [] : [text('text', x + w1, at + type * 0.2, f.tenth, type * 0.73)]),
      ...(open ? [text('text', x + w1 + w2, at, ')')] : []),
      ...(line ? [pen.line('tick-end', [x, at + type * 0.2], [x + w1, at + type * 0.2])] : []),
    ];
  };
  const lineOf = (ink: Ink) => (x: number, at: number) => [pen.line(ink, [x, at - type * 0.36], [x + 26, at - type * 0.36])];
  const words = new Set(parts.ways.map((w) => w.word));
  const rows: readonly (Row | false)[] = [
    sample !== undefined && {
      draw: signed(false, false),
      words: `reads ${figureOf(sample, tenths).whole}${tenths ? `.${figureOf(sample, tenths).tenth}` : ''} ${unitOf(panel)}`,
      more: METER_WORDS[panel.scale],
    },
    dry !== undefined && { draw: signed(false, true), words: 'dry place, to compare' },
    doubtful !== undefined && { draw: signed(true, false), words: 'not to be compared' },
    parts.ringed && { draw: (x, at) => [pen.disc('selected', x + 12, at - type * 0.36, type * 0.85 * k)], words: 'followed through time' },
    words.has('likely') && { draw: lineOf('way-likely'), words: 'likely way in' },
    words.has('possible') && { draw: lineOf('way-possible'), words: 'possible' },
    words.has('unlikely') && { draw: lineOf('way-unlikely'), words: 'unlikely' },
    parts.crosses && {
      draw: (x, at) => [
        pen.strokes('selected', [
          [
            [x + 7, at - type * 0.36],
            [x + 17, at - type * 0.36],
          ],
          [
            [x + 12, at - type * 0.36 - 5],
            [x + 12, at - type * 0.36 + 5],
          ],
        ]),
      ],
      words: 'read here next',
    },
    parts.unread && {
      draw: (x, at) => [
        pen.strokes(
          'grid',
          [0, 8, 16].map((d) => [
            [x + d, at + 1],
            [x + d + 10, at - 9],
          ]),
        ),
      ],
      words: 'not read',
    },
  ];
  for (const row of rows) {
    if (!row) continue;
    y += type * 1.75;
    out.push(...row.draw(0, y), text('text', SIGN, y, row.words));
    if (row.more !== undefined) {
      y += type * 1.2;
      out.push(text('text-small', SIGN, y, row.more));
    }
  }
  const loo = leaveOneOutWords(parts);
  if (loo.length > 0) {
    y += type * 0.9;
    say('text-bold', 'Leave-one-out error');
    for (const l of loo) say('text-small', l);
  }
  return { primitives: out, height: y + type * 0.5 };
};

/** What stands on the map, explained, as a drawing of its own in px. */
export const moistureKey = (rig: Rig, panel: Panel, field: DrawnField, options: MapOptions = {}): Drawing => {
  const parts = mapParts(rig, panel, field, options);
  const title = `What the map shows: ${thresholdWords(panel, field, options.layer)}`;
  if (!parts) return { width: 1, height: 1, title, px: 1, primitives: [] };
  const loo = leaveOneOutWords(parts);
  const { primitives, height } = keyAt((x, y) => [x, y], 1, options.type_px ?? 12, panel, field, parts, options.layer ?? 'chance', options.key_px);
  return { width: options.key_px ?? WIDE, height, title: loo.length > 0 ? `${title}. Leave-one-out error: ${loo.join('; ')}` : title, px: 1, primitives };
};

/** Map and key on one sheet: for files and paper. */
export const moistureSheet = (rig: Rig, panel: Panel, field: DrawnField, options: MapOptions = {}): Drawing => {
  const map = moistureMap(rig, panel, field, options);
  const parts = mapParts(rig, panel, field, options);
  if (!parts) return map;
  const k = 1 / map.px;
  const [x0, y0] = [map.width + 18 * k, parts.view.area.y0];
  const key = keyAt((x, y) => [x0 + x * k, y0 + y * k], k, options.type_px ?? 12, panel, field, parts, options.layer ?? 'chance');
  return { ...map, width: x0 + WIDE * k, height: Math.max(map.height, y0 + key.height * k + 12 * k), primitives: [...map.primitives, ...key.primitives] };
};
