import { type Answers, kindLimits, type RigKindId, startingLayout } from '../../../../src/rig';

/**
 * The few questions that draw a rig, one to a screen. Every one may be left with "I do not know": then the typical
 * layout of the kind answers for it, and the drawing says so.
 */
export type SizeKey = 'length_m' | 'width_m' | 'height_m';
export const SIZES: readonly SizeKey[] = ['length_m', 'width_m', 'height_m'];

export type QuestionId = 'kind' | 'sizes' | 'year' | 'skin' | 'construction' | 'roof' | 'axles' | 'pressure' | 'slides_road' | 'slides_curb' | 'name';

export type Given = {
  readonly kind?: RigKindId;
  readonly year?: string;
  readonly skin?: Answers['skin'];
  readonly construction?: Answers['construction'];
  readonly roof?: Answers['roof'];
  readonly axles?: number;
  readonly slides_road?: number;
  readonly slides_curb?: number;
  readonly sizes: Readonly<Partial<Record<SizeKey, number>>>;
  /** Cold pressure on the label, as typed; the same for every axle until the person says otherwise. */
  readonly pressure?: { readonly text: string; readonly unit: string };
  readonly name: string;
};

export const NOTHING_GIVEN: Given = { sizes: {}, name: '' };

/** The questions that make sense for the kind: no axles are asked of a camper that rides on a truck, no slide-outs where none are drawn. */
export const questionsFor = ({ kind }: Given): readonly QuestionId[] => {
  const limits = kind === undefined ? undefined : kindLimits(kind);
  const asks = (q: QuestionId): boolean => {
    if (!limits) return true;
    if (q === 'axles') return limits.axles[1] > limits.axles[0];
    if (q === 'pressure') return limits.axles[1] > 0;
    if (q === 'slides_road') return limits.slides[0] > 0;
    if (q === 'slides_curb') return limits.slides[1] > 0;
    return true;
  };
  return (['kind', 'sizes', 'year', 'skin', 'construction', 'roof', 'axles', 'pressure', 'slides_road', 'slides_curb', 'name'] as const).filter(asks);
};

/** What is drawn when nothing more is said. */
export const answersOf = (given: Given, name: string): Answers => ({
  kind: given.kind ?? 'travel-trailer',
  name: given.name.trim() || name,
  skin: given.skin ?? 'unknown',
  construction: given.construction ?? 'unknown',
  roof: given.roof ?? 'unknown',
  ...(given.year !== undefined && /^\d{4}$/.test(given.year) ? { year: Number(given.year) } : {}),
  ...given.sizes,
  ...(given.axles === undefined ? {} : { axles: given.axles }),
  ...(given.slides_road === undefined ? {} : { slides_road: given.slides_road }),
  ...(given.slides_curb === undefined ? {} : { slides_curb: given.slides_curb }),
});

/** A change of kind keeps what is still possible and lets go of what is not. */
export const withKind = (given: Given, kind: RigKindId): Given => {
  if (given.kind === kind) return given;
  const { axles: _, slides_road: __, slides_curb: ___, ...rest } = given;
  return { ...rest, kind, sizes: {} };
};

/** The size as it is drawn now, asked for or typical. [m] */
export const sizeOf = (given: Given, key: SizeKey): number => given.sizes[key] ?? typicalSize(given.kind ?? 'travel-trailer', key);

const typical = new Map<RigKindId, Readonly<Record<SizeKey, number>>>();
const typicalSize = (kind: RigKindId, key: SizeKey): number => {
  const known = typical.get(kind);
  if (known) return known[key];
  const made = startingLayout({ kind, name: '', skin: 'unknown', construction: 'unknown', roof: 'unknown' });
  const overall = made.ok ? made.value.layout.overall : { length_m: 0, width_m: 0, height_m: 0 };
  typical.set(kind, overall);
  return overall[key];
};

/** One press of − or +: half a foot or a tenth of a metre along the length, an inch or two centimetres across. [m] */
export const stepOf = (key: SizeKey, metric: boolean): number => (key === 'length_m' ? (metric ? 0.1 : 0.1524) : metric ? 0.02 : 0.0254);

/** A stepped size stays within what can be drawn, and lands on whole steps. [m] */
export const stepped = (given: Given, key: SizeKey, by: 1 | -1, metric: boolean): number => {
  const step = stepOf(key, metric);
  const [least, most] = kindLimits(given.kind ?? 'travel-trailer')[key];
  const next = (Math.round(sizeOf(given, key) / step) + by) * step;
  return Math.min(most, Math.max(least, Math.round(next * 1e4) / 1e4));
};
