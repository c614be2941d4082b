import type { Sample, Variogram } from '../science';
import type { Input, Step } from '../terms';
import { accept, figure, type Refusal, type Result, refuse } from '../units';
import { step } from './working';

/** A wall is some metres long; farther apart nothing is lost but meaning. */
const place = { least: -1000, most: 1000 };
/** Readings in moisture points, or differences from a dry place; any scale will do, because only differences count. */
const value = { least: -10, most: 10 };
const MOST_READINGS = 200;

/** Where readings were taken and what they were. Limits are this project's own. */
export const readingsInputs = {
  x_m: { type: 'numbers', quantity: 'length', unit: 'm', meaning: 'first coordinate of each reading on the face', limits: place, least: 1, most: MOST_READINGS },
  y_m: { type: 'numbers', quantity: 'length', unit: 'm', meaning: 'second coordinate of each, in the same order', limits: place, least: 1, most: MOST_READINGS },
  values_percent: {
    type: 'numbers',
    quantity: 'moisture-content',
    unit: 'percent',
    meaning: 'the readings, or how much each lies above the dry place, in the same order',
    limits: value,
    least: 1,
    most: MOST_READINGS,
  },
} as const satisfies Record<string, Input>;

export const targetInputs = {
  at_x_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'first coordinate of the place asked about', limits: place },
  at_y_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'its second coordinate', limits: place },
} as const satisfies Record<string, Input>;

/** How alike readings are by their distance: given, not fitted. */
export const likenessInputs = {
  model: { type: 'word', meaning: 'how likeness falls with distance', words: ['spherical', 'exponential', 'gaussian'], otherwise: 'spherical' },
  repeatability_percent: {
    type: 'number',
    quantity: 'moisture-content',
    unit: 'percent',
    meaning: 'spread of readings repeated at one place: the root of the nugget',
    limits: { least: 0, most: 10 },
    otherwise: 0.5,
  },
  spread_percent: {
    type: 'number',
    quantity: 'moisture-content',
    unit: 'percent',
    meaning: 'spread of readings far apart, repeatability taken away: the root of the partial sill',
    limits: { least: 0.0001, most: 10 },
  },
  range_m: {
    type: 'number',
    quantity: 'length',
    unit: 'm',
    meaning: 'range along the longer direction: readings farther apart tell nothing of each other (spherical), or the length in the formula',
    limits: { least: 0.01, most: 1000 },
    otherwise: 1.22,
  },
  ratio_number: {
    type: 'number',
    quantity: 'number',
    unit: 'number',
    meaning: 'how many times farther readings stay alike along that direction than across it',
    limits: { least: 0.1, most: 10 },
    otherwise: 2,
  },
  direction_deg: {
    type: 'number',
    quantity: 'angle',
    unit: 'deg',
    meaning: 'that direction, from the first axis towards the second: 90° is up and down a wall',
    limits: { least: -Math.PI, most: Math.PI },
    otherwise: 90,
  },
} as const satisfies Record<string, Input>;

type Readings = { readonly x_m: readonly number[]; readonly y_m: readonly number[]; readonly values_percent: readonly number[] };

/** Lists that belong together, reading by reading; refused where one is longer than another. */
export const samplesFrom = ({ x_m, y_m, values_percent }: Readings): Result<readonly Sample[]> => {
  const odd = (
    [
      ['x', x_m],
      ['y', y_m],
    ] as const
  ).filter(([, list]) => list.length !== values_percent.length);
  if (odd.length > 0)
    return refuse(
      ...odd.map(
        ([path, list]): Refusal => ({
          code: 'lengths-differ',
          path,
          expected: `${values_percent.length} figures, one for each reading`,
          received: String(list.length),
          sentence: `There are ${values_percent.length} readings, but ${list.length} places along ${path}. Give one for each, in the same order.`,
        }),
      ),
    );
  return accept(values_percent.map((v, i) => ({ x: x_m[i] ?? Number.NaN, y: y_m[i] ?? Number.NaN, value: v })));
};

type Likeness = {
  readonly model: Variogram['model'];
  readonly repeatability_percent: number;
  readonly spread_percent: number;
  readonly range_m: number;
  readonly ratio_number: number;
  readonly direction_deg: number;
};

export const variogramFrom = (i: Likeness): Variogram => ({
  model: i.model,
  nugget: i.repeatability_percent ** 2,
  partial_sill: i.spread_percent ** 2,
  range: i.range_m,
  anisotropy: { ratio: i.ratio_number, direction_rad: i.direction_deg },
});

export const points = (si: number, decimals: number): string => `${figure(si * 100, decimals)} %`;

const FORMULA: Readonly<Record<Variogram['model'], string>> = {
  spherical: 'γ(h) = c₀ + c (1.5 h/a − 0.5 (h/a)³) up to a, then c₀ + c',
  exponential: 'γ(h) = c₀ + c (1 − exp(−h/a))',
  gaussian: 'γ(h) = c₀ + c (1 − exp(−(h/a)²))',
};

export const likenessStep = (i: Likeness): Step =>
  step(
    'Half the mean square difference of two readings',
    FORMULA[i.model],
    `c₀ = ${points(i.repeatability_percent, 2)} squared, c = ${points(i.spread_percent, 2)} squared, a = ${figure(i.range_m, 2)} m along ${figure((i.direction_deg * 180) / Math.PI, 0)}°, ${figure(i.ratio_number, 1)} times shorter across`,
    i.model,
  );

/** What a person must know of a list with repeats. */
export const repeatRemarks = (repeats: number): readonly string[] =>
  repeats === 0 ? [] : [`${repeats === 1 ? 'One reading repeats a place' : `${repeats} readings repeat places`} that had been read: the mean of a place counts, once.`];

export const MAP_LIMITS = [
  'The likeness between readings is given, not found: 100 readings or more would be needed to find it, a wall has 12 to 40.',
  'Nothing is known across a stud, a wheel arch, metal, foil or a joint between panels: reckon each bay by itself.',
  'The standard error comes from where readings stand, not from what they read.',
] as const;
