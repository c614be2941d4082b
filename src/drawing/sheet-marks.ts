import type { StationId } from '../terms';
import { drawMark } from './marks';
import { frameFor } from './net';
import { flat, type Point } from './path';
import { penOn } from './pen';
import { type Obstacle, type Placed, place } from './placing';
import type { Primitive } from './primitives';
import { type Anchor, anchorOf, boxesOf, isArea, type Sheet } from './sheet';
import { markLabel, type SheetMark } from './sheet-mark';
import type { Known } from './spoken';
import { widthOf } from './type-width';

/** What is to be shown on a sheet: what is known of each station, and the numbered list. */
export type SheetMarks = { readonly known: Readonly<Record<StationId, Known>>; readonly numbered: readonly SheetMark[] };

export const NO_MARKS: SheetMarks = { known: {}, numbered: [] };

const p = penOn(flat);

/** Everything on the sheet that a mark should not cover. */
export const obstaclesOn = ({ rig, net }: Sheet): readonly Obstacle[] =>
  rig.stations.flatMap((st) => {
    const frame = frameFor(net, st.face);
    if (!frame || st.layer || st.retired || isArea(st)) return [];
    return boxesOf(st, frame).map((box) => ({ box, of: st.id, ...(st.shape.form === 'lines' || st.group === 'seam' ? { weight: 3, fence: true } : { weight: 1.6 }) }));
  });

/** Size of a tick against that of a finding. */
const QUIET = 0.66;
const TICK_WEIGHT = 14;
const MARK_WEIGHT = 40;

/** A seam is dark and stitched: a tick stands beside it, not on it. */
const besideSeam = (anchor: Anchor, s: number): Anchor =>
  anchor.part.x0 === anchor.part.x1
    ? { ...anchor, solid: true, part: { x0: anchor.at[0] - s * 0.2, y0: anchor.at[1] - s * 0.2, x1: anchor.at[0] + s * 0.2, y1: anchor.at[1] + s * 0.2 } }
    : anchor;

/** A tick, or a small dotted circle without a number: smaller than a finding, never hiding a part. */
export const quietMarks = (sheet: Sheet, marks: SheetMarks, obstacles: Obstacle[], show: { readonly sound: boolean; readonly not_seen: boolean }): readonly Primitive[] => {
  const numbered = new Set(marks.numbered.flatMap((m) => (m.station === undefined ? [] : [m.station])));
  const s = sheet.s * QUIET;
  const wanted = { sound: show.sound, 'not-seen': show.not_seen } as const;
  return sheet.rig.stations.flatMap((station): readonly Primitive[] => {
    const mark = marks.known[station.id]?.mark;
    if ((mark !== 'sound' && mark !== 'not-seen') || !wanted[mark] || station.retired || numbered.has(station.id)) return [];
    const anchor = frameFor(sheet.net, station.face) && anchorOf(sheet, { at: 'station', station: station.id, side: 'outside' });
    if (!anchor) return [];
    const put = place({ ...besideSeam(anchor, s), of: station.id, s, plate: 0, flag: false }, obstacles, sheet.bounds);
    obstacles.push({ box: put.box, weight: TICK_WEIGHT });
    return drawMark(mark, put.centre[0], put.centre[1], s, { heavy: sheet.heavy });
  });
};

const leaderOf = (put: Placed, anchor: Anchor, s: number): readonly Primitive[] => {
  if (!put.leader) return [];
  const [dx, dy] = [anchor.at[0] - put.centre[0], anchor.at[1] - put.centre[1]];
  const length = Math.hypot(dx, dy);
  const start: Point = [put.centre[0] + (dx / length) * s * 0.5, put.centre[1] + (dy / length) * s * 0.5];
  return [p.line('leader', start, anchor.at), p.disc('mark', anchor.at[0], anchor.at[1], s * 0.07)];
};

/** Half a mark and the white round it. */
const EDGE = 0.62;
/** The flag reaches further out than the mark. */
const FLAG_EDGE = 0.84;

const numberedGroup = (sheet: Sheet, m: SheetMark, obstacles: Obstacle[]): readonly Primitive[] => {
  const { s, type, heavy, numbers } = sheet;
  const anchor = anchorOf(sheet, m.place);
  if (!anchor) return [];
  const size = type * 1.18;
  const plate = numbers ? widthOf(String(m.number), size, true) + type * 0.35 : 0;
  const put = place(
    { ...anchor, ...(m.station === undefined ? {} : { of: m.station }), s, plate: plate + (m.professional ? s * (FLAG_EDGE - EDGE) : 0), flag: m.professional },
    obstacles,
    sheet.bounds,
  );
  obstacles.push({ box: put.box, weight: MARK_WEIGHT });
  const [cx, cy] = put.centre;
  const b = put.box;
  const edge = m.professional && !put.numberLeft ? FLAG_EDGE : EDGE;
  const children = [
    ...leaderOf(put, anchor, s),
    p.box('plate', b.x0, cy - s * 0.6, b.x1 - b.x0, s * 1.2, s * 0.3),
    ...drawMark(m.mark, cx, cy, s, { heavy, professional: m.professional }),
    ...(numbers ? [p.text('text-number', put.numberLeft ? cx - s * EDGE : cx + s * edge, cy + size * 0.36, String(m.number), size, put.numberLeft ? 'end' : 'start')] : []),
  ];
  return [{ form: 'group', id: `mark/${m.id}`, label: markLabel(m), role: 'finding', hit: [b.x0, b.y0, b.x1 - b.x0, b.y1 - b.y0], children }];
};

/** The numbered marks, each one focusable and spoken. The most urgent finds its place first. */
export const numberedGroups = (sheet: Sheet, marks: readonly SheetMark[], obstacles: Obstacle[]): readonly Primitive[] => marks.flatMap((m) => numberedGroup(sheet, m, obstacles));
