/**
 * Branded numbers: SI inside, and a compiler that refuses a pressure where a temperature belongs.
 * Brands guard the doors of functions; inside a formula plain numbers carry the source's own symbols.
 * Only this room makes them.
 */
declare const unit: unique symbol;

type Branded<Name extends string> = number & { readonly [unit]: Name };

/** Length. [m] */
export type Metres = Branded<'m'>;
/** Area. [m²] */
export type SquareMetres = Branded<'m²'>;
/** Volume. [m³] */
export type CubicMetres = Branded<'m³'>;
/** Mass. [kg] */
export type Kilograms = Branded<'kg'>;
/** Thermodynamic temperature. [K] */
export type Kelvin = Branded<'K'>;
/** Temperature difference: 5 °C of difference is 5 K, never 278.15 K. [K] */
export type KelvinDifference = Branded<'K difference'>;
/** Pressure above the surrounding air, as a tyre gauge shows it. [Pa] */
export type GaugePascals = Branded<'Pa gauge'>;
/** Pressure above vacuum. [Pa] */
export type AbsolutePascals = Branded<'Pa absolute'>;
/** Mass of water over mass of dry wood. [kg/kg] */
export type MoistureContent = Branded<'kg/kg'>;
/** Relative humidity as a fraction, 0 to 1. [1] */
export type RelativeHumidity = Branded<'relative humidity'>;
/** A share, 0 to 1. [1] */
export type Share = Branded<'share'>;
/** An ordinal instrument scale, 0 to 100; its steps are not equal. [1] */
export type RelativeScale = Branded<'relative scale'>;
/** Plane angle. [rad] */
export type Radians = Branded<'rad'>;
/** Duration. [s] */
export type Seconds = Branded<'s'>;
/** Speed. [m/s] */
export type MetresPerSecond = Branded<'m/s'>;
/** Milliseconds since 1970-01-01T00:00:00Z. [ms] */
export type Instant = Branded<'instant'>;
/** Civil day: whole days since 1970-01-01 in the proleptic Gregorian calendar, no time zone. [d] */
export type CivilDay = Branded<'civil day'>;

export const metres = (n: number): Metres => n as Metres;
export const squareMetres = (n: number): SquareMetres => n as SquareMetres;
export const cubicMetres = (n: number): CubicMetres => n as CubicMetres;
export const kilograms = (n: number): Kilograms => n as Kilograms;
export const kelvin = (n: number): Kelvin => n as Kelvin;
export const gaugePascals = (n: number): GaugePascals => n as GaugePascals;
export const absolutePascals = (n: number): AbsolutePascals => n as AbsolutePascals;
export const moistureContent = (n: number): MoistureContent => n as MoistureContent;
export const relativeHumidity = (n: number): RelativeHumidity => n as RelativeHumidity;
export const share = (n: number): Share => n as Share;
export const radians = (n: number): Radians => n as Radians;
export const seconds = (n: number): Seconds => n as Seconds;
export const metresPerSecond = (n: number): MetresPerSecond => n as MetresPerSecond;
export const instant = (n: number): Instant => n as Instant;
export const civilDay = (n: number): CivilDay => n as CivilDay;
