import { accept, figure, type Refusal, type Result, refuse } from '../../units';

/** A point of a flat face. [m] */
export type PlanePoint = readonly [x_m: number, y_m: number];

/** Smaller than this is a pencil's line, not a patch; ours. [m²] */
const NOTHING_M2 = 1e-6;

const odd = (code: string, expected: string, received: string, sentence: string, path = 'x'): Refusal => ({ code, path, expected, received, sentence });

const turn = (a: PlanePoint, b: PlanePoint, c: PlanePoint): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Two stretches that cross between their ends. */
const cross = (a: PlanePoint, b: PlanePoint, c: PlanePoint, d: PlanePoint): boolean => turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

const crossesItself = (points: readonly PlanePoint[]): boolean => {
  const n = points.length;
  const at = (i: number): PlanePoint => points[i % n] as PlanePoint;
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      if (cross(at(i), at(i + 1), at(j), at(j + 1))) return true;
    }
  return false;
};

/**
 * Area inside an outline, by the surveyor's (shoelace) formula.
 *
 * @param outline  corners in their order, either way round; the last is joined to the first. [m]
 * @returns        area. [m²]
 * @valid          three corners or more that enclose something and do not cross themselves; else a refusal
 * @agrees         exactly with worked examples, see cases/geometry.jsonl
 * @assumes        a flat face: over a curve the true area is larger
 * @source         the shoelace formula, as stated in the Rosetta Code task of that name
 */
export const outlineArea = (outline: readonly PlanePoint[]): Result<number> => {
  const bad = outline.findIndex((p) => !Number.isFinite(p[0]) || !Number.isFinite(p[1]));
  if (bad >= 0) return refuse(odd('not-a-number', 'numbers', `corner ${bad + 1}`, `Corner ${bad + 1} is not a number.`));
  if (outline.length < 3) return refuse(odd('too-few-corners', 'three corners or more', String(outline.length), 'An outline needs three corners or more; fewer enclose nothing.'));
  if (crossesItself(outline))
    return refuse(
      odd(
        'crosses-itself',
        'an outline that does not cross itself',
        'one that does',
        'The outline crosses itself: give the corners in the order in which they are met on the way round.',
      ),
    );
  const twice = outline.reduce((sum, [x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length] as PlanePoint;
    return sum + x * v - u * y;
  }, 0);
  const area = Math.abs(twice) / 2;
  if (area < NOTHING_M2)
    return refuse(odd('encloses-nothing', 'corners that enclose something', `${figure(area, 6)} m²`, 'The corners lie on one line or on one spot: they enclose nothing.'));
  return accept(area);
};

/** Longest straight line between two corners: the widest extent, as a person measures it. [m] */
export const longestExtent = (outline: readonly PlanePoint[]): number =>
  outline.reduce((most, [x, y], i) => outline.slice(i + 1).reduce((m, [u, v]) => Math.max(m, Math.hypot(u - x, v - y)), most), 0);

/**
 * The tightest outline without dents round a set of points: what a rubber band round them would show.
 *
 * @returns  its corners, counter-clockwise from the one with the least x; fewer than three where the points are one or lie on a line
 * @agrees   exactly with the example of the Rosetta Code task “Convex hull”
 * @source   monotone chain (Andrew 1979), from memory, unconfirmed; held against the example
 */
export const convexHull = (points: readonly PlanePoint[]): readonly PlanePoint[] => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]).filter((p, i, all) => i === 0 || p[0] !== all[i - 1]?.[0] || p[1] !== all[i - 1]?.[1]);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly PlanePoint[]): PlanePoint[] => {
    const chain: PlanePoint[] = [];
    for (const p of list) {
      while (chain.length >= 2 && turn(chain.at(-2) as PlanePoint, chain.at(-1) as PlanePoint, p) <= 0) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
};

/** Outlines taken at temperatures farther apart than this are not compared: heat alone raises a bubble; ours. [K] */
export const LIKE_TEMPERATURE_K = 10;

/**
 * How many times as large an outline has become.
 *
 * @param earlier, later      areas. [m²]
 * @param apart               difference of the skin's temperatures. [K]
 * @returns                   ratio of the later to the earlier. [1]
 * @valid                     temperatures no more than 10 K apart; outside: a refusal `unlike-temperature`
 * @source                    outline again at similar temperature, growth matters more than area: repair-shop pages, read; 10 K is ours
 */
export const outlineGrowth = (earlier: number, later: number, apart: number): Result<number> => {
  if (!(earlier > 0) || !(later > 0))
    return refuse(odd('encloses-nothing', 'two areas above nothing', `${earlier} and ${later} m²`, 'Growth needs two areas above nothing.', 'later_area'));
  if (!(Math.abs(apart) <= LIKE_TEMPERATURE_K + 1e-9))
    return refuse(
      odd(
        'unlike-temperature',
        `outlines taken within ${LIKE_TEMPERATURE_K} K of each other`,
        `${figure(Math.abs(apart), 0)} K apart`,
        `The skin was ${figure(Math.abs(apart), 0)} K (${figure(Math.abs(apart) * 1.8, 0)} °F) warmer one time than the other. Heat alone raises a bubble, so the two are not compared: outline it again at a temperature like one of them.`,
        'later_skin',
      ),
    );
  return accept(later / earlier);
};
