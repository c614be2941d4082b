import { type CaseRun, through, type Values } from './case-through';

/** Runs for what is read in a wall over time: trends, wood and air in balance, mould, drying. */
const n = (v: unknown): number => Number(v);

const series = (i: Values): Values => ({ times_d: i.time_day, readings_percent: i.moisture_pct });

const slope: CaseRun = (i) => {
  const a = through('trend-slope', series(i));
  return { slope_pct_per_day: a.figure('slope_percentday', 'percentday'), intercept_median_of_residuals_pct: a.figure('at_day_0_percent', 'percent') };
};

const interval: CaseRun = (i) => {
  const a = through('trend-interval', { ...series(i), confidence_percent: 100 * n(i.confidence) });
  return { slope_low: a.figure('slope_low_percentday', 'percentday'), slope_high: a.figure('slope_high_percentday', 'percentday') };
};

const trend: CaseRun = (i) => {
  const a = through('trend-test', { readings_number: i.moisture_pct });
  return {
    S: a.figure('s_number', 'number'),
    tau: a.figure('tau_number', 'number'),
    p_two_sided: a.figure('p_two_sided_fraction', 'fraction'),
    variance_S: a.figure('variance_number', 'number'),
    z: a.figure('z_number', 'number'),
  };
};

const tail: CaseRun = (i) => ({ p_upper: through('trend-chance', { readings_count: i.n, s_number: i.S }).figure('p_upper_fraction', 'fraction') });

const reference: CaseRun = (i) => {
  const a = through('dry-reference', { readings_number: i.dry_readings });
  return { median: a.figure('reference_number', 'number'), mad_scaled_1p4826: a.figure('scatter_number', 'number') };
};

const woodAir: CaseRun = (i) => ({
  relative_humidity_pct: through('wood-equilibrium-humidity', { temperature_f: i.temperature_F, moisture_content_percent: i.moisture_content_pct }).figure(
    'relative_humidity_percent',
    'percent',
  ),
});

const ovenDry: CaseRun = (i) => ({
  moisture_content_pct: through('oven-dry-moisture', { wet_mass_g: i.wet_mass_g, oven_dry_mass_g: i.oven_dry_mass_g }).figure('moisture_content_percent', 'percent'),
});

const fromDewPoint: CaseRun = (i) => ({
  relative_humidity_pct: through('humidity-from-dew-point', { dry_bulb_c: i.dry_bulb_C, dew_point_c: i.dew_point_C }).figure('relative_humidity_percent', 'percent'),
});

/** `very sensitive` of the cases is `very-sensitive` here. */
const surface = (i: Values): string => String(i.sensitivity_class ?? 'very sensitive').replaceAll(' ', '-');

const mouldLimits: CaseRun = (i) => {
  const a = through('mould-limits', { surface: surface(i), temperature_c: i.temperature_C, relative_humidity_percent: i.relative_humidity_pct ?? 95 });
  return {
    rh_crit_pct: a.figure('critical_humidity_percent', 'percent'),
    mould_index_max: a.figure('largest_index_number', 'number'),
    weeks_to_index_1: 1 / a.figure('way_in_a_week_percent', 'fraction'),
  };
};

const WEEK_H = 168;
const mould = (i: Values, spells: readonly (readonly [hours: number, humidity: unknown])[], repeats = 1): readonly [end: number, first: number] => {
  const a = through('mould-index', {
    surface: surface(i),
    hours_h: spells.map(([hours]) => hours),
    temperatures_c: spells.map(() => i.temperature_C),
    humidities_percent: spells.map(([, humidity]) => humidity),
    repeats_count: repeats,
    decline_number: i.decline_coefficient ?? 1,
    start_number: i.initial_index ?? 0,
  });
  return [a.figure('index_number', 'number'), a.figures('after_number', 'number')[0] ?? Number.NaN];
};

const constant: CaseRun = (i) => ({ mould_index: mould(i, [[n(i.weeks) * WEEK_H, i.relative_humidity_pct]])[0] });

const wetThenDry: CaseRun = (i) => {
  const [end, wet] = mould(i, [
    [n(i.wet_weeks) * WEEK_H, i.wet_rh_pct],
    [n(i.dry_weeks) * WEEK_H, i.dry_rh_pct],
  ]);
  return { mould_index_end_wet: wet, mould_index_end: end };
};

const daily: CaseRun = (i) => {
  const hours = n(i.hours_wet_then_dry_each_day);
  const [end] = mould(
    i,
    [
      [hours, i.wet_rh_pct],
      [24 - hours, i.dry_rh_pct],
    ],
    n(i.weeks) * 7,
  );
  return { mould_index: end };
};

/** A board of 2 mm, open on both faces, whose way out is 1 mm: days at 1 mm² a day are the Fourier number. */
const slab: CaseRun = (i) => ({
  fraction_remaining: through('drying-left', { thickness_mm: 2, open_faces: 'both', diffusivity_mm2day: 1, time_d: i.fourier_number_Dt_over_L2 }).figure(
    'left_percent',
    'fraction',
  ),
});

export const wallRuns: Readonly<Record<string, CaseRun>> = {
  'Theil-Sen slope': slope,
  'confidence interval of the Theil-Sen slope (Sen 1968)': interval,
  'Mann-Kendall trend test (exact two-sided, no ties)': trend,
  'Mann-Kendall trend test with ties (normal approximation, continuity corrected)': trend,
  'exact upper-tail probability of Kendall S': tail,
  'dry-reference median and scaled MAD': reference,
  'relative humidity in equilibrium with a wood moisture content (inverse of eq. 4-5)': woodAir,
  'oven-dry moisture content': ovenDry,
  'relative humidity from dry-bulb and dew-point temperature': fromDewPoint,
  'critical relative humidity for mould growth on pine sapwood': mouldLimits,
  'largest mould index reachable in constant conditions': mouldLimits,
  'weeks to mould index 1, resawn kiln-dried pine sapwood, constant conditions (response time t_m, W=0, SQ=0)': mouldLimits,
  'mould index after constant exposure (improved VTT model)': constant,
  'mould index after wet then dry period': wetThenDry,
  'mould index after daily wet/dry cycling': daily,
  'fraction of excess moisture remaining in a slab drying from both faces (half-thickness L)': slab,
};
