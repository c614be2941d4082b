import { type KeyboardEvent, type PointerEvent, type ReactNode, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { type Drawing, FONT_FAMILY, type Theme } from '../../../src/drawing';
import { type Box, type Direction, neighbourOf, panned, reachables, revealing, zoomed } from './drawing-space';
import { SheetShapes } from './sheet-shapes';

export type SheetViewProps = {
  readonly drawing: Drawing;
  readonly theme?: Theme;
  /** Spoken name; the drawing's own title when left out. */
  readonly label?: string;
  readonly selected?: string | undefined;
  /** A station or mark was clicked, or reached by an arrow key. */
  readonly onSelect?: ((id: string) => void) | undefined;
  /** Enter, Space, or a click on what is already selected. */
  readonly onOpen?: ((id: string) => void) | undefined;
  /** Moves a thing by hand: units of the sheet since the drag began. `done` is true once, at its end. */
  readonly onDrag?: ((id: string, dx: number, dy: number, done: boolean) => void) | undefined;
  /** A key that the page wants before the drawing takes it (arrow keys that move a part). True when used up. */
  readonly onKey?: ((id: string, event: KeyboardEvent) => boolean) | undefined;
  /** Laid over the sheet, in its units, for the zoom it is looked at. */
  readonly over?: ((zoom: number) => ReactNode) | undefined;
  /** Zoom buttons, wheel, pinch and keys. Without it the drawing is a still picture whose stations can be reached. */
  readonly zoomable?: boolean;
  readonly className?: string;
  /** Draws the sheet anew for a zoom, so that marks and type keep their size on the screen and stand clear of each other. */
  readonly redraw?: ((zoom: number) => Drawing) | undefined;
  /** What stands below the drawing, beside its zoom buttons. */
  readonly foot?: ReactNode;
};

const DIRECTIONS: readonly string[] = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'];
const STEP = 1.5;
const PAN = 0.2;
/** A press that travels less than this is a click, not a drag. [CSS px] */
const SLOP = 5;
/** How far one notch of a wheel zooms. */
const WHEEL = 400;

type Press = { readonly id: string | undefined; readonly x: number; readonly y: number; readonly view: Box; moved: boolean; dx: number; dy: number };

/** Zooms at which the sheet is drawn anew. */
const LEVELS: readonly number[] = [1, 1.5, 2.25, 3.4, 5, 7.6, 11.4];
const levelOf = (zoom: number): number => LEVELS.findLast((l) => zoom >= l * 0.98) ?? 1;

/** Margins shrink with the type; the same station tells how far the new sheet lies beside the old one. */
const offsetOf = (from: Drawing, to: Drawing): readonly [number, number] => {
  if (from === to) return [0, 0];
  const there = new Map(reachables(to.primitives).map((r) => [r.id, r.box]));
  for (const { id, box } of reachables(from.primitives)) {
    const moved = id.startsWith('mark/') ? undefined : there.get(id);
    if (moved) return [moved.x + moved.w / 2 - box.x - box.w / 2, moved.y + moved.h / 2 - box.y - box.h / 2];
  }
  return [0, 0];
};

const reachOf = (target: EventTarget): string | undefined => (target as Element).closest('[data-reach]')?.getAttribute('data-reach') ?? undefined;

/**
 * A drawing to work on: the same primitives as on paper, with stations and marks that can be reached.
 * One tab stop; arrow keys go to the neighbour; + − 0 zoom; Shift and arrows move the sheet. The smaller view for the hand,
 * `shared/drawing-view.tsx`, has a tab stop for each part and thins its lines; shapes and inks are the same `ink-shape.tsx`.
 */
export const SheetView = ({ drawing, theme = 'desk', label, selected, onSelect, onOpen, onDrag, onKey, over, zoomable = false, className, redraw, foot }: SheetViewProps) => {
  const whole = useMemo<Box>(() => ({ x: 0, y: 0, w: drawing.width, h: drawing.height }), [drawing.width, drawing.height]);
  const [held, setHeld] = useState({ whole, view: whole });
  // A drawing of another size is looked at whole, at once: no picture is shown through the frame of the one before.
  const view = held.whole === whole ? held.view : whole;
  const setView = useCallback((to: Box | ((v: Box) => Box)) => setHeld((h) => ({ whole, view: typeof to === 'function' ? to(h.whole === whole ? h.view : whole) : to })), [whole]);
  const [focused, setFocused] = useState<string | undefined>();
  const svg = useRef<SVGSVGElement>(null);
  const press = useRef<Press | undefined>(undefined);
  const fingers = useRef(new Map<number, { x: number; y: number }>());
  const pinch = useRef<{ distance: number; view: Box } | undefined>(undefined);

  const level = levelOf(whole.w / view.w);
  const near = useMemo(() => (level > 1 && redraw ? redraw(level) : drawing), [level, redraw, drawing]);
  const [dx, dy] = useMemo(() => offsetOf(drawing, near), [drawing, near]);
  const all = useMemo(() => reachables(near.primitives).map((r) => ({ ...r, box: { ...r.box, x: r.box.x - dx, y: r.box.y - dy } })), [near, dx, dy]);
  const current = all.some((r) => r.id === focused) ? focused : all.some((r) => r.id === selected) ? selected : all[0]?.id;

  const toSheet = useCallback(
    (clientX: number, clientY: number): readonly [number, number] => {
      const box = svg.current?.getBoundingClientRect();
      if (!box || box.width === 0) return [0, 0];
      return [view.x + ((clientX - box.left) / box.width) * view.w, view.y + ((clientY - box.top) / box.height) * view.h];
    },
    [view],
  );

  // A wheel over the whole sheet scrolls the page; once the sheet is in hand (focused or zoomed) it zooms.
  useEffect(() => {
    const element = svg.current;
    if (!element || !zoomable) return;
    const wheel = (event: WheelEvent) => {
      const inHand = event.ctrlKey || event.metaKey || element.contains(document.activeElement) || view.w < whole.w * 0.999;
      if (!inHand) return;
      event.preventDefault();
      setView((v) => zoomed(v, whole, Math.exp(-event.deltaY / WHEEL), toSheet(event.clientX, event.clientY)));
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, [zoomable, whole, view.w, toSheet, setView]);

  const focusOn = (id: string) => {
    setFocused(id);
    const target = all.find((r) => r.id === id);
    if (target) setView((v) => revealing(v, whole, target.box));
    onSelect?.(id);
    requestAnimationFrame(() => svg.current?.querySelector<SVGGElement>(`[data-reach="${CSS.escape(id)}"]`)?.focus({ preventScroll: true }));
  };

  const arrow = (key: string, shift: boolean, id: string | undefined) => {
    if (shift && zoomable) {
      const dx = key === 'ArrowLeft' ? -PAN : key === 'ArrowRight' ? PAN : 0;
      const dy = key === 'ArrowUp' ? -PAN : key === 'ArrowDown' ? PAN : 0;
      setView((v) => panned(v, whole, dx, dy));
    } else if (id !== undefined) {
      const next = neighbourOf(all, id, key as Direction);
      if (next !== undefined) focusOn(next);
    }
  };

  const keys = (event: KeyboardEvent) => {
    const id = reachOf(event.target);
    if (id !== undefined && onKey?.(id, event)) {
      event.preventDefault();
      return;
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const { key } = event;
    const last = all[all.length - 1];
    if (DIRECTIONS.includes(key)) arrow(key, event.shiftKey, id);
    else if (zoomable && (key === '+' || key === '=')) setView((v) => zoomed(v, whole, STEP));
    else if (zoomable && (key === '-' || key === '−')) setView((v) => zoomed(v, whole, 1 / STEP));
    else if (zoomable && key === '0') setView(whole);
    else if (id !== undefined && (key === 'Enter' || key === ' ')) {
      onSelect?.(id);
      onOpen?.(id);
    } else if (id !== undefined && key === 'Home' && all[0]) focusOn(all[0].id);
    else if (id !== undefined && key === 'End' && last) focusOn(last.id);
    else return;
    event.preventDefault();
  };

  const down = (event: PointerEvent<SVGSVGElement>) => {
    fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (fingers.current.size === 2 && zoomable) {
      const [a, b] = [...fingers.current.values()];
      if (a && b) pinch.current = { distance: Math.hypot(a.x - b.x, a.y - b.y), view };
      press.current = undefined;
      return;
    }
    press.current = { id: reachOf(event.target), x: event.clientX, y: event.clientY, view, moved: false, dx: 0, dy: 0 };
  };

  const move = (event: PointerEvent<SVGSVGElement>) => {
    if (fingers.current.has(event.pointerId)) fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    const start = pinch.current;
    if (start && fingers.current.size >= 2) {
      const [a, b] = [...fingers.current.values()];
      if (a && b) setView(zoomed(start.view, whole, Math.hypot(a.x - b.x, a.y - b.y) / start.distance, toSheet((a.x + b.x) / 2, (a.y + b.y) / 2)));
      return;
    }
    const p = press.current;
    const box = svg.current?.getBoundingClientRect();
    if (!p || !box) return;
    if (!p.moved && Math.hypot(event.clientX - p.x, event.clientY - p.y) < SLOP) return;
    const carries = onDrag !== undefined && p.id !== undefined && p.id === selected;
    const pans = zoomable && p.view.w < whole.w * 0.999;
    if (!carries && !pans) return;
    if (!p.moved) svg.current?.setPointerCapture(event.pointerId);
    p.moved = true;
    p.dx = ((event.clientX - p.x) / box.width) * p.view.w;
    p.dy = ((event.clientY - p.y) / box.height) * p.view.h;
    if (carries && p.id !== undefined) onDrag(p.id, p.dx, p.dy, false);
    else setView(panned(p.view, whole, -p.dx / p.view.w, -p.dy / p.view.h));
  };

  const up = (event: PointerEvent<SVGSVGElement>) => {
    fingers.current.delete(event.pointerId);
    if (fingers.current.size < 2) pinch.current = undefined;
    const p = press.current;
    press.current = undefined;
    if (!p || p.id === undefined) return;
    if (p.moved) {
      if (onDrag && p.id === selected) onDrag(p.id, p.dx, p.dy, true);
      return;
    }
    setFocused(p.id);
    if (p.id === selected) onOpen?.(p.id);
    else onSelect?.(p.id);
  };

  const cancel = (event: PointerEvent<SVGSVGElement>) => {
    fingers.current.delete(event.pointerId);
    pinch.current = undefined;
    press.current = undefined;
  };

  const zoomedIn = view.w < whole.w * 0.999;
  const ring = all.find((r) => r.id === selected);

  return (
    <div className={`sheet-view${className ? ` ${className}` : ''}`} data-zoomed={zoomedIn ? 'yes' : 'no'} data-theme={theme}>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing has no element of its own that groups its parts */}
      <svg
        ref={svg}
        role="group"
        aria-label={label ?? drawing.title}
        viewBox={`${view.x} ${view.y} ${view.w} ${view.h}`}
        style={{ aspectRatio: `${whole.w} / ${whole.h}` }}
        fontFamily={FONT_FAMILY}
        onKeyDown={keys}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={cancel}
        onFocus={(event) => setFocused(reachOf(event.target))}
      >
        <g transform={`translate(${-dx} ${-dy})`}>
          <SheetShapes primitives={near.primitives} theme={theme} current={current} selected={selected} />
        </g>
        {ring && <rect className="sheet-selected" x={ring.box.x} y={ring.box.y} width={ring.box.w} height={ring.box.h} />}
        {over?.(level)}
      </svg>
      {(zoomable || foot) && (
        <div className="sheet-foot">
          <div>{foot}</div>
          {zoomable && (
            // biome-ignore lint/a11y/useSemanticElements: a fieldset is for a form
            <div className="sheet-zoom" role="group" aria-label="Zoom of the drawing">
              <button type="button" aria-label="Zoom in" onClick={() => setView((v) => zoomed(v, whole, STEP))}>
                +
              </button>
              <button type="button" aria-label="Zoom out" disabled={!zoomedIn} onClick={() => setView((v) => zoomed(v, whole, 1 / STEP))}>
                −
              </button>
              <button type="button" aria-label="Whole sheet" disabled={!zoomedIn} onClick={() => setView(whole)}>
                0
              </button>
            </div>
          )}
        </div>
      )}
    </div>
  );
};
