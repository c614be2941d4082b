import type { Side, Station, StationId } from '../terms';
import { bodyWidth } from './loop';
import type { Rig, Slide } from './rig';
import { type Box, box, overlaps } from './shapes';
import { awningPitchLimit, FULLY_OPEN_DEG, sideLeafLimit, topLeafLimit } from './swing';
import { walkingOrder } from './walking-order';

/** How a thing stands: an angle in degrees for what swings, the pitch for an awning; `open` for a cord or hose: plugged in. */
export type Stand = 'shut' | 'open' | number | 'not-known';

/** What must be closed, taken in or looked at before a slide-out moves. */
export type SlideConflict = {
  readonly station: StationId;
  readonly side: Side;
  /** `crush`: the slide meets it. `ask`: it depends on what is there now. */
  readonly class: 'crush' | 'ask';
  /** One sentence: what is in the way and what to do. */
  readonly reason: string;
  /** Largest angle or pitch that would still be safe. [°] */
  readonly most_deg?: number;
  readonly crushed_before: boolean;
};

/** Margins and typical sizes of our own, no source. [m] */
const FLANGE_M = 0.03;
const MARGIN_M = 0.03;
const MARGIN_OUT_M = 0.05;
const ARMS_BELOW_M = 0.1;
const TOPPER_M = 0.12;
const PLUG_M = 0.08;
const SAG_M = 0.05;

/** What the slide sweeps while it moves, on its wall, and how far out. [m] */
type Swept = Box & { readonly out: number };

const sweptBy = (s: Slide): Swept => ({
  x0: s.x_m - FLANGE_M - MARGIN_M,
  x1: s.x_m + s.w_m + FLANGE_M + MARGIN_M,
  y0: s.y_m - ARMS_BELOW_M - MARGIN_M,
  y1: s.y_m + s.h_m + TOPPER_M + MARGIN_M,
  out: s.travel_m + MARGIN_OUT_M,
});

type Hit = Pick<SlideConflict, 'class' | 'reason'> & { readonly most_deg?: number };

const angleOf = (stand: Stand): number => (stand === 'shut' ? 0 : typeof stand === 'number' ? stand : FULLY_OPEN_DEG);
const unknown = (stand: Stand): string => (stand === 'not-known' ? ' Whether it is shut is not known.' : '');
const whole = (deg: number): number => Math.floor(deg);

/** How far a hinged leaf on the slide's own wall may open. */
const leafLimit = (s: Station, slide: Swept): number => {
  const b = box(s.shape);
  const acrossX = Math.min(b.x1, slide.x1) > Math.max(b.x0, slide.x0);
  const acrossY = Math.min(b.y1, slide.y1) > Math.max(b.y0, slide.y0);
  if (acrossX && acrossY) return 0;
  const [w, h] = [b.x1 - b.x0, b.y1 - b.y0];
  if (s.hinge === 'top') return acrossX && b.y1 <= slide.y0 ? topLeafLimit(h, slide.y0 - b.y1) : FULLY_OPEN_DEG;
  if (s.hinge === 'bottom') return acrossX && b.y0 >= slide.y1 ? topLeafLimit(h, b.y0 - slide.y1) : FULLY_OPEN_DEG;
  if (!acrossY) return FULLY_OPEN_DEG;
  if (s.hinge === 'front') return slide.x1 <= b.x0 ? sideLeafLimit(w, b.x0 - slide.x1) : FULLY_OPEN_DEG;
  if (s.hinge === 'rear') return slide.x0 >= b.x1 ? sideLeafLimit(w, slide.x0 - b.x1) : FULLY_OPEN_DEG;
  return FULLY_OPEN_DEG;
};

const onOwnWall = (s: Station, slide: Swept, stand: Stand): Hit | undefined => {
  if (s.hinge === undefined || stand === 'shut') return undefined;
  const most = leafLimit(s, slide);
  const angle = angleOf(stand);
  if (angle <= most) return undefined;
  const open = typeof stand === 'number' ? `open at ${Math.round(stand)}°` : 'when open';
  return {
    class: 'crush',
    most_deg: most,
    reason: `${s.name}, ${open}, reaches into the path of the slide-out${most > 0 ? `: no more than ${whole(most)}° is safe` : ''}. Close it first.${unknown(stand)}`,
  };
};

