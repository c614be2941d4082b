/**
 * The quantities people type and read, each with its units.
 * A unit's `id` is also its suffix in files, flags and JSON keys: `pressure_kpa`, `dry_bulb_c`.
 */
export type UnitSystem = 'us' | 'metric';

export type Unit = {
  /** Suffix in keys: `psi`, `kpa`, `c`. */
  readonly id: string;
  /** What stands behind the figure: `psi`, `°C`, `in`. */
  readonly symbol: string;
  /** SI value = typed × scale + offset. */
  readonly scale: number;
  readonly offset?: number;
  /** Decimals shown; a reading is never shown finer than its instrument. */
  readonly decimals: number;
};

export type QuantityId =
  | 'length'
  | 'small-length'
  | 'distance'
  | 'area'
  | 'volume'
  | 'mass'
  | 'temperature'
  | 'temperature-difference'
  | 'gauge-pressure'
  | 'absolute-pressure'
  | 'vapour-pressure'
  | 'moisture-content'
  | 'relative-humidity'
  | 'relative-scale'
  | 'share'
  | 'angle'
  | 'duration'
  | 'months'
  | 'speed'
  | 'count'
  | 'number'
  | 'small-mass'
  | 'moisture-rate'
  | 'diffusivity'
  | 'rain-rate'
  | 'density'
  | 'information'
  | 'irradiance'
  | 'irradiation'
  | 'heat-transfer'
  | 'expansion';

export type Quantity = {
  readonly id: QuantityId;
  readonly meaning: string;
  readonly si: string;
  readonly units: readonly Unit[];
  /** The unit each system starts with. */
  readonly usual: Readonly<Record<UnitSystem, string>>;
};

const INCH = 0.0254;
const FOOT = 12 * INCH;
/** Pound-force per square inch: 0.45359237 kg × 9.80665 m/s² / (0.0254 m)². Exact by definition. */
const PSI = (0.45359237 * 9.80665) / (INCH * INCH);
const POUND = 0.45359237;
/** British thermal unit, international table. [J] Exact by definition. */
const BTU = 1055.05585262;
const DAY = 86400;
const CELSIUS_ZERO = 273.15;
const FAHRENHEIT_STEP = 5 / 9;

const one = (id: string, symbol: string, decimals: number): Unit => ({ id, symbol, scale: 1, decimals });

