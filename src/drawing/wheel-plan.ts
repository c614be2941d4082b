import type { Axle, Rig } from '../rig';
import type { Mark, Station, StationId } from '../terms';
import { drawMark } from './marks';
import { flat, type Point } from './path';
import { penOn } from './pen';
import type { Drawing, GroupPrimitive, Primitive } from './primitives';

export type WheelPlanOptions = {
  readonly px?: number;
  readonly type_px?: number;
  readonly marks?: Readonly<Record<StationId, Mark>>;
  /** One short line at each wheel: `62 psi`. */
  readonly words?: Readonly<Record<StationId, string>>;
  readonly numbers?: Readonly<Record<StationId, number>>;
  readonly selected?: StationId;
  readonly heavy?: boolean;
};

const p = penOn(flat);

/** Room for a wheel's words above and below the axles. [px] */
const WORDS_PX = 40;

type Wheel = { readonly station: Station; readonly axle: Axle; readonly curb: boolean; readonly inner: boolean };

/** Tyres that are stations, each with its axle and side. */
export const wheelsOf = (rig: Rig): readonly Wheel[] =>
  rig.stations
    .filter((s) => s.part === 'tyre' && !s.retired)
    .flatMap((station): readonly Wheel[] => {
      const axle = rig.axles.find((a) => a.id === station.axle);
      return axle && !axle.host_vehicle ? [{ station, axle, curb: /curb/.test(station.id), inner: /inner/.test(station.id) }] : [];
    })
    .sort((a, b) => Number(a.curb) - Number(b.curb) || a.axle.x_m - b.axle.x_m || Number(a.inner) - Number(b.inner));

/**
 * The axles from above, nose to the left, curb side above as on the unfolded sheet. Each wheel is a focusable group.
 * Spacing along the rig is true; the body between is only an outline.
 */
export const wheelPlan = (rig: Rig, options: WheelPlanOptions = {}): Drawing => {
  const wheels = wheelsOf(rig);
  const xs = rig.axles.filter((a) => !a.host_vehicle).map((a) => a.x_m);
  const [first, last] = xs.length > 0 ? [Math.min(...xs), Math.max(...xs)] : [0, 0];
  const length = last - first;
  const far = length > 2;
  const pad = far ? 1 : 1.3;
  const px = options.px ?? (far ? 60 : 90);
  const type = (options.type_px ?? 12) / px;
  const width = length + 2 * pad;
  const across = rig.overall.width_m;
  const top = WORDS_PX / px;
  const height = across + 2 * top;
  const names = far ? width / 2 : width - type * 0.3;
  const xAt = (x: number): number => x - first + pad;
  const rowOf = (w: Wheel): number => {
    const t = w.axle.tyre_width_m;
    const out = w.inner ? t + 0.06 - w.axle.outer_edge_m : -w.axle.outer_edge_m;
    return w.curb ? top + out : top + across - out - t;
  };
  const treadOf = (w: Wheel): readonly Primitive[] => {
    const [d, t] = [w.axle.tyre_diameter_m, w.axle.tyre_width_m];
    const [x, y] = [xAt(w.axle.x_m) - d / 2, rowOf(w)];
    const grooves = [0.28, 0.5, 0.72].map((k): readonly Point[] => [
      [x + d * 0.06, y + t * k],
      [x + d * 0.94, y + t * k],
    ]);
    return [p.box('tyre', x, y, d, t, 0.06), p.strokes('trim-core', grooves)];
  };
  const groupOf = (w: Wheel): GroupPrimitive => {
    const [d, t] = [w.axle.tyre_diameter_m, w.axle.tyre_width_m];
    const [x, y] = [xAt(w.axle.x_m), rowOf(w)];
    const mark = options.marks?.[w.station.id];
    const number = options.numbers?.[w.station.id];
    const said = [...(number === undefined ? [] : [String(number)]), ...(options.words?.[w.station.id] === undefined ? [] : [options.words[w.station.id] ?? ''])].join('  ');
    const line = w.curb ? top - type * 0.8 : top + across + type * 1.5;
    const beside = w.inner ? (w.curb ? y + t + type * 1.3 : y - type * 0.6) : line;
    return {
      form: 'group',
      id: w.station.id,
      label: w.station.name,
      role: 'station',
      hit: [x - d / 2, y, d, t],
      children: [
        ...treadOf(w),
        ...(options.selected === w.station.id ? [p.box('selected', x - d / 2 - 0.06, y - 0.06, d + 0.12, t + 0.12, 0.1)] : []),
        ...(said === '' ? [] : [p.text('text-bold', x, beside, said, type, 'middle')]),
        ...(mark === undefined || mark === 'sound' ? [] : [p.disc('plate', x, y + t / 2, 13 / px), ...drawMark(mark, x, y + t / 2, 18 / px, { heavy: options.heavy ?? false })]),
      ],
    };
  };
  const beams = rig.axles.filter((a) => !a.host_vehicle).map((a) => p.box('fitting', xAt(a.x_m) - 0.05, top + a.tyre_width_m, 0.1, across - 2 * a.tyre_width_m));
  const rails = [0.28, 0.72].map((k) => p.box('fitting', 0.1, top + across * k - 0.04, width - 0.2, 0.08));
  return {
    width,
    height,
    title: `${rig.name}: wheels from above, nose to the left`,
    px,
    primitives: [
      p.strokes('fold', [
        [
          [0, top],
          [width, top],
        ],
        [
          [0, top + across],
          [width, top + across],
        ],
      ]),
      ...beams,
      ...rails,
      p.line('leader', [type * 4, top + across / 2], [type, top + across / 2]),
      p.line('leader', [type * 1.5, top + across / 2 - type * 0.35], [type, top + across / 2], [type * 1.5, top + across / 2 + type * 0.35]),
      p.text('text-small', type * 4.4, top + across / 2 + type * 0.35, 'nose', type),
      p.text('text-bold', names, top + type * 1.5, 'Curb side', type, far ? 'middle' : 'end'),
      p.text('text-bold', names, top + across - type * 0.8, 'Road side', type, far ? 'middle' : 'end'),
      ...wheels.map(groupOf),
    ],
  };
};
