import { readFigure } from './figures';
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
  const read = readFigure(text, quantities[quantity], unit);
  const wrong = (code: string, sentence: string): Result<never> => refuse({ code, path, expected: `a number in ${u.symbol || 'figures'}`, received, sentence });
  if (!read.ok) {
    if (read.why === 'two-meanings') return wrong('two-meanings', `${received} can be read in two ways. Leave out the comma for thousands, or type a point for decimals.`);
    if (read.why === 'other-unit')
      return wrong('other-unit', `${received} is in ${read.unit.symbol}, but the field is in ${u.symbol}. Choose the other unit, or type the figure in ${u.symbol}.`);
    return wrong('not-a-number', `${received} is not a number. Type figures, such as 17.5.`);
  }
  const si = toSi(read.figure, quantity, unit);
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

/** Text that already says its unit: `24 ft 6 in`, `80 psi`. */
const NAMES_ITS_UNIT = /[A-Za-z°%'"′″]/;

/** What the person typed, with its unit: the record's own words. */
export const showTyped = (value: Typed, quantity: QuantityId): string => {
  const { symbol } = unitOf(quantity, value.unit);
  if (symbol === '' || NAMES_ITS_UNIT.test(value.typed)) return value.typed;
  if (symbol.startsWith('/')) return value.typed.includes('/') ? `${value.typed} in` : `${value.typed}${symbol}`;
  return symbol === '°' ? `${value.typed}${symbol}` : `${value.typed} ${symbol}`;
};
