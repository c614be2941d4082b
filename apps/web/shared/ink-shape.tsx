import type { SVGProps } from 'react';
import { INKS, type Ink, inkStyle, type Primitive, type Theme } from '../../../src/drawing';

/** What an ink looks like, as SVG attributes. Strokes keep their width at any zoom. */
export type Look = SVGProps<SVGElement>;

const attributesOf = (ink: Ink, theme: Theme): Look => {
  const s = inkStyle(ink, theme);
  if (s.stroke === 'none' || s.width === 0) return { fill: s.fill, ...(s.weight ? { fontWeight: s.weight } : {}) };
  return {
    fill: s.fill,
    stroke: s.stroke,
    strokeWidth: s.width,
    strokeLinejoin: 'round',
    vectorEffect: 'non-scaling-stroke',
    ...(s.dash ? { strokeDasharray: s.dash.join(' ') } : {}),
    ...(s.cap ? { strokeLinecap: s.cap } : {}),
    ...(s.weight ? { fontWeight: s.weight, paintOrder: 'stroke' } : {}),
  };
};

/** Worked out once for each theme. */
const made = new Map<Theme, ReadonlyMap<Ink, Look>>();

export const lookOf = (ink: Ink, theme: Theme): Look => {
  const inks = made.get(theme) ?? new Map(INKS.map((i) => [i, attributesOf(i, theme)] as const));
  made.set(theme, inks);
  return inks.get(ink) ?? {};
};

type Plain = Exclude<Primitive, { form: 'group' }>;

/** A path, a circle or a line of type, for whichever view draws it. */
export const InkShape = ({ p, look }: { readonly p: Plain; readonly look: Look }) => {
  const looks = look as SVGProps<SVGPathElement & SVGCircleElement & SVGTextElement>;
  if (p.form === 'path') return <path {...looks} d={p.d} />;
  if (p.form === 'circle') return <circle {...looks} cx={p.cx} cy={p.cy} r={p.r} />;
  return (
    <text fontWeight={400} {...looks} x={p.x} y={p.y} fontSize={p.size} textAnchor={p.anchor} transform={p.rotate === undefined ? undefined : `rotate(${p.rotate} ${p.x} ${p.y})`}>
      {p.text}
    </text>
  );
};
