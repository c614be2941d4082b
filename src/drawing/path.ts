/** Points to path text. Curves are cubic, so that a sheet may be moved, turned, mirrored or scaled by its points alone. */
export type Point = readonly [x: number, y: number];

/** Carries a point of a face, or of a part's own box, onto the sheet. */
export type Onto = (x: number, y: number) => Point;

export const flat: Onto = (x, y) => [x, y];

/** Five decimals: a hundredth of a millimetre; the files trim further. */
const n = (v: number): string => {
  const r = Math.round(v * 1e5) / 1e5;
  return Object.is(r, -0) ? '0' : String(r);
};

const at = (onto: Onto, p: Point): string => {
  const [x, y] = onto(p[0], p[1]);
  return `${n(x)} ${n(y)}`;
};

/** Straight lines through the points. */
export const lineD = (onto: Onto, points: readonly Point[], closed = false): string => `M${points.map((p) => at(onto, p)).join('L')}${closed ? 'Z' : ''}`;

/** Share of a quarter circle's radius at which its control points lie: 4/3 (√2 − 1). */
const KAPPA = (4 / 3) * (Math.SQRT2 - 1);

const between = (a: Point, b: Point, t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
const apart = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

type Corner = { readonly from: Point; readonly c1: Point; readonly c2: Point; readonly to: Point };

const cornerAt = (before: Point, p: Point, after: Point, r: number): Corner => {
  const [la, lb] = [apart(p, before), apart(p, after)];
  const t = Math.min(r, la / 2, lb / 2);
  const from = la === 0 ? p : between(p, before, t / la);
  const to = lb === 0 ? p : between(p, after, t / lb);
  return { from, c1: between(from, p, KAPPA), c2: between(to, p, KAPPA), to };
};

/** Lines through the points with every corner rounded; one radius, or one for each corner. */
export const roundedD = (onto: Onto, points: readonly Point[], radius: number | readonly number[], closed = true): string => {
  const radiusOf = (i: number): number => (typeof radius === 'number' ? radius : (radius[i] ?? 0));
  const count = points.length;
  const pointOf = (i: number): Point => points[(i + count) % count] ?? [0, 0];
  const parts: string[] = [];
  points.forEach((p, i) => {
    const end = !closed && (i === 0 || i === count - 1);
    const pen = i === 0 ? 'M' : 'L';
    if (end || radiusOf(i) === 0) {
      parts.push(`${pen}${at(onto, p)}`);
      return;
    }
    const k = cornerAt(pointOf(i - 1), p, pointOf(i + 1), radiusOf(i));
    parts.push(`${pen}${at(onto, k.from)}C${at(onto, k.c1)} ${at(onto, k.c2)} ${at(onto, k.to)}`);
  });
  return `${parts.join('')}${closed ? 'Z' : ''}`;
};

export const rectPoints = (x: number, y: number, w: number, h: number): readonly Point[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

/** Part of an ellipse from one angle to another, counted from +x towards +y. [rad] */
export const arcD = (onto: Onto, cx: number, cy: number, rx: number, ry: number, from: number, to: number, start: 'M' | 'L' = 'M'): string => {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / (Math.PI / 2) - 1e-9));
  const step = (to - from) / pieces;
  const k = (4 / 3) * Math.tan(step / 4);
  const point = (a: number): Point => [cx + rx * Math.cos(a), cy + ry * Math.sin(a)];
  let d = `${start}${at(onto, point(from))}`;
  for (let i = 0; i < pieces; i += 1) {
    const [a, b] = [from + i * step, from + (i + 1) * step];
    const [p, q] = [point(a), point(b)];
    const c1: Point = [p[0] - k * rx * Math.sin(a), p[1] + k * ry * Math.cos(a)];
    const c2: Point = [q[0] + k * rx * Math.sin(b), q[1] - k * ry * Math.cos(b)];
    d += `C${at(onto, c1)} ${at(onto, c2)} ${at(onto, q)}`;
  }
  return d;
};

export const circleD = (onto: Onto, cx: number, cy: number, r: number): string => `${arcD(onto, cx, cy, r, r, 0, 2 * Math.PI)}Z`;

const NUMBER = /-?\d+(?:\.\d+)?(?:e-?\d+)?/g;

/** The same path on a sheet whose unit is `k` times smaller. */
export const scaleD = (d: string, k: number, show: (v: number) => string = n): string => d.replace(NUMBER, (v) => show(Number(v) * k));
