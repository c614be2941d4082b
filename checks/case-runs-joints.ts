import { type CaseRun, through, type Values } from './case-through';

/** Runs for moving joints, squeezed tape, and what may touch what. */
const n = (v: unknown): number => Number(v);

/** Warmth of a joint that is laid at nought and warmed by so many degrees, in the degrees of the case. */
const warmed = (unit: string, one: unknown, other: unknown): Values => ({
  [`one_coldest_${unit}`]: 0,
  [`one_hottest_${unit}`]: one,
  [`other_coldest_${unit}`]: 0,
  [`other_hottest_${unit}`]: other,
  [`laid_coldest_${unit}`]: 0,
  [`laid_warmest_${unit}`]: 0,
});

const degreesOf = (i: Values): 'F' | 'C' => ('alpha_per_F' in i ? 'F' : 'C');
const lengthOf = (i: Values): Values => ('length_in' in i ? { length_in: i.length_in } : { length_mm: i.length_mm });

/** Movement of one part against another that stays, through the worksheet. */
const movementOf = (i: Values) => {
  const degrees = degreesOf(i);
  const range = i[`temp_range_${degrees}`];
  return through('joint-movement', {
    ...lengthOf(i),
    one_part: 'by-sheet',
    other_part: 'held-still',
    [`one_expansion_ppm${degrees === 'F' ? 'df' : 'k'}`]: 1e6 * n(i[`alpha_per_${degrees}`]),
    ...warmed(degrees.toLowerCase(), range, range),
  });
};

const free: CaseRun = (i) => {
  const a = movementOf(i);
  return { movement_in: a.figure('movement_mm', 'in'), movement_mm: a.figure('movement_mm', 'mm') };
};

const differential: CaseRun = (i) => ({
  movement_mm: through('joint-movement', {
    ...lengthOf(i),
    one_part: 'by-sheet',
    other_part: 'by-sheet',
    one_expansion_ppmk: 1e6 * n(i.alpha_1_per_C),
    other_expansion_ppmk: 1e6 * n(i.alpha_2_per_C),
    ...warmed('c', i.temp_range_1_C, i.temp_range_2_C),
  }).figure('movement_mm', 'mm'),
});

const classOf = (i: Values): Values => ({ class: String(i.movement_capability_pct ?? i.class) });

const required: CaseRun = (i) => ({
  joint_width_in: through('joint-width', {
    ...classOf(i),
    opening_in: movementOf(i).figure('movement_mm', 'in'),
    other_opening_in: i.other_movement_in,
    tolerance_in: i.tolerance_in,
  }).figure('width_mm', 'in'),
});

/** Counted from the coldest day of laying for closing, from the warmest for opening, as the school does it. */
const worst: CaseRun = (i) => {
  const moved = through('joint-movement', {
    ...lengthOf(i),
    one_part: 'by-sheet',
    other_part: 'held-still',
    one_expansion_ppmdf: 1e6 * n(i.alpha_per_F),
    one_coldest_f: i.temp_min_F,
    one_hottest_f: i.temp_max_F,
    other_coldest_f: i.temp_min_F,
    other_hottest_f: i.temp_max_F,
    laid_coldest_f: i.install_temp_min_F,
    laid_warmest_f: i.install_temp_max_F,
  });
  const a = through('joint-width', {
    ...classOf(i),
    opening_in: moved.figure('shrinks_mm', 'in'),
    closing_in: moved.figure('grows_mm', 'in'),
    other_opening_in: i.opening_other_movement_in,
    other_closing_in: i.closing_other_movement_in,
    tolerance_in: i.tolerance_in,
  });
  return { closing_width_in: a.figure('closing_width_mm', 'in'), opening_width_in: a.figure('opening_width_mm', 'in'), joint_width_in: a.figure('width_mm', 'in') };
};

const fromMovement: CaseRun = (i) => ({
  joint_width_mm: through('joint-width', { ...classOf(i), opening_mm: movementOf(i).figure('movement_mm', 'mm') }).figure('width_mm', 'mm'),
});

const openingAndShear: CaseRun = (i) => ({
  joint_width_mm: through('joint-width', { ...classOf(i), opening_mm: i.opening_movement_mm ?? 0, shear_mm: i.shear_movement_mm }).figure('width_mm', 'mm'),
});

