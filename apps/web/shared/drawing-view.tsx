import { createContext, type KeyboardEvent, memo, use } from 'react';
import type { Drawing, Ink, Primitive, Theme } from '../../../src/drawing';
import { InkShape, type Look, lookOf } from './ink-shape';
import { useSettings } from './settings';

type Props = {
  readonly drawing: Drawing;
  /** Called with the id of a station or finding that was chosen by touch or keyboard. Without it the drawing is a picture. */
  readonly choose?: ((id: string) => void) | undefined;
  readonly chosen?: string | undefined;
  readonly className?: string;
  /** An equal list stands beside it, and it is passed over by screen readers. */
  readonly silent?: boolean;
};

/** The ground on which drawings are looked at: the desk's inks or the field's. At night both turn over. */
export const Surface = createContext<'field' | 'desk'>('field');

const useTheme = (): Theme => {
  const surface = use(Surface);
  return useSettings().theme === 'night' ? 'night' : surface;
};

/** Below so many CSS px to the metre a seam is a plain line and every rule is thinner: the part must stay clear of its outline. [px/m] */
const SMALL_PX = 40;
const THINNER = 0.62;

const isSmall = (px: number): boolean => px > 1 && px < SMALL_PX;

const PLAIN_WHEN_SMALL: Readonly<Partial<Record<Ink, number>>> = { seam: 1.6, face: 2.4, slide: 2.2 };

const smaller = (ink: Ink, look: Look): Look => {
  const marked = ink.startsWith('mark') || ink === 'here' || ink === 'hairline' || ink === 'selected';
  return marked || look.strokeWidth === undefined ? look : { ...look, strokeWidth: PLAIN_WHEN_SMALL[ink] ?? Number(look.strokeWidth) * THINNER };
};

type Drawn = Pick<Props, 'choose' | 'chosen'> & { readonly theme: Theme; readonly small: boolean };

const keyOf = (p: Primitive, i: number): string => (p.form === 'group' ? p.id : `${p.form}${i}`);

const Part = ({ p, ...drawn }: { readonly p: Primitive } & Drawn) => {
  const { theme, small, choose, chosen } = drawn;
  if (p.form !== 'group') {
    if (small && p.ink === 'stitch') return null;
    const look = lookOf(p.ink, theme);
    return <InkShape p={p} look={small ? smaller(p.ink, look) : look} />;
  }
  const inside = p.children.map((c, i) => <Part key={keyOf(c, i)} p={c} {...drawn} />);
  if (p.role === 'plain' || !choose) return <g>{inside}</g>;
  const press = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    choose(p.id);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a part of a drawing cannot be a button element
    <g
      className={`part part-${p.role}${p.id === chosen ? ' chosen' : ''}`}
      role="button"
      tabIndex={0}
      aria-label={p.label}
      aria-pressed={p.id === chosen}
      data-id={p.id}
      onClick={() => choose(p.id)}
      onKeyDown={press}
    >
      {p.hit && <rect className="hit" x={p.hit[0]} y={p.hit[1]} width={p.hit[2]} height={p.hit[3]} />}
      {inside}
    </g>
  );
};

/**
 * A drawing on the screen: the same primitives and inks that paper and files are made of, each part with its own tab stop.
 * A sheet to work on, with zoom, drag and one tab stop for all, is the desk's `sheet-view.tsx`: the hand needs none of that and
 * should not wait for it. What both draw alike is in `ink-shape.tsx`.
 */
export const DrawingView = memo(({ drawing, choose, chosen, className, silent = false }: Props) => {
  const theme = useTheme();
  const name = silent ? { 'aria-hidden': true } : { role: choose ? 'group' : 'img', 'aria-label': drawing.title };
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: it is named by aria-label, or silent beside an equal list
    <svg className={`drawing ${className ?? ''}`} viewBox={`0 0 ${drawing.width} ${drawing.height}`} preserveAspectRatio="xMidYMid meet" {...name}>
      {drawing.primitives.map((p, i) => (
        <Part key={keyOf(p, i)} p={p} theme={theme} small={isSmall(drawing.px)} choose={silent ? undefined : choose} chosen={chosen} />
      ))}
    </svg>
  );
});
DrawingView.displayName = 'DrawingView';