/** An inlet with something plugged in, and what hangs from it to the ground. */
const plugged = (s: Station, slide: Swept, stand: Stand): Hit | undefined => {
  if (stand === 'shut') return undefined;
  const b = box(s.shape);
  const plug: Box = { x0: b.x0 - PLUG_M, x1: b.x1 + PLUG_M, y0: b.y0 - PLUG_M, y1: b.y1 + PLUG_M };
  if (overlaps(plug, slide, 0)) return { class: 'crush', reason: `A plug or hose in ${s.name} stands in the path of the slide-out. Unplug it first.${unknown(stand)}` };
  const across = Math.min(b.x1, slide.x1) > Math.max(b.x0, slide.x0);
  if (across && b.y0 > slide.y0) return { class: 'crush', reason: `What hangs from ${s.name} hangs in the path of the slide-out. Take it off first.${unknown(stand)}` };
  return across
    ? { class: 'ask', reason: `${s.name} is under the slide-out: is the cord or hose hanging straight down, clear of the floor of the box?${unknown(stand)}` }
    : undefined;
};

const underAwning = (s: Station, slide: Slide, stand: Stand): Hit | undefined => {
  const rail = box(s.shape);
  const swept = sweptBy(slide);
  if (stand === 'shut' || Math.min(rail.x1, swept.x1) <= Math.max(rail.x0, swept.x0)) return undefined;
  const most = awningPitchLimit({ rail_m: rail.y0, sag_m: SAG_M }, slide.y_m + slide.h_m + TOPPER_M, slide.travel_m);
  const pitch = typeof stand === 'number' ? stand : undefined;
  if (pitch !== undefined && pitch <= most) return undefined;
  return {
    class: 'crush',
    most_deg: most,
    reason: `The awning hangs over the slide-out${most > 0 ? `: at a pitch above ${whole(most)}° they meet` : ' and they meet at any pitch'}. Roll the awning in first.${unknown(stand)}`,
  };
};

/** Awning arms and their brackets stand on the wall whether the awning is in or out. */
const armInTheWay = (s: Station, slide: Swept): Hit | undefined =>
  overlaps(box(s.shape), slide, 0) ? { class: 'crush', reason: `${s.name} stands in the path of the slide-out. Do not move it until this has been looked at.` } : undefined;

const onEndWall = (s: Station, stand: Stand): Hit | undefined =>
  s.hinge !== undefined || s.looks.startsWith('window')
    ? stand === 'shut'
      ? undefined
      : {
          class: 'crush',
          most_deg: 0,
          reason: `${s.name} is on the end wall of the slide-out: open by any angle it meets the wall opening on the way in. Close it first.${unknown(stand)}`,
        }
    : undefined;

const INLET = /^(inlet-power|inlet-water|cord-hatch|drain-outlet)$/;
const AWNING_RAIL = /^(awning-rail|awning-box)$/;

/** A box in the rig's own axes: along it from the front, across it from the road side, up from the ground. [m] */
type Block = { readonly x: readonly [number, number]; readonly across: readonly [number, number]; readonly up: readonly [number, number] };

const meets = (a: Block, b: Block): boolean => (['x', 'across', 'up'] as const).every((k) => Math.min(a[k][1], b[k][1]) > Math.max(a[k][0], b[k][0]));

const blockOf = (slide: Slide, width: number): Block => {
  const s = sweptBy(slide);
  return { x: [s.x0, s.x1], across: slide.face === 'curb' ? [width, width + s.out] : [-s.out, 0], up: [s.y0, s.y1] };
};

/** Everything a leaf on another wall, or on another slide-out, can reach while it swings. */
const reachOfLeaf = (rig: Rig, s: Station, width: number): Block | undefined => {
  if (s.hinge === undefined && !s.looks.startsWith('window')) return undefined;
  const b = box(s.shape);
  const [w, h] = [b.x1 - b.x0, b.y1 - b.y0];
  const upright = s.hinge === 'top' || s.hinge === 'bottom' || s.hinge === undefined;
  const out = upright ? h : w;
  const up: readonly [number, number] = [s.hinge === 'bottom' ? b.y0 - h : b.y0, s.hinge === 'top' ? b.y1 + h : b.y1];
  const wide: readonly [number, number] = upright ? [b.x0, b.x1] : s.hinge === 'front' || s.hinge === 'left' ? [b.x0 - w, b.x1] : [b.x0, b.x1 + w];
  const length = Math.max(...(rig.faces.find((f) => f.id === 'road')?.outline_m ?? []).map((p) => p[0]));
  const [id = '', wall] = s.face.split('-');
  const slide = rig.slides.find((x) => x.id === id);
  if (slide && wall !== undefined && wall !== 'top') {
    const sign = (from: number, to: number): readonly [number, number] => (slide.face === 'curb' ? [width + from, width + to] : [-to, -from]);
    if (wall === 'outer') return { x: wide, across: sign(slide.travel_m, slide.travel_m + out), up };
    const x: readonly [number, number] = wall === 'front' ? [slide.x_m - out, slide.x_m] : [slide.x_m + slide.w_m, slide.x_m + slide.w_m + out];
    return { x, across: sign(b.x0, b.x1), up };
  }
  if (s.face === 'curb') return { x: wide, across: [width, width + out], up };
  if (s.face === 'road') return { x: wide, across: [-out, 0], up };
  if (s.face === 'rear') return { x: [length, length + out], across: wide, up };
  // A raked nose: as far back as the roof begins.
  if (s.face === 'front') return { x: [-out, Math.min(...(rig.faces.find((f) => f.id === 'roof')?.outline_m ?? []).map((p) => p[0]))], across: wide, up };
  return undefined;
};