const widths: CaseRun = (i) => {
  const unit = 'nominal_width_in' in i ? 'in' : 'mm';
  const a = through('bead-demand', { ...classOf(i), [`width_${unit}`]: i[`nominal_width_${unit}`] });
  return { [`min_width_${unit}`]: a.figure('narrowest_mm', unit), [`max_width_${unit}`]: a.figure('widest_mm', unit) };
};

/** The class does not come into the demand itself. */
const demand: CaseRun = (i) => ({ demand_pct: through('bead-demand', { width_mm: i.joint_width_mm, opening_mm: i.movement_mm, class: '25' }).figure('demand_percent', 'percent') });

const depth: CaseRun = (i) => ({ depth_mm: through('joint-depth', { width_mm: i.joint_width_mm }).figure('depth_mm', 'mm') });

const rod: CaseRun = (i) => ({ rod_diameter_in: through('joint-depth', { width_in: i.joint_width_in }).figure('closed_rod_mm', 'in') });

const squeeze: CaseRun = (i) => ({
  width_mm: through('tape-squeeze', { width_mm: i.width_mm, thickness_mm: i.thickness_mm, squeezed_mm: i.final_thickness_mm, flange_mm: 25 }).figure('width_squeezed_mm', 'mm'),
});

/** The straight rule is the soonest and the square root the latest wherever a bead is deeper than the first day cures. */
const cure: CaseRun = (i) => ({
  time_d: through('cure-through', { depth_mm: i.depth_mm, first_day_mm: i.first_day_depth_mm }).figure(i.model === 'linear' ? 'soonest_d' : 'latest_d', 'd'),
});

const pull: CaseRun = (i) => ({ stretched_length_mm: through('pull-test', { ...classOf(i), gauge_mm: i.gauge_length_mm }).figure('stretched_mm', 'mm') });

const pulledShare: CaseRun = (i) => ({
  fraction_one_in: 1 / through('pull-test', { class: '25', test_in: i.test_length_in, seam_ft: i.interval_ft }).figure('proved_percent', 'fraction'),
});

const TOUCHING: Readonly<Record<string, string>> = {
  butyl_tape: 'butyl-tape',
  silicone_neutral: 'silicone',
  polyurethane_1k: 'polyurethane',
  stpe_hybrid: 'hybrid',
  polysulphide: 'polysulphide',
  bitumen_or_asphalt: 'bitumen',
};
const TOUCHED: Readonly<Record<string, string>> = {
  EPDM_membrane: 'epdm',
  PVC_membrane: 'pvc',
  painted_aluminium: 'painted-aluminium',
  bare_aluminium: 'bare-aluminium',
  acrylic_PMMA: 'acrylic',
  polycarbonate: 'polycarbonate',
  glass: 'glass',
};

/** On bare, known ground, so that only the pair itself decides. */
const touch: CaseRun = (i) => ({
  verdict: through('may-it-touch', { material: TOUCHING[String(i.chemistry)], one_side: TOUCHED[String(i.substrate)], there_now: 'nothing', silicone_ever: 'no' }).word('verdict'),
});

export const jointRuns: Readonly<Record<string, CaseRun>> = {
  'free thermal movement of a part, dL = alpha L dT': free,
  'differential movement of two parts joined at one end, dL = |alpha1 dT1 - alpha2 dT2| L': differential,
  'required sealant joint width, W = (100/X)(alpha L dT + M) + t': required,
  'required sealant joint width, worst of closing and opening cases from an installation temperature range': worst,
  'minimum joint width from movement alone, a = dL / m': fromMovement,
  'minimum joint width for transverse (shear) movement': openingAndShear,
  'minimum joint width for simultaneous opening and shear': openingAndShear,
  'joint width limits for a sealant of given movement class': widths,
  'movement demand on an installed bead, percent of width': demand,
  'sealant depth for a joint': depth,
  'backer rod diameter': rod,
  'through-cure time of a moisture-cure bead': cure,
  'pull-test mark travel for a destructive field adhesion check at twice the movement capability': pull,
  'share of joint checked by spot pull tests': pulledShare,
  'sealant and substrate verdict': touch,
  'tape width after compression at constant volume, w2 = w1 t1/t2': squeeze,
};
