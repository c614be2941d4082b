import type { Primitive } from '../../../src/drawing';

/** The part of a sheet that is being looked at, in metres of the sheet. */
export type Box = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };

/** A station or a mark that the keyboard can reach. */
export type Reachable = { readonly id: string; readonly label: string; readonly box: Box };

const MOST_ZOOM = 12;

/** Every station and mark of a sheet, in drawing order. A group within a group is part of the outer one: nothing nests that can be pressed. */
export const reachables = (primitives: readonly Primitive[]): readonly Reachable[] =>
  primitives.flatMap((p) => {
    if (p.form !== 'group') return [];
    if (p.role === 'plain' || p.hit === undefined) return reachables(p.children);
    const [x, y, w, h] = p.hit;
    return [{ id: p.id, label: p.label, box: { x, y, w, h } }];
  });

export type Direction = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown';

const AHEAD: Readonly<Record<Direction, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

const centre = (b: Box): readonly [number, number] => [b.x + b.w / 2, b.y + b.h / 2];

/**
 * The next thing in a direction: nearest along it, with what lies off to the side counted double.
 * Undefined at the edge of the sheet.
 */
export const neighbourOf = (all: readonly Reachable[], from: string, direction: Direction): string | undefined => {
  const start = all.find((r) => r.id === from);
  if (!start) return all[0]?.id;
  const [x0, y0] = centre(start.box);
  const [ax, ay] = AHEAD[direction];
  let best: { id: string; cost: number } | undefined;
  for (const r of all) {
    if (r.id === from) continue;
    const [x, y] = centre(r.box);
    const along = (x - x0) * ax + (y - y0) * ay;
    const aside = Math.abs((x - x0) * ay) + Math.abs((y - y0) * ax);
    if (along <= 1e-6) continue;
    const cost = along + 2 * aside;
    if (!best || cost < best.cost) best = { id: r.id, cost };
  }
  return best?.id;
};

/** Keeps a view inside the sheet and its zoom between the whole sheet and twelve times that. */
export const clampView = (view: Box, whole: Box): Box => {
  const w = Math.min(whole.w, Math.max(whole.w / MOST_ZOOM, view.w));
  const h = (w * whole.h) / whole.w;
  return { w, h, x: Math.min(Math.max(view.x, whole.x), whole.x + whole.w - w), y: Math.min(Math.max(view.y, whole.y), whole.y + whole.h - h) };
};

/** Zooms about a point of the sheet that stays where it is on the screen. */
export const zoomed = (view: Box, whole: Box, factor: number, at: readonly [number, number] = centre(view)): Box => {
  const w = Math.min(whole.w, Math.max(whole.w / MOST_ZOOM, view.w / factor));
  const k = w / view.w;
  return clampView({ w, h: view.h * k, x: at[0] - (at[0] - view.x) * k, y: at[1] - (at[1] - view.y) * k }, whole);
};

/** Moves the view by shares of its own width and height. */
export const panned = (view: Box, whole: Box, dx: number, dy: number): Box => clampView({ ...view, x: view.x + dx * view.w, y: view.y + dy * view.h }, whole);

/** Brings a thing into the view when it lies outside. */
export const revealing = (view: Box, whole: Box, target: Box): Box => {
  const [x, y] = centre(target);
  if (x >= view.x && x <= view.x + view.w && y >= view.y && y <= view.y + view.h) return view;
  return clampView({ ...view, x: x - view.w / 2, y: y - view.h / 2 }, whole);
};
