import { fromSi, quantities, toSi } from '../src/units';
import { jointRuns } from './case-runs-joints';
import { mapRuns } from './case-runs-maps';
import { sunRuns } from './case-runs-sun';
import { wallRuns } from './case-runs-walls';
import { type CaseRun, through, type Values } from './case-through';

const n = (v: unknown): number => Number(v);
const temperatureOf = (i: Values, stem: string): Values => (`${stem}_F` in i ? { f: i[`${stem}_F`] } : { c: i[`${stem}_C`] });

const equilibrium: CaseRun = (i) => {
  const t = temperatureOf(i, 'temperature');
  const a = through('wood-equilibrium-moisture', { [`temperature_${'f' in t ? 'f' : 'c'}`]: t.f ?? t.c, relative_humidity_percent: i.relative_humidity_pct });
  return { emc_pct: a.figure('moisture_content_percent', 'percent') };
};

const pinMeter =
  (rule: string): CaseRun =>
  (i) => ({
    corrected_pct: through('pin-meter-temperature', {
      reading_percent: i.meter_reading_pct ?? i.species_corrected_reading_pct,
      wood_temperature_c: i.wood_temperature_C,
      rule,
      ...('calibration_temperature_C' in i ? { calibrated_at_c: i.calibration_temperature_C } : {}),
    }).figure('corrected_percent', 'percent'),
  });

const saturation: CaseRun = (i) => {
  const a = through('saturation-pressure', 'temperature_F' in i ? { temperature_f: i.temperature_F } : { temperature_c: i.temperature_C });
  const pa = a.figure('saturation_pressure_pa', 'pa');
  return { saturation_pressure_Pa: pa, saturation_pressure_psi: fromSi(pa, 'absolute-pressure', 'psi') };
};
const saturationAt = (celsius: unknown): number => n(saturation({ temperature_C: celsius }, {}).saturation_pressure_Pa);

const dewPoint: CaseRun = (i) => {
  const fahrenheit = 'air_F' in i;
  const celsius = i.dry_bulb_C ?? i.air_C;
  const humidity = 'vapour_pressure_Pa' in i ? (100 * n(i.vapour_pressure_Pa)) / saturationAt(celsius) : (i.relative_humidity_pct ?? i.rh_pct);
  const a = through('dew-point', { ...(fahrenheit ? { dry_bulb_f: i.air_F } : { dry_bulb_c: celsius }), relative_humidity_percent: humidity });
  return { dew_point_C: a.figure('dew_point_c', 'c'), dew_point_F: a.figure('dew_point_c', 'f') };
};

const atmosphere: CaseRun = (i) => {
  const a = through('standard-atmosphere', 'altitude_ft' in i ? { altitude_ft: i.altitude_ft } : { altitude_m: i.altitude_m });
  return { pressure_Pa: a.figure('pressure_kpa', 'pa'), atm_kPa: a.figure('pressure_kpa', 'kpa'), atm_psi: a.figure('pressure_kpa', 'psi') };
};

/** The day the cases were written for, where a case names none. */
const CASE_DAY = '2025-06-01';

const dateCode: CaseRun = (i, expected) => {
  const a = through('tyre-date-code', { code: i.date_code ?? i.tin, today: i.assume_today ?? CASE_DAY });
  if (a.refused.length > 0) return { valid: false, reason: a.refused.includes('future-date-code') ? 'in_future' : a.refused[0] };
  const years = a.word('year').match(/\d{4}/g)?.map(Number) ?? [];
  const asked = Array.isArray(expected.candidate_years_include) ? (expected.candidate_years_include as number[]) : [];
  return {
    valid: true,
    week: n(a.word('week')),
    year: years.length === 1 ? years[0] : undefined,
    year_last_digit: (years[0] ?? Number.NaN) % 10,
    candidate_years_include: asked.filter((y) => years.includes(y)),
    decade_certain: years.length === 1,
    week_first_day: a.word('first_day'),
    week_last_day: a.word('last_day'),
  };
};