/** Exact factors by definition. Held against NIST Special Publication 811 (2008), appendix B.8, in quantities.check.ts. */
export const quantities: Readonly<Record<QuantityId, Quantity>> = {
  length: {
    id: 'length',
    meaning: 'a length on the rig or the ground',
    si: 'm',
    units: [
      one('m', 'm', 2),
      { id: 'ft', symbol: 'ft', scale: FOOT, decimals: 1 },
      { id: 'in', symbol: 'in', scale: INCH, decimals: 1 },
      { id: 'cm', symbol: 'cm', scale: 0.01, decimals: 0 },
      { id: 'mm', symbol: 'mm', scale: 0.001, decimals: 0 },
    ],
    usual: { us: 'ft', metric: 'm' },
  },
  'small-length': {
    id: 'small-length',
    meaning: 'a gap, a crack, a bead or a tread depth',
    si: 'm',
    units: [
      { id: 'mm', symbol: 'mm', scale: 0.001, decimals: 1 },
      { id: 'in', symbol: 'in', scale: INCH, decimals: 2 },
      { id: '32in', symbol: '/32 in', scale: INCH / 32, decimals: 0 },
      { id: 'cm', symbol: 'cm', scale: 0.01, decimals: 1 },
      one('m', 'm', 4),
    ],
    usual: { us: 'in', metric: 'mm' },
  },
  distance: {
    id: 'distance',
    meaning: 'a way on the road',
    si: 'm',
    units: [{ id: 'km', symbol: 'km', scale: 1000, decimals: 0 }, { id: 'mi', symbol: 'mi', scale: 5280 * FOOT, decimals: 0 }, one('m', 'm', 0)],
    usual: { us: 'mi', metric: 'km' },
  },
  area: {
    id: 'area',
    meaning: 'an area of skin or section',
    si: 'm²',
    units: [
      one('m2', 'm²', 2),
      { id: 'ft2', symbol: 'ft²', scale: FOOT * FOOT, decimals: 1 },
      { id: 'in2', symbol: 'in²', scale: INCH * INCH, decimals: 2 },
      { id: 'cm2', symbol: 'cm²', scale: 1e-4, decimals: 1 },
      { id: 'mm2', symbol: 'mm²', scale: 1e-6, decimals: 0 },
    ],
    usual: { us: 'ft2', metric: 'm2' },
  },
  volume: {
    id: 'volume',
    meaning: 'a volume of material',
    si: 'm³',
    units: [
      { id: 'ml', symbol: 'mL', scale: 1e-6, decimals: 0 },
      { id: 'in3', symbol: 'in³', scale: INCH ** 3, decimals: 1 },
      { id: 'floz', symbol: 'fl oz', scale: (231 * INCH ** 3) / 128, decimals: 1 },
      { id: 'l', symbol: 'L', scale: 1e-3, decimals: 2 },
      { id: 'gal', symbol: 'gal', scale: 231 * INCH ** 3, decimals: 2 },
      one('m3', 'm³', 6),
    ],
    usual: { us: 'floz', metric: 'ml' },
  },
  mass: {
    id: 'mass',
    meaning: 'a mass, or the load it puts on a wheel',
    si: 'kg',
    units: [one('kg', 'kg', 0), { id: 'lb', symbol: 'lb', scale: POUND, decimals: 0 }],
    usual: { us: 'lb', metric: 'kg' },
  },
  temperature: {
    id: 'temperature',
    meaning: 'a temperature',
    si: 'K',
    units: [
      { id: 'c', symbol: '°C', scale: 1, offset: CELSIUS_ZERO, decimals: 0 },
      { id: 'f', symbol: '°F', scale: FAHRENHEIT_STEP, offset: CELSIUS_ZERO - 32 * FAHRENHEIT_STEP, decimals: 0 },
      one('k', 'K', 1),
    ],
    usual: { us: 'f', metric: 'c' },
  },
  'temperature-difference': {
    id: 'temperature-difference',
    meaning: 'a difference of two temperatures',
    si: 'K',
    units: [one('k', 'K', 1), { id: 'df', symbol: '°F', scale: FAHRENHEIT_STEP, decimals: 1 }],
    usual: { us: 'df', metric: 'k' },
  },
  'gauge-pressure': {
    id: 'gauge-pressure',
    meaning: 'tyre pressure as a gauge shows it, above the air outside',
    si: 'Pa',
    units: [
      { id: 'kpa', symbol: 'kPa', scale: 1000, decimals: 0 },
      { id: 'psi', symbol: 'psi', scale: PSI, decimals: 0 },
      { id: 'bar', symbol: 'bar', scale: 1e5, decimals: 1 },
      one('pa', 'Pa', 0),
    ],
    usual: { us: 'psi', metric: 'kpa' },
  },
  'absolute-pressure': {
    id: 'absolute-pressure',
    meaning: 'pressure of the air, above vacuum',
    si: 'Pa',
    units: [
      { id: 'kpa', symbol: 'kPa', scale: 1000, decimals: 1 },
      { id: 'psi', symbol: 'psi', scale: PSI, decimals: 2 },
      { id: 'hpa', symbol: 'hPa', scale: 100, decimals: 0 },
      one('pa', 'Pa', 0),
    ],
    usual: { us: 'psi', metric: 'kpa' },
  },
  'vapour-pressure': {
    id: 'vapour-pressure',
    meaning: 'pressure of water vapour',
    si: 'Pa',
    units: [one('pa', 'Pa', 0), { id: 'kpa', symbol: 'kPa', scale: 1000, decimals: 3 }],
    usual: { us: 'pa', metric: 'pa' },
  },
  'moisture-content': {
    id: 'moisture-content',
    meaning: 'mass of water over mass of dry wood',
    si: 'kg/kg',
    units: [{ id: 'percent', symbol: '%', scale: 0.01, decimals: 1 }, one('kgkg', 'kg/kg', 3)],
    usual: { us: 'percent', metric: 'percent' },
  },
  'relative-humidity': {
    id: 'relative-humidity',
    meaning: 'relative humidity of the air',
    si: '1',
    units: [{ id: 'percent', symbol: '%', scale: 0.01, decimals: 0 }, one('fraction', '', 2)],
    usual: { us: 'percent', metric: 'percent' },
  },
  'relative-scale': {
    id: 'relative-scale',
    meaning: 'an instrument scale from 0 to 100 with no unit',
    si: '1',
    units: [one('points', 'of 100', 0)],
    usual: { us: 'points', metric: 'points' },
  },
  share: {
    id: 'share',
    meaning: 'a share of a whole',
    si: '1',
    units: [{ id: 'percent', symbol: '%', scale: 0.01, decimals: 0 }, one('fraction', '', 3)],
    usual: { us: 'percent', metric: 'percent' },
  },
  angle: {
    id: 'angle',
    meaning: 'a plane angle',
    si: 'rad',
    units: [{ id: 'deg', symbol: '°', scale: Math.PI / 180, decimals: 0 }, one('rad', 'rad', 3)],
    usual: { us: 'deg', metric: 'deg' },
  },
  duration: {
    id: 'duration',
    meaning: 'a span of time',
    si: 's',
    units: [
      { id: 'min', symbol: 'min', scale: 60, decimals: 0 },
      { id: 'h', symbol: 'h', scale: 3600, decimals: 1 },
      { id: 'd', symbol: 'days', scale: 86400, decimals: 0 },
      one('s', 's', 0),
    ],
    usual: { us: 'h', metric: 'h' },
  },
  months: {
    id: 'months',
    meaning: 'a count of calendar months',
    si: '1',
    units: [one('months', 'months', 0)],
    usual: { us: 'months', metric: 'months' },
  },
  speed: {
    id: 'speed',
    meaning: 'a speed',
    si: 'm/s',
    units: [{ id: 'kmh', symbol: 'km/h', scale: 1 / 3.6, decimals: 0 }, { id: 'mph', symbol: 'mph', scale: 1609.344 / 3600, decimals: 0 }, one('ms', 'm/s', 1)],
    usual: { us: 'mph', metric: 'kmh' },
  },
  count: {
    id: 'count',
    meaning: 'a number of things',
    si: '1',
    units: [one('count', '', 0)],
    usual: { us: 'count', metric: 'count' },
  },
  number: {
    id: 'number',
    meaning: 'a plain number with no unit',
    si: '1',
    units: [one('number', '', 2)],
    usual: { us: 'number', metric: 'number' },
  },
  'small-mass': {
    id: 'small-mass',
    meaning: 'the mass of a sample on a kitchen or letter balance',
    si: 'kg',
    units: [
      { id: 'g', symbol: 'g', scale: 0.001, decimals: 1 },
      { id: 'oz', symbol: 'oz', scale: POUND / 16, decimals: 2 },
    ],
    usual: { us: 'oz', metric: 'g' },
  },
  'moisture-rate': {
    id: 'moisture-rate',
    meaning: 'a change of moisture content in time',
    si: 'kg/kg a second',
    units: [
      { id: 'percentday', symbol: '% a day', scale: 0.01 / DAY, decimals: 2 },
      { id: 'percentweek', symbol: '% a week', scale: 0.01 / (7 * DAY), decimals: 1 },
    ],
    usual: { us: 'percentday', metric: 'percentday' },
  },
  diffusivity: {
    id: 'diffusivity',
    meaning: 'how fast moisture spreads through a material',
    si: 'm²/s',
    units: [
      { id: 'mm2day', symbol: 'mm² a day', scale: 1e-6 / DAY, decimals: 1 },
      { id: 'in2day', symbol: 'in² a day', scale: (INCH * INCH) / DAY, decimals: 3 },
      one('m2s', 'm²/s', 12),
    ],
    usual: { us: 'in2day', metric: 'mm2day' },
  },
  'rain-rate': {
    id: 'rain-rate',
    meaning: 'a depth of water in a time: rain, or spray on a wall',
    si: 'm/s',
    units: [
      { id: 'mmh', symbol: 'mm/h', scale: 0.001 / 3600, decimals: 1 },
      { id: 'inh', symbol: 'in/h', scale: INCH / 3600, decimals: 2 },
      { id: 'lm2min', symbol: 'L/(m² min)', scale: 0.001 / 60, decimals: 2 },
      { id: 'galft2h', symbol: 'gal/(ft² h)', scale: (231 * INCH ** 3) / (FOOT * FOOT) / 3600, decimals: 2 },
    ],
    usual: { us: 'inh', metric: 'mmh' },
  },
  density: { id: 'density', meaning: 'mass in a volume', si: 'kg/m³', units: [one('kgm3', 'kg/m³', 3)], usual: { us: 'kgm3', metric: 'kgm3' } },
  information: { id: 'information', meaning: 'what an answer is expected to tell', si: 'bit', units: [one('bit', 'bit', 2)], usual: { us: 'bit', metric: 'bit' } },
  irradiance: {
    id: 'irradiance',
    meaning: 'sunlight on a plane',
    si: 'W/m²',
    units: [one('wm2', 'W/m²', 0), { id: 'btuhft2', symbol: 'Btu/(h ft²)', scale: BTU / 3600 / (FOOT * FOOT), decimals: 0 }],
    usual: { us: 'wm2', metric: 'wm2' },
  },
  irradiation: {
    id: 'irradiation',
    meaning: 'sunlight on a plane summed over a time',
    si: 'J/m²',
    units: [
      { id: 'mjm2', symbol: 'MJ/m²', scale: 1e6, decimals: 1 },
      { id: 'kwhm2', symbol: 'kWh/m²', scale: 3.6e6, decimals: 1 },
      { id: 'btuft2', symbol: 'Btu/ft²', scale: BTU / (FOOT * FOOT), decimals: 0 },
    ],
    usual: { us: 'mjm2', metric: 'mjm2' },
  },
  'heat-transfer': {
    id: 'heat-transfer',
    meaning: 'heat that a surface gives off for each degree it is warmer',
    si: 'W/(m² K)',
    units: [one('wm2k', 'W/(m² K)', 1), { id: 'btuhft2f', symbol: 'Btu/(h ft² °F)', scale: BTU / 3600 / (FOOT * FOOT) / FAHRENHEIT_STEP, decimals: 2 }],
    usual: { us: 'btuhft2f', metric: 'wm2k' },
  },
  expansion: {
    id: 'expansion',
    meaning: 'how much of its length a material grows for each degree',
    si: '1/K',
    units: [
      { id: 'ppmk', symbol: 'millionths per °C', scale: 1e-6, decimals: 1 },
      { id: 'ppmdf', symbol: 'millionths per °F', scale: 1e-6 / FAHRENHEIT_STEP, decimals: 1 },
    ],
    usual: { us: 'ppmdf', metric: 'ppmk' },
  },
};

/** The unit of a quantity by its id. Throws when the pair does not exist: that is our own mistake, not a person's. */
export const unitOf = (quantity: QuantityId, unit: string): Unit => {
  const found = quantities[quantity].units.find((u) => u.id === unit);
  if (!found) throw new Error(`${quantity} has no unit ${unit}`);
  return found;
};

export const toSi = (n: number, quantity: QuantityId, unit: string): number => {
  const u = unitOf(quantity, unit);
  return n * u.scale + (u.offset ?? 0);
};

export const fromSi = (si: number, quantity: QuantityId, unit: string): number => {
  const u = unitOf(quantity, unit);
  return (si - (u.offset ?? 0)) / u.scale;
};
