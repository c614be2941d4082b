import { memo } from 'react';
import type { Primitive, Theme } from '../../../src/drawing';
import { InkShape, lookOf } from '../shared/ink-shape';

type Reach = { readonly theme: Theme; readonly current: string | undefined; readonly selected: string | undefined };
type Group = Extract<Primitive, { form: 'group' }>;

/** Stations and marks become one thing each that can be focused and pressed; groups inside them are only shapes. */
const Reachable = ({ group, reach }: { readonly group: Group; readonly reach: Reach }) => {
  const [x, y, width, height] = group.hit ?? [0, 0, 0, 0];
  return (
    // biome-ignore lint/a11y/useSemanticElements: a part of a drawing cannot be an HTML button
    <g
      className={`reach reach-${group.role}`}
      role="button"
      tabIndex={group.id === reach.current ? 0 : -1}
      aria-label={group.label}
      aria-pressed={group.id === reach.selected}
      data-reach={group.id}
    >
      <rect className="reach-hit" x={x} y={y} width={width} height={height} />
      <ShapeList primitives={group.children} reach={reach} still />
      <rect className="reach-edge" x={x} y={y} width={width} height={height} />
      <rect className="reach-ring" x={x} y={y} width={width} height={height} />
    </g>
  );
};

const Shape = ({ primitive: p, reach, still }: { readonly primitive: Primitive; readonly reach: Reach; readonly still: boolean }) => {
  if (p.form === 'group') {
    if (still || p.role === 'plain' || p.hit === undefined) return <ShapeList primitives={p.children} reach={reach} still={still} />;
    return <Reachable group={p} reach={reach} />;
  }
  return <InkShape p={p} look={lookOf(p.ink, reach.theme)} />;
};

const ShapeList = ({ primitives, reach, still }: { readonly primitives: readonly Primitive[]; readonly reach: Reach; readonly still: boolean }) => (
  <>
    {primitives.map((p, i) => (
      <Shape key={p.form === 'group' ? `${p.role}:${p.id}` : i} primitive={p} reach={reach} still={still} />
    ))}
  </>
);

/** Primitive to element, by ink. Strokes keep their width at any zoom. */
export const SheetShapes = memo(
  ({
    primitives,
    theme,
    current,
    selected,
    still = false,
  }: { readonly primitives: readonly Primitive[] /** Nothing can be reached: it is only looked at. */; readonly still?: boolean } & Reach) => (
    <ShapeList primitives={primitives} reach={{ theme, current, selected }} still={still} />
  ),
);
SheetShapes.displayName = 'SheetShapes';
