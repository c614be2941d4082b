import type { FacePoint, Shape } from '../terms';
import classA from './layouts/class-a.json';
import classB from './layouts/class-b.json';
import classC from './layouts/class-c.json';
import fifthWheel from './layouts/fifth-wheel.json';
import foldingCamper from './layouts/folding-camper.json';
import teardrop from './layouts/teardrop.json';
import travelTrailer from './layouts/travel-trailer.json';
import truckCamper from './layouts/truck-camper.json';
import type { RigKindId } from './rig';
import { rect } from './shapes';

/**
 * A typical layout of one kind, our own, every size typical. Road and curb side share one outline (`side`), tyres and
 * the furniture of slide-outs are left out because they follow from `axles` and `slides`.
 */
export type BaseLayout = {
  readonly title: string;
  readonly overall: { readonly length: number; readonly body: number; readonly width: number; readonly body_width: number; readonly height: number; readonly hitch: number };
  readonly levels: { readonly skirt: number; readonly floor: number; readonly wall_top: number; readonly roof_top: number };
  /** Ahead of this nothing is stretched: a cab, an overhang. [m] */
  readonly fixed_ahead_of: number;
  readonly faces: Readonly<Record<string, readonly FacePoint[]>>;
  readonly axles: readonly BaseAxle[];
  readonly slides: readonly BaseSlide[];
  readonly stations: Readonly<Record<string, readonly BaseRow[]>>;
};

export type BaseAxle = {
  readonly id: string;
  readonly x: number;
  readonly tyre: string;
  readonly diameter: number;
  readonly width: number;
  readonly dual: boolean;
  readonly kind: string;
  readonly host: boolean;
  readonly edge: number;
};

export type BaseSlide = { readonly id: string; readonly face: string; readonly x: number; readonly y: number; readonly w: number; readonly h: number; readonly travel: number };

type Extra = {
  readonly form?: 'circle';
  readonly points?: readonly FacePoint[];
  readonly lines?: readonly (readonly FacePoint[])[];
  readonly within?: string;
  readonly hinge?: string;
  readonly end?: string;
  readonly layer?: boolean;
  readonly off_wall?: boolean;
};
type BaseRow = readonly [part: string, ...(readonly (number | Extra)[])];

/** A station on its way to being one: where it is drawn, and what it hangs together with. */
export type Piece = {
  /** `face.part`, `face.part.2`, … */
  readonly id: string;
  readonly part: string;
  readonly face: string;
  readonly shape: Shape;
  readonly within?: string;
  readonly hinge?: string;
  /** Which corner a moulding runs down. */
  readonly end?: string;
  readonly layer?: boolean;
  readonly off_wall?: boolean;
  readonly slide?: string;
  readonly axle?: string;
  /** Which of two tyres on one axle end. */
  readonly dual?: 'inner' | 'outer';
};

const bases = {
  'travel-trailer': travelTrailer,
  'fifth-wheel': fifthWheel,
  'class-a': classA,
  'class-b': classB,
  'class-c': classC,
  'truck-camper': truckCamper,
  'folding-camper': foldingCamper,
  teardrop,
} as unknown as Readonly<Record<RigKindId, BaseLayout>>;

export const baseLayout = (kind: RigKindId): BaseLayout => bases[kind];

const shapeOf = (row: BaseRow, extra: Extra): Shape => {
  if (extra.points) return { form: 'poly', points_m: extra.points };
  if (extra.lines) return { form: 'lines', lines_m: extra.lines };
  const [x, y, w, h] = row.slice(1, 5) as readonly number[];
  const shape = rect(x ?? 0, y ?? 0, w ?? 0, h ?? 0);
  return extra.form === 'circle' && shape.form === 'rect' ? { ...shape, form: 'circle' } : shape;
};

/** Ids that count up per face and part: `curb.window-36x22`, `curb.window-36x22.2`. */
export const counter = (): ((face: string, part: string) => string) => {
  const seen = new Map<string, number>();
  return (face, part) => {
    const key = `${face}.${part}`;
    const n = (seen.get(key) ?? 0) + 1;
    seen.set(key, n);
    return n === 1 ? key : `${key}.${n}`;
  };
};

export const basePieces = (base: BaseLayout): readonly Piece[] => {
  const id = counter();
  return Object.entries(base.stations).flatMap(([face, rows]) =>
    rows.map((row): Piece => {
      const last = row.at(-1);
      const { form: _form, points: _points, lines: _lines, within, ...rest }: Extra = typeof last === 'object' ? last : {};
      return {
        id: id(face, row[0]),
        part: row[0],
        face,
        shape: shapeOf(row, typeof last === 'object' ? last : {}),
        ...rest,
        ...(within === undefined ? {} : { within: `${face}.${within}` }),
      };
    }),
  );
};
