import type { Standing } from '../../logbook';
import { LIKE_TEMPERATURE_K, longestExtent, outlineArea, outlineGrowth } from '../../science';
import { type FacePoint, ours } from '../../terms';
import { figure, fromSi, showDay, showIn, type Typed } from '../../units';
import { DELAMINATION } from '../rules/sources';
import type { Growth, Outlined } from './loose-skin-types';

/** From here an outline has grown; the tenth of the trade tables' row for old bubbles, ours. [1] */
const GROWN = 1.1;
/** A pencil follows an edge that is felt or heard no better than this; ours. [m] */
const DRAWN_TO_M = 0.01;
const GROWTH = ours(
  `an outline has grown when it is a tenth larger and by more than a finger’s width along its edge; outlines taken more than ${LIKE_TEMPERATURE_K} K apart are not compared`,
);

const mm = (m: number): number => Math.round(m * 1000) / 1000;

/** No finer than a hand draws: small areas to ten square centimetres. */
export const areaWords = (m2: number): string => `${showIn(m2, 'area', 'ft2')} (${m2 < 0.1 ? `${Math.round(m2 * 1000) * 10} cm²` : `${figure(m2, 2)} m²`})`;

/** To the nearest inch, which is as near as an outline is drawn. */
export const lengthWords = (m: number): string => `${Math.round(fromSi(m, 'length', 'in'))} in (${figure(m, 2)} m)`;

type Body = { readonly skin_temperature?: Typed; readonly warmth?: string };

/** The outline of a look, measured; undefined where none was drawn, a sentence where what was drawn encloses nothing. */
export const outlinedIn = (look: Standing): Outlined | string | undefined => {
  if (look.place.at !== 'outline') return undefined;
  const outline_m = look.place.outline_m;
  const area = outlineArea(outline_m);
  if (!area.ok) return area.refusals[0]?.sentence ?? 'The outline encloses nothing.';
  const { skin_temperature, warmth } = look.body as Body;
  return {
    entry: look.entry.id,
    day: look.day,
    outline_m,
    area_m2: area.value,
    longest_m: longestExtent(outline_m),
    ...(skin_temperature === undefined ? {} : { skin_k: skin_temperature.si }),
    ...(warmth === undefined ? {} : { warmth }),
    worked: { worksheet: 'outline-area', inputs: { x_m: outline_m.map((p) => mm(p[0])), y_m: outline_m.map((p) => mm(p[1])) } },
  };
};

const around = (outline: readonly FacePoint[]): number =>
  outline.reduce((sum, [x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length] ?? [x, y];
    return sum + Math.hypot(u - x, v - y);
  }, 0);

/** Why two outlines are not compared: undefined where they may be. */
const unlike = (a: Outlined, b: Outlined): 'apart' | 'not-known' | undefined => {
  if (a.skin_k !== undefined && b.skin_k !== undefined) return Math.abs(a.skin_k - b.skin_k) > LIKE_TEMPERATURE_K ? 'apart' : undefined;
  if (a.warmth === 'cool' && b.warmth === 'cool') return undefined;
  const words = [a.warmth, b.warmth];
  return words.includes('hot') && words.includes('cool') ? 'apart' : 'not-known';
};

/**
 * Growth from the first outline that may be compared with the latest: the longest span tells most.
 *
 * @param all  outlines of one place, oldest first
 * @returns    undefined with fewer than two
 */
export const growthOf = (all: readonly Outlined[]): Growth | undefined => {
  const last = all.at(-1);
  const earlier = all.slice(0, -1);
  if (!last || earlier.length === 0) return undefined;
  const since = earlier.find((o) => unlike(o, last) === undefined);
  if (!since) {
    const apart = earlier.some((o) => unlike(o, last) === 'apart');
    return {
      known: false,
      because: {
        text: apart
          ? `The outline of ${showDay(last.day)} is not compared with earlier ones: the skin was warmer one time than the other, and heat alone raises a bubble. Outline it again at a temperature like before.`
          : `The outline of ${showDay(last.day)} is not compared with earlier ones: how warm the skin was is not recorded. Note its temperature, or that it was cool.`,
        entries: [...earlier, last].map((o) => o.entry),
        source: GROWTH,
      },
    };
  }
  const measured = since.skin_k !== undefined && last.skin_k !== undefined;
  const ratio = outlineGrowth(since.area_m2, last.area_m2, measured ? (last.skin_k ?? 0) - (since.skin_k ?? 0) : 0);
  if (!ratio.ok) return { known: false, because: { text: ratio.refusals[0]?.sentence ?? '', entries: [since.entry, last.entry], source: GROWTH } };
  const told = last.area_m2 - since.area_m2 > DRAWN_TO_M * around(since.outline_m);
  const growing = ratio.value >= GROWN && told;
  const verdict = growing ? 'it grows' : ratio.value >= GROWN ? 'no more than a hand-drawn outline can be off' : 'it does not grow';
  return {
    known: true,
    ratio: ratio.value,
    growing,
    since,
    because: {
      text: `${figure(ratio.value, 1)} times as large as on ${showDay(since.day)}, with the skin about as warm: ${verdict}.`,
      entries: [since.entry, last.entry],
      source: growing ? DELAMINATION : GROWTH,
      ...(measured
        ? {
            worksheet: {
              id: 'outline-growth',
              inputs: {
                earlier_area_m2: since.area_m2,
                later_area_m2: last.area_m2,
                earlier_skin_c: fromSi(since.skin_k ?? 0, 'temperature', 'c'),
                later_skin_c: fromSi(last.skin_k ?? 0, 'temperature', 'c'),
              },
            },
          }
        : {}),
    },
  };
};