const SERVICE: Readonly<Record<string, string>> = { 'light-truck': 'LT', 'special-trailer': 'ST', temporary: 'T', metric: 'metric' };

const size: CaseRun = (i) => {
  const a = through('tyre-size', { size: i.size });
  return {
    service: SERVICE[a.word('service')],
    construction: a.word('construction'),
    section_width_mm: a.figure('section_width_mm', 'mm'),
    section_width_in: a.figure('section_width_mm', 'in'),
    aspect_percent: a.figure('aspect_percent', 'percent'),
    rim_in: a.figure('rim_in', 'in'),
    section_height_mm: a.figure('section_height_mm', 'mm'),
    section_height_in: a.figure('section_height_mm', 'in'),
    overall_diameter_mm: a.figure('overall_diameter_mm', 'mm'),
    overall_diameter_in: a.figure('overall_diameter_mm', 'in'),
    load_index: n(a.word('load_index_single')),
    load_index_single: n(a.word('load_index_single')),
    load_index_dual: n(a.word('load_index_dual')),
    speed_symbol: a.word('speed_symbol'),
  };
};

const loadIndex: CaseRun = (i) => {
  const a = through('tyre-load-index', { service_description: String(i.load_index) });
  return { max_load_kg: a.figure('single_kg', 'kg'), max_load_lb: a.figure('single_kg', 'lb') };
};

const speedSymbol: CaseRun = (i) => ({ max_speed_km_h: through('tyre-load-index', { service_description: `100${i.speed_symbol}` }).figure('speed_kmh', 'kmh') });

const pressureChange: CaseRun = (i) => {
  const metric = 'gauge_kPa' in i;
  const a = through('tyre-pressure-after-change', {
    ...(metric
      ? { set_pressure_kpa: i.gauge_kPa, set_temperature_c: i.temp_C, temperature_c: i.new_temp_C }
      : { set_pressure_psi: i.gauge_psi, set_temperature_f: i.temp_F, temperature_f: i.new_temp_F }),
    altitude_ft: i.new_altitude_ft ?? 0,
  });
  return { new_gauge_psi: a.figure('pressure_kpa', 'psi'), new_gauge_kPa: a.figure('pressure_kpa', 'kpa') };
};

const runFlat: CaseRun = (i) => ({
  treat_as_run_flat: through('tyre-run-flat', { set_pressure_psi: i.specified_psi, reading_psi: i.measured_cold_psi, temperature_c: 20 }).word('at_or_below_80_percent') === 'yes',
});

const PROFILE: Readonly<Record<string, string>> = {
  rectangle: 'rectangle',
  'triangular fillet': 'fillet',
  'convex quarter-round fillet': 'full-fillet',
  round: 'round',
  'cap bead, circular segment': 'cap',
  'cap bead, parabola': 'levelled-cap',
};

const beadSection: CaseRun = (i) => ({
  area_mm2: through('bead-section', { shape: PROFILE[String(i.profile)], width_mm: i.width_mm ?? i.leg_mm ?? i.diameter_mm, depth_mm: i.depth_mm ?? i.height_mm ?? 0 }).figure(
    'section_mm2',
    'mm2',
  ),
});

/** Feet of a rectangular or round bead from one package, nothing wasted. */
const feetPerPackage = (shape: string, width_in: unknown, depth_in: unknown, content: Values): number => {
  const section = through('bead-section', { shape, width_in, depth_in }).figure('section_mm2', 'mm2');
  return through('packages-needed', { section_mm2: section, length_m: 1, waste_percent: 0, ...content }).figure('length_per_package_m', 'ft');
};

const roundYield: CaseRun = (i) => {
  const theory = feetPerPackage('round', i.bead_diameter_in, 0, { package_ml: i.package_mL });
  return { theory_length_ft: theory, implied_allowance_pct: 100 * (1 - n(i.published_length_ft) / theory) };
};

