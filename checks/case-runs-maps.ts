import { type CaseRun, through, type Values } from './case-through';

/** Maps of readings: cases speak of nugget and sill, worksheets of their roots; all in points of moisture or whatever the case reads. */
type Figures = readonly number[];

const figures = (i: Values, ...names: readonly string[]): Figures => (names.map((name) => i[name]).find((v) => v !== undefined) ?? []) as Figures;
const first = (i: Values, ...names: readonly string[]): number => Number(names.map((name) => i[name]).find((v) => v !== undefined));

/** Kriging does not care where the axes begin: coordinates of a survey are counted from its first point, so that they fit on a wall of any size. */
const axis = (i: Values, letter: 'x' | 'y'): { readonly data: Figures; readonly target: number; readonly unit: string } => {
  const data = figures(i, `data_${letter}_in`, `data_${letter}_m`, `data_${letter}`);
  const from = data[0] ?? 0;
  return { data: data.map((v) => v - from), target: first(i, `target_${letter}_in`, `target_${letter}_m`, `target_${letter}`) - from, unit: `data_${letter}_in` in i ? 'in' : 'm' };
};

const readings = (i: Values): Values => {
  const [x, y] = [axis(i, 'x'), axis(i, 'y')];
  const values = figures(i, 'data_mc_pct', 'data_v', 'data_zinc_ppm');
  return {
    [`x_${x.unit}`]: x.data,
    [`y_${y.unit}`]: y.data,
    // A case of weights alone reads nothing.
    values_percent: values.length === 0 ? x.data.map(() => 0) : i.transform === 'natural log' ? values.map(Math.log) : values,
  };
};
const target = (i: Values): Values => {
  const [x, y] = [axis(i, 'x'), axis(i, 'y')];
  return { [`at_x_${x.unit}`]: x.target, [`at_y_${y.unit}`]: y.target };
};

const likeness = (i: Values): Values => {
  const v = i.variogram as Values;
  const along = v.range_major_in !== undefined;
  const inches = along || 'range_in' in v || 'range_parameter_in' in v;
  return {
    model: v.model,
    repeatability_percent: Math.sqrt(Number(v.nugget)),
    spread_percent: Math.sqrt(Number(v.partial_sill)),
    [`range_${inches ? 'in' : 'm'}`]: first(v, 'range_major_in', 'range_in', 'range_parameter_in', 'range', 'range_parameter'),
    ratio_number: along ? Number(v.range_major_in) / Number(v.range_minor_in) : 1,
    direction_deg: 90,
  };
};

const krigingAt: CaseRun = (i) => {
  const a = through('kriging-estimate', { ...readings(i), ...target(i), ...likeness(i) });
  const estimate = a.figure('estimate_percent', 'percent');
  return {
    estimate,
    estimate_mc_pct: estimate,
    estimate_ln_ppm: estimate,
    kriging_variance: a.figure('standard_error_percent', 'percent') ** 2,
    weights: a.figures('weights_number', 'number'),
    lagrange_magnitude: a.figure('lagrange_number', 'number'),
  };
};

const inverseDistance: CaseRun = (i) => {
  const estimate = through('inverse-distance', { ...readings(i), ...target(i), power_number: i.power }).figure('estimate_percent', 'percent');
  return { estimate, estimate_mc_pct: estimate };
};

/** The case names the place of its largest residual. */
const leaveOneOut: CaseRun = (i) => {
  const a = through('map-check', { ...readings(i), ...likeness(i) });
  const inches = (key: string): number => Math.round(a.figure(key, 'in'));
  return {
    rmse_mc_pct: a.figure('error_percent', 'percent'),
    mean_error_mc_pct: a.figure('mean_error_percent', 'percent'),
    mean_squared_z: a.figure('mean_squared_z_number', 'number'),
    [`residual_at_${inches('largest_x_m')}_${inches('largest_y_m')}`]: a.figure('largest_percent', 'percent'),
  };
};

/** Half the square of the usual difference is the semivariance. */
const semivariance: CaseRun = (i) => {
  const of = (model: string, range_in: unknown): number =>
    through('typical-difference', {
      distance_in: i.lag_in,
      model,
      repeatability_percent: Math.sqrt(Number(i.nugget)),
      spread_percent: Math.sqrt(Number(i.partial_sill)),
      range_in,
    }).figure('difference_percent', 'percent') **
      2 /
    2;
  return {
    spherical: of('spherical', i.spherical_range_in),
    exponential: of('exponential', i.exponential_range_parameter_in),
    gaussian: of('gaussian', i.gaussian_range_parameter_in),
  };
};

const chance: CaseRun = (i) => ({
  probability: through('chance-above', {
    estimate_percent: i.kriging_estimate_mc_pct,
    standard_error_percent: Math.sqrt(Number(i.kriging_variance)),
    threshold_percent: i.threshold_mc_pct,
  }).figure('chance_percent', 'fraction'),
});

export const mapRuns: Readonly<Record<string, CaseRun>> = {
  'ordinary kriging estimate and variance': krigingAt,
  'ordinary kriging weights': krigingAt,
  'ordinary kriging with geometric anisotropy': krigingAt,
  'inverse distance weighted estimate': inverseDistance,
  'leave-one-out cross-validation of ordinary kriging': leaveOneOut,
  'variogram model value': semivariance,
  'probability that moisture exceeds a threshold at an unmeasured point (Gaussian)': chance,
};
