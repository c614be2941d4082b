import { accept, figure, type Kelvin, type RelativeHumidity, type Result, relativeHumidity } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import { type MouldClass, type MouldClassId, mouldClass } from './mould-classes';

const SOURCE = 'Hukka and Viitanen 1999, Wood Science and Technology 33:475';

/** Mould grows only between freezing and this; colder and hotter it rests. [°C] */
const HOTTEST = 50;
const FULL = 100;
const WEEK_D = 7;

export const mouldTemperature: Validity = { of: 'temperature', least: 273.15, most: 273.15 + HOTTEST, words: '0 to 50 °C; colder or hotter no mould grows', source: SOURCE };
export const mouldHumidity: Validity = { of: 'relative_humidity', least: 0, most: 1, words: '0 to 100 % relative humidity', source: SOURCE };

/** T in °C, RH in %: the bare law, for those who have checked its validity. */
export const criticalPercent = (T: number, { humidity_least }: MouldClass): number =>
  // The source's cubic holds up to 20 °C; it would turn up again beyond.
  T > 20 ? humidity_least : Math.max(humidity_least, -0.00267 * T ** 3 + 0.16 * T ** 2 - 3.13 * T + 100);

/** Warm enough, not too hot, and damp enough. */
export const grows = (T: number, RH: number, surface: MouldClass): boolean => T > 0 && T < HOTTEST && RH >= criticalPercent(T, surface);

export const largestIndex = (T: number, RH: number, surface: MouldClass): number => {
  const critical = criticalPercent(T, surface);
  const x = (critical - RH) / (critical - FULL);
  return surface.A + surface.B * x - surface.C * x ** 2;
};

/** Weeks from nothing to index 1 on resawn pine sapwood: W = 0, SQ = 0, which the improved model keeps for every class. */
export const weeksToOne = (T: number, RH: number): number => Math.exp(-0.68 * Math.log(T) - 13.9 * Math.log(RH) + 66.02);

/** How much the index rises in a day, at index M. */
export const growthADay = (T: number, RH: number, M: number, surface: MouldClass): number => {
  const k1 = M < 1 ? surface.k1_below : surface.k1_from;
  const k2 = Math.max(0, 1 - Math.exp(2.3 * (M - largestIndex(T, RH, surface))));
  return (k1 * k2) / (WEEK_D * weeksToOne(T, RH));
};

const within = (temperature: Kelvin, relative_humidity: RelativeHumidity): Result<{ readonly T: number; readonly RH: number }> => {
  if (!holds(temperature, mouldTemperature)) return outsideValidity(mouldTemperature, `${figure(temperature - 273.15, 1)} °C`);
  if (!holds(relative_humidity, mouldHumidity)) return outsideValidity(mouldHumidity, `${figure(relative_humidity * 100, 1)} %`);
  return accept({ T: temperature - 273.15, RH: relative_humidity * 100 });
};

/**
 * The humidity from which mould can grow on a surface.
 *
 * @param temperature  of the surface. [K]
 * @returns            critical relative humidity at the surface. [1]
 * @valid              0…50 °C (source 1); outside: a refusal `outside-validity`
 * @agrees             0.01 point against five values of the published equation
 * @source             1. Hukka and Viitanen 1999, as read in public implementations; the floors of the classes: Ojanen and others 2010
 */
export const criticalHumidity = (temperature: Kelvin, surface: MouldClassId): Result<RelativeHumidity> => {
  const given = within(temperature, relativeHumidity(1));
  return given.ok ? accept(relativeHumidity(criticalPercent(given.value.T, mouldClass(surface)) / 100)) : given;
};

/**
 * The index that mould comes to in the end if nothing changes.
 *
 * @param relative_humidity  at the surface, not in the middle of the room. [1]
 * @returns                  0 where it does not grow at all
 * @valid                    0…50 °C, 0…100 % (source 1); outside: a refusal `outside-validity`
 * @agrees                   0.005 against six values of the published equation
 * @source                   1. Hukka and Viitanen 1999; constants of the classes: Ojanen and others 2010, as read in public implementations
 */
export const largestMouldIndex = (temperature: Kelvin, relative_humidity: RelativeHumidity, surface: MouldClassId): Result<number> => {
  const given = within(temperature, relative_humidity);
  if (!given.ok) return given;
  const { T, RH } = given.value;
  const of = mouldClass(surface);
  return accept(grows(T, RH, of) ? largestIndex(T, RH, of) : 0);
};

/**
 * How long pine sapwood takes from clean to the first mould under a microscope.
 *
 * @returns  weeks to index 1 in constant conditions; undefined where mould does not grow at all
 * @valid    0…50 °C, 0…100 % (source 1); outside: a refusal `outside-validity`
 * @agrees   0.5 % against three values of the published equation
 * @source   1. Hukka and Viitanen 1999, as read in public implementations
 */
export const weeksToFirstMould = (temperature: Kelvin, relative_humidity: RelativeHumidity): Result<number | undefined> => {
  const given = within(temperature, relative_humidity);
  if (!given.ok) return given;
  const { T, RH } = given.value;
  return accept(grows(T, RH, mouldClass('very-sensitive')) ? weeksToOne(T, RH) : undefined);
};