const packages: CaseRun = (i) => {
  const a = through('packages-needed', { section_mm2: i.area_mm2, length_m: i.length_m, waste_percent: i.waste_pct, package_ml: i.package_mL });
  return { volume_mL: a.figure('volume_ml', 'ml'), packages: a.figure('packages_count', 'count') };
};

/** A metre of bead of as many square millimetres holds as many millilitres. */
const wetVolume: CaseRun = (i) => ({
  wet_volume_mL: through('packages-needed', { section_mm2: i.dry_volume_mL, length_m: 1, waste_percent: 0, solids_percent: i.volume_solids_pct }).figure('volume_ml', 'ml'),
});

const tape: CaseRun = (i) => {
  const edge = through('bead-length', { rule: 'all-round', width_m: i.frame_width_m, height_m: i.frame_height_m }).figure('length_m', 'm');
  const a = through('tape-rolls', { length_m: n(i.frames) * edge, waste_percent: i.waste_pct, roll_m: i.roll_m });
  return { length_m: a.figure('tape_m', 'm'), rolls: a.figure('rolls_count', 'count') };
};

const packageVolume: CaseRun = (i) => {
  const unit = 'volume_mL' in i ? 'ml' : 'floz';
  if (!quantities.volume.units.some((u) => u.id === unit)) throw new Error(`no unit ${unit}`);
  return { volume_in3: fromSi(toSi(n(i.volume_mL ?? i.volume_us_fl_oz), 'volume', unit), 'volume', 'in3') };
};

const ladderTo = (landing_height_ft: number, rails_above_ft: unknown = 3): Values => {
  const a = through('ladder', { landing_height_ft, rails_above_ft });
  return {
    working_length_ft: a.figure('working_length_m', 'ft'),
    foot_distance_ft: a.figure('foot_distance_m', 'ft'),
    min_ladder_length_ft: a.figure('least_length_m', 'ft'),
    angle_deg: a.figure('angle_deg', 'deg'),
  };
};

const outlineOf: CaseRun = ({ x_m, y_m }) => {
  const a = through('outline-area', { x_m, y_m });
  return { area_m2: a.figure('area_m2', 'm2'), longest_m: a.figure('longest_m', 'm') };
};

/** The edge that a ladder of this working length reaches, so that the foot distance of the length itself can be asked for. */
const ladderOf: CaseRun = (i) => ladderTo((10 * n(i.working_length_ft)) / n(ladderTo(10).working_length_ft));

const entryPoints: CaseRun = (i) => {
  const a = through('entry-points', {
    prior_fraction: i.prior_leak,
    pass_fraction: (i.path_prob_source_to_stain as readonly (readonly number[])[]).flat(),
    background_fraction: i.leak_background_prob,
    wet: (i.stains_wet as readonly boolean[]).map((wet) => (wet ? 'wet' : 'dry')).join(', '),
  });
  return { prob_evidence: a.figure('evidence_fraction', 'fraction'), post_leak: a.figures('posterior_fraction', 'fraction') };
};

const waterTest: CaseRun = (i) => ({
  post_leak: through('water-test-update', {
    prior_fraction: i.prior_leak,
    sensitivity_fraction: i.test_sensitivity,
    specificity_fraction: i.test_specificity,
    result: i.test_positive === true ? 'came-in' : 'stayed-dry',
  }).figure('posterior_fraction', 'fraction'),
});

/** Water and gravity are those of the cases; only the air can be given. */
const drivingRain: CaseRun = (i) => {
  const a = through('driving-rain-pressure', { speed_mph: i.speed_mph, air_density_kgm3: i.air_density_kg_per_m3 });
  return { pressure_Pa: a.figure('pressure_pa', 'pa'), water_head_mm: a.figure('water_head_mm', 'mm') };
};

