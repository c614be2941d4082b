import { fromSi, type QuantityId, quantities, toSi, type UnitSystem, unitOf } from './quantities';
import { accept, type Refusal, type Result, refuse } from './refusal';

/** A number as a person gave it, beside its SI value. The typed text is never rewritten; the SI value is never shown. */
export type Typed = {
  readonly typed: string;
  readonly unit: string;
  readonly si: number;
};

/** What a person chose to see: one system, with single quantities set apart. */
export type Preferences = {
  readonly system: UnitSystem;
  readonly units: Readonly<Partial<Record<QuantityId, string>>>;
};

export const usualUnit = (quantity: QuantityId, preferences: Preferences): string => preferences.units[quantity] ?? quantities[quantity].usual[preferences.system];

/** Reads `17.5`, `17,5`, `1 234`, `-3`; feet and inches as `24 ft 6 in`, `24' 6"`, `24-6`; inches as `3/8` or `1 1/2`. */
const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
const FRACTION = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/;
const FEET_INCHES = /^(\d+)\s*(?:ft|'|′|-)\s*(?:(\d+(?:[.,]\d+)?)\s*(?:in|"|″)?)?$/i;

const plain = (text: string): number => Number(text.replace(',', '.'));

const figureOf = (text: string, unit: string): number | undefined => {
  const t = text.trim().replace(/\u00a0|\u202f/g, ' ');
  if (NUMBER.test(t)) return plain(t);
  const grouped = t.replace(/(\d) (?=\d{3}\b)/g, '$1');
  if (NUMBER.test(grouped)) return plain(grouped);
  if (unit === 'in' || unit === 'ft') {
    const f = FRACTION.exec(t);
    if (f && Number(f[3]) > 0) return Number(f[1] ?? 0) + Number(f[2]) / Number(f[3]);
  }
  if (unit === 'ft') {
    const m = FEET_INCHES.exec(t);
    if (m) return Number(m[1]) + plain(m[2] ?? '0') / 12;
  }
  return undefined;
};

export type Limits = { readonly least?: number; readonly most?: number };

/**
 * Reads what a person typed.
 *
 * @param text     the characters, as typed
 * @param unit     the unit's id that stood beside the field
 * @param limits   least and most, in SI; outside is a refusal, never a clamp
 * @param path     where it stands, for the refusal
 * @returns        the typed text with its SI value, or what is wrong with it
 */
export const readQuantity = (text: string, quantity: QuantityId, unit: string, limits: Limits = {}, path = quantity as string): Result<Typed> => {
  const u = unitOf(quantity, unit);
  const received = text.trim() === '' ? 'nothing' : `“${text.trim()}”`;
  const figure = figureOf(text, unit);
  if (figure === undefined || !Number.isFinite(figure))
    return refuse({ code: 'not-a-number', path, expected: `a number in ${u.symbol || 'figures'}`, received, sentence: `${received} is not a number. Type figures, such as 17.5.` });
  const si = toSi(figure, quantity, unit);
  const outside = outsideLimits(si, quantity, unit, limits, path, received);
  return outside ? refuse(outside) : accept({ typed: text.trim(), unit, si });
};

/** Slack for limits given in another unit than the one typed, so that `80 psi` passes a limit that was written as 80 psi. */
const ROUNDING = 1e-9;

/** The refusal for an SI value outside its limits, told in the unit it was given in; undefined when it lies within. */
export const outsideLimits = (si: number, quantity: QuantityId, unit: string, limits: Limits, path: string, received: string): Refusal | undefined => {
  const slack = ROUNDING * Math.max(1, Math.abs(si));
  const low = limits.least !== undefined && si < limits.least - slack;
  const high = limits.most !== undefined && si > limits.most + slack;
  if (!low && !high) return undefined;
  const span = spanText(quantity, unit, limits);
  return {
    code: low ? 'below-limit' : 'above-limit',
    path,
    expected: span,
    received,
    sentence: `${received} ${unitOf(quantity, unit).symbol} is ${low ? 'too low' : 'too high'}: expected ${span}. Check the figure and the unit.`,
  };
};

const spanText = (quantity: QuantityId, unit: string, { least, most }: Limits): string => {
  const show = (si: number): string => showIn(si, quantity, unit);
  if (least !== undefined && most !== undefined) return `${show(least)} to ${show(most)}`;
  return least !== undefined ? `${show(least)} or more` : `${show(most ?? 0)} or less`;
};

const MINUS = '−';

/** A figure with a fixed number of decimals and a true minus sign; `-0` never appears. */
export const figure = (n: number, decimals: number): string => {
  const text = n.toFixed(decimals);
  const unsigned = text.replace('-', '');
  return text.startsWith('-') && Number(unsigned) !== 0 ? `${MINUS}${unsigned}` : unsigned;
};

/** An SI value in one unit, as people read it: `62 psi`, `24.3 %`, `−4 °C`. */
export const showIn = (si: number, quantity: QuantityId, unit: string): string => {
  const u = unitOf(quantity, unit);
  const text = figure(fromSi(si, quantity, unit), u.decimals);
  if (u.symbol === '') return text;
  return u.symbol.startsWith('/') || u.symbol === '°' ? `${text}${u.symbol}` : `${text} ${u.symbol}`;
};

/** An SI value in the person's own unit; lengths in feet are written as feet and inches. */
export const show = (si: number, quantity: QuantityId, preferences: Preferences): string => {
  const unit = usualUnit(quantity, preferences);
  return quantity === 'length' && unit === 'ft' ? feetInches(si) : showIn(si, quantity, unit);
};

const feetInches = (si: number): string => {
  const inches = Math.round(Math.abs(si) / 0.0254);
  const sign = si < 0 && inches > 0 ? MINUS : '';
  const ft = Math.floor(inches / 12);
  const rest = inches % 12;
  return ft === 0 ? `${sign}${rest} in` : `${sign}${ft} ft ${rest} in`;
};

/** What the person typed, with its unit: the record's own words. */
export const showTyped = (value: Typed, quantity: QuantityId): string => {
  const u = unitOf(quantity, value.unit);
  return u.symbol === '' ? value.typed : u.symbol.startsWith('/') || u.symbol === '°' ? `${value.typed}${u.symbol}` : `${value.typed} ${u.symbol}`;
};
