import { accept, quantities, type Refusal, type Result, refuse } from '../units';
import { type BaseLayout, baseLayout } from './base-layout';
import kindsTable from './kinds.json';
import type { Answers, RigKindId } from './rig';

/** What a kind can be: least and most of each answer. Sources stand in kinds.source.md. */
export type KindLimits = {
  /** In a sentence: `travel trailer`. */
  readonly word: string;
  /** Overall, hitch included. [m] */
  readonly length_m: readonly [number, number];
  readonly width_m: readonly [number, number];
  /** Overall, air conditioner included; a truck camper on its truck. [m] */
  readonly height_m: readonly [number, number];
  readonly axles: readonly [number, number];
  /** Most slide-outs that the drawing can carry on the road side and on the curb side. */
  readonly slides: readonly [number, number];
};

export const kindLimits = (kind: RigKindId): KindLimits => (kindsTable as unknown as Record<RigKindId, KindLimits>)[kind];

/** Sizes a drawing is made for. [m] */
export type Sizes = {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly axles: number;
  readonly slides: readonly [road: number, curb: number];
  /** The person said how many: then one that does not fit is refused; otherwise as many are drawn as fit. */
  readonly slides_said: readonly [road: boolean, curb: boolean];
};

type SizeField = 'length_m' | 'width_m' | 'height_m';

const SIZE_WORD: Readonly<Record<SizeField, string>> = { length_m: 'long', width_m: 'wide', height_m: 'high' };
const SLACK = 1e-6;
const fits = (m: number, [least, most]: readonly [number, number]): boolean => m >= least - SLACK && m <= most + SLACK;
const two = (n: number): string => String(Math.round(n * 100) / 100);

/**
 * A unit mistake: the same figures in another unit would be a size of this kind. It is asked about, never corrected.
 * The figure may have been typed as metres, or a person's figure in metres may have been read as feet.
 */
const meant = (m: number, range: readonly [number, number]): string | undefined => {
  for (const unit of quantities.length.units) if (unit.id !== 'm' && fits(m * unit.scale, range)) return `${two(m)} ${unit.symbol} (${two(m * unit.scale)} m)`;
  const foot = quantities.length.units.find((u) => u.id === 'ft');
  return foot && fits(m / foot.scale, range) ? `${two(m / foot.scale)} m` : undefined;
};

const beyond = (field: SizeField, m: number, limits: KindLimits): Refusal => {
  const range = limits[field];
  const expected = `${two(range[0])} to ${two(range[1])} m`;
  const other = meant(m, range);
  const received = Number.isFinite(m) ? `${two(m)} m` : 'no number';
  return {
    code: other ? 'unit-in-doubt' : Number.isFinite(m) && m > range[1] ? 'above-limit' : 'below-limit',
    path: field,
    expected,
    received,
    sentence: `A ${limits.word} is drawn ${expected} ${SIZE_WORD[field]}; ${received} was given. ${other ? `Was ${other} meant?` : 'Check the figure and the unit.'}`,
  };
};

const count = (path: string, n: number, [least, most]: readonly [number, number], sentence: string): readonly Refusal[] =>
  Number.isInteger(n) && n >= least && n <= most
    ? []
    : [{ code: 'count-outside', path, expected: least === most ? String(least) : `${least} to ${most}`, received: String(n), sentence }];

const slideSentence = (word: string, side: string, most: number): string =>
  most === 0
    ? `Slide-outs are not drawn on the ${side} side of a ${word}. Leave it at none and add what yours has as openings and seams.`
    : `The drawing of a ${word} carries up to ${most} slide-out${most === 1 ? '' : 's'} on the ${side} side. Add more as openings and seams.`;

const baseSlides = (base: BaseLayout, face: string): number => base.slides.filter((s) => s.face === face).length;

/** A group of trailer axles is never longer than this share of the body; ours. [1] */
const GROUP_SHARE = 0.35;
/** Spacing of trailer axles where the layout has only one. [m] */
const SPACING_M = 0.86;

const groupFits = (base: BaseLayout, axles: number, body: number): boolean => {
  const [first, second] = base.axles.filter((a) => !a.host);
  if (first?.kind !== 'trailer' || axles < 2) return true;
  return (axles - 1) * (second ? second.x - first.x : SPACING_M) + first.diameter <= GROUP_SHARE * body;
};

/**
 * The sizes asked for, with the layout's own where nothing was said.
 *
 * @returns  the sizes, or every refusal at once, each naming its field, what was expected and what came
 * @valid    the ranges of kinds.json; sizes beyond them are refused, not clamped
 */
export const sizesFrom = (answers: Answers): Result<Sizes> => {
  const base = baseLayout(answers.kind);
  const limits = kindLimits(answers.kind);
  const refusals: Refusal[] = [];
  const size = (field: SizeField, otherwise: number): number => {
    const m = answers[field] ?? otherwise;
    if (!fits(m, limits[field])) refusals.push(beyond(field, m, limits));
    return m;
  };
  const length = size('length_m', base.overall.length);
  const width = size('width_m', base.overall.width);
  const height = size('height_m', base.overall.height);
  const own = base.axles.filter((a) => !a.host);
  const body = length - base.overall.hitch;
  const axles = answers.axles ?? Math.max(Math.min(own.length, limits.axles[0]), ...own.map((_, i) => i + 1).filter((n) => groupFits(base, n, body)));
  const [fewest, most] = limits.axles;
  refusals.push(
    ...count(
      'axles',
      axles,
      limits.axles,
      most === 0
        ? `A ${limits.word} has no axles of its own: leave it at 0. Its truck is drawn in grey.`
        : `A ${limits.word} is drawn with ${fewest === most ? `${most} axle${most === 1 ? '' : 's'}` : `${fewest} to ${most} axles`}.`,
    ),
  );
  if (axles >= limits.axles[0] && axles <= most && !groupFits(base, axles, body))
    refusals.push({
      code: 'no-room',
      path: 'axles',
      expected: `a group of axles no longer than ${Math.round(GROUP_SHARE * 100)} % of the body`,
      received: String(axles),
      sentence: `${axles} axles do not fit under a ${limits.word} of ${two(length)} m: give fewer axles or check the length.`,
    });
  const road = answers.slides_road ?? baseSlides(base, 'road');
  const curb = answers.slides_curb ?? baseSlides(base, 'curb');
  refusals.push(...count('slides_road', road, [0, limits.slides[0]], slideSentence(limits.word, 'road', limits.slides[0])));
  refusals.push(...count('slides_curb', curb, [0, limits.slides[1]], slideSentence(limits.word, 'curb', limits.slides[1])));
  return refusals.length > 0
    ? refuse(...refusals)
    : accept({ length, width, height, axles, slides: [road, curb], slides_said: [answers.slides_road !== undefined, answers.slides_curb !== undefined] });
};