const rainFlux: CaseRun = (i) => ({
  horizontal_flux_mm_per_h: through('rain-through-plane', { rain_mmh: i.rain_mm_per_h, wind_ms: i.relative_wind_m_per_s, fall_speed_ms: i.drop_fall_speed_m_per_s }).figure(
    'through_mmh',
    'mmh',
  ),
});

/** As rain that falls as fast as it is blown, so that the same goes through the plane. */
const sprayRate: CaseRun = (i) => ({
  rate_L_per_m2_min: through('rain-through-plane', { rain_galft2h: i.rate_gal_per_ft2_h, wind_ms: 6, fall_speed_ms: 6 }).figure('through_lm2min', 'lm2min'),
});

/** Which worksheet answers which quantity of the case files. */
export const caseRuns: Readonly<Record<string, CaseRun>> = {
  ...jointRuns,
  ...mapRuns,
  ...wallRuns,
  ...sunRuns,
  'equilibrium moisture content of wood': equilibrium,
  'equilibrium moisture content of wood (Celsius input)': equilibrium,
  'resistance moisture meter temperature correction (simple linear rule)': pinMeter('linear'),
  'resistance moisture meter temperature correction (maker chart, plausibility band for any formula)': pinMeter('linear'),
  'resistance moisture meter temperature correction (Pfaff-Garrahan)': pinMeter('pfaff-garrahan'),
  'saturation pressure of water vapour': saturation,
  'dew-point temperature': dewPoint,
  'dew point from air temperature and relative humidity (coating tables, whole degrees)': dewPoint,
  'standard atmosphere pressure at altitude': atmosphere,
  'standard-atmosphere pressure from altitude': atmosphere,
  'tyre date code decode (4-digit)': dateCode,
  'tyre date code decode (3-digit, pre-2000, ambiguous decade)': dateCode,
  'tyre date code rejected as impossible': dateCode,
  'calendar week named by a date code (first day, Sunday)': dateCode,
  'tyre nominal section height and overall diameter': size,
  'tyre design overall diameter vs nominal formula': size,
  'tyre size designation parse': size,
  'tyre load index to maximum load': loadIndex,
  'load index to pounds': loadIndex,
  'tyre speed symbol': speedSymbol,
  'gauge pressure after temperature change (rigid volume, ideal gas)': pressureChange,
  'gauge pressure after altitude and temperature change': pressureChange,
  'treat as run flat (80 percent rule)': runFlat,
  'bead cross-section area': beadSection,
  'linear feet sealed per US gallon, rectangular joint': (i) => ({ length_ft_per_gal: feetPerPackage('rectangle', i.width_in, i.depth_in, { package_gal: 1 }) }),
  'linear feet per nominal 10.1 oz cartridge, distributor rule 18 in3 / (12 A)': (i) => ({
    length_ft: feetPerPackage('rectangle', i.width_in, i.depth_in, { package_in3: i.usable_volume_in3 }),
  }),
  'data-sheet yield against theory, implied allowance': roundYield,
  'packages needed, ceil(A L (1+waste)/V)': packages,
  'wet volume for a wanted dry bead of a solvent-borne sealant, V_wet = V_dry / volume solids': wetVolume,
  'tape rolls needed, ceil(L (1+waste)/roll)': tape,
  'package volume in cubic inches': packageVolume,
  'leak-source posterior in a two-layer noisy-OR network': entryPoints,
  'update of one leak source after a negative water test': waterTest,
  'stagnation pressure on a forward face and the water head it holds': drivingRain,
  'rain flux through a vertical plane facing the relative wind': rainFlux,
  'unit conversion of the ASTM E1105 spray rate': sprayRate,
  'area inside an outline by the shoelace formula': outlineOf,
  'ladder foot distance, one quarter of the working length': ladderOf,
  'ladder angle at one-quarter rule': () => ladderTo(10),
  'ladder length to a roof edge with rails 3 ft above the landing, measured vertically': (i) => ladderTo(n(i.landing_height_ft), i.rail_above_landing_ft),
};
