import { memo } from 'react';
import type { Primitive } from '../../../src/drawing';

type Reach = { readonly scale: number; readonly current: string | undefined; readonly selected: string | undefined };

type Group = Extract<Primitive, { form: 'group' }>;

/** Stations and marks become one thing each that can be focused and pressed; groups inside them are only shapes. */
const Reachable = ({ group, reach }: { readonly group: Group; readonly reach: Reach }) => {
  const [x, y, w, h] = group.hit ?? [0, 0, 0, 0];
  return (
    // biome-ignore lint/a11y/useSemanticElements: a part of a drawing cannot be an HTML button
    <g className="reach" role="button" tabIndex={group.id === reach.current ? 0 : -1} aria-label={group.label} aria-pressed={group.id === reach.selected} data-reach={group.id}>
      <rect className="reach-hit" x={x} y={y} width={w} height={h} />
      <ShapeList primitives={group.children} reach={reach} still />
      <rect className="reach-ring-edge" x={x} y={y} width={w} height={h} />
      <rect className="reach-ring" x={x} y={y} width={w} height={h} />
    </g>
  );
};

const Shape = ({ primitive: p, reach, still }: { readonly primitive: Primitive; readonly reach: Reach; readonly still: boolean }) => {
  switch (p.form) {
    case 'path':
      return <path className={`ink ink-${p.ink}`} d={p.d} />;
    case 'circle':
      return <circle className={`ink ink-${p.ink}`} cx={p.cx} cy={p.cy} r={p.r} />;
    case 'text':
      return (
        <text className={`ink-${p.ink}`} x={p.x} y={p.y} fontSize={p.size} textAnchor={p.anchor} transform={p.rotate === undefined ? undefined : `rotate(${p.rotate} ${p.x} ${p.y})`}>
          {p.text}
        </text>
      );
    case 'group':
      if (still || p.role === 'plain' || p.hit === undefined) return <ShapeList primitives={p.children} reach={reach} still={still} />;
      return <Reachable group={p} reach={reach} />;
  }
};

const ShapeList = ({ primitives, reach, still }: { readonly primitives: readonly Primitive[]; readonly reach: Reach; readonly still: boolean }) => (
  <>
    {primitives.map((p, i) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: the order of a drawing is its identity
      <Shape key={p.form === 'group' ? p.id : i} primitive={p} reach={reach} still={still} />
    ))}
  </>
);

/** Primitive to element, by ink. Strokes keep their width at any zoom. */
export const Shapes = memo(({ primitives, scale, current, selected }: { readonly primitives: readonly Primitive[] } & Reach) => (
  <ShapeList primitives={primitives} reach={{ scale, current, selected }} still={false} />
));