const fromElsewhere = (rig: Rig, s: Station, slide: Slide, stand: Stand, width: number): Hit | undefined => {
  if (stand === 'shut') return undefined;
  const leaf = reachOfLeaf(rig, s, width);
  return leaf && meets(leaf, blockOf(slide, width))
    ? { class: 'crush', reason: `${s.name}, when open, can reach into the path of this slide-out. Close it first.${unknown(stand)}` }
    : undefined;
};

/** A waste hose or drain below the box. */
const below = (s: Station, slide: Slide, stand: Stand, width: number): Hit | undefined => {
  const b = box(s.shape);
  const swept = sweptBy(slide);
  const near = slide.face === 'road' ? b.y0 < width / 3 : b.y1 > (2 * width) / 3;
  if (stand === 'shut' || !near || Math.min(b.x1, swept.x1) <= Math.max(b.x0, swept.x0)) return undefined;
  return { class: 'ask', reason: `${s.name} is below the slide-out: does a hose lie clear of the floor of the box?${unknown(stand)}` };
};

const hitOf = (rig: Rig, slide: Slide, moving: 'out' | 'in', s: Station, stand: Stand, width: number): Hit | undefined => {
  const swept = sweptBy(slide);
  const own = s.face.startsWith(`${slide.id}-`);
  if (own && /-(front|rear)$/.test(s.face)) return moving === 'in' ? onEndWall(s, stand) : undefined;
  // What is on its outer wall travels with it; seals and edges are its own.
  if (own || s.slide === slide.id) return undefined;
  if (s.face === slide.face) {
    if (AWNING_RAIL.test(s.part)) return underAwning(s, slide, stand);
    if (s.part === 'awning-arm') return moving === 'out' ? armInTheWay(s, swept) : undefined;
    if (INLET.test(s.looks)) return plugged(s, swept, stand);
    return onOwnWall(s, swept, stand);
  }
  if (s.face === 'under') return INLET.test(s.looks) ? below(s, slide, stand, width) : undefined;
  return fromElsewhere(rig, s, slide, stand, width);
};

/**
 * What must be closed before a slide-out moves, in walking order, what was crushed before first.
 *
 * @param moving         out or in: the two lists differ
 * @param open           how a station stands now; what is not known counts as open to its full angle
 * @param crushedBefore  stations that a slide-out has crushed before
 * @returns              each with its side and one sentence; empty when nothing is in the way that the drawing knows of
 * @assumes              swept box with margins of our own: 30 mm along the wall, 50 mm outward, 100 mm below for arms, 120 mm above
 *                       for a topper; sizes are typical until measured. Things brought along (chairs, bins, ladders) are not on the drawing
 * @source               ours, closed forms in swing.ts; that open doors are crushed and must be shut is told in trade articles
 */
export const slideConflicts = (
  rig: Rig,
  slideId: string,
  moving: 'out' | 'in',
  open: (station: Station) => Stand,
  crushedBefore: readonly StationId[] = [],
): readonly SlideConflict[] => {
  const slide = rig.slides.find((s) => s.id === slideId);
  if (!slide) return [];
  const width = bodyWidth(rig);
  const order = new Map(walkingOrder(rig, { form: 'full', inside: [] }).map((s, i) => [s.station, i]));
  const was = new Set(crushedBefore);
  return rig.stations
    .filter((s) => !s.retired)
    .flatMap((s): readonly SlideConflict[] => {
      const hit = hitOf(rig, slide, moving, s, open(s), width);
      return hit ? [{ station: s.id, side: 'outside', ...hit, crushed_before: was.has(s.id) }] : [];
    })
    .toSorted((a, b) => Number(b.crushed_before) - Number(a.crushed_before) || (order.get(a.station) ?? 0) - (order.get(b.station) ?? 0));
};
