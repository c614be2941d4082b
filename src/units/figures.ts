import { type Quantity, type Unit, unitOf } from './quantities';

/** What a piece of text says as a number in one unit; or why it cannot be taken. */
export type Figure =
  | { readonly ok: true; readonly figure: number }
  | { readonly ok: false; readonly why: 'not-a-number' | 'two-meanings' }
  | { readonly ok: false; readonly why: 'other-unit'; readonly unit: Unit };

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
/** `1,234` is 1234 to one reader and 1.234 to another; `0,234` and `12,5` have one meaning only. */
const TWO_MEANINGS = /^[+-]?[1-9]\d{0,2},\d{3}$/;
const COMMA_GROUPS = /^[+-]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/;
const SPACE_GROUPS = /^[+-]?[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?$/;
const FRACTION = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/;
const FEET_INCHES = /^(\d+)\s*(?:ft|'|′|-)\s*(?:(\S.*?)\s*(?:in|"|″)?)?$/i;
const INCHES_ONLY = /^(\S.*?)\s*(?:in|"|″)$/i;
const THIRTY_SECONDS = /^(\d+(?:[.,]\d+)?)\s*\/\s*32$/;

const plain = (text: string): number => Number(text.replace(',', '.'));

const number = (t: string): number | undefined => {
  if (NUMBER.test(t)) return plain(t);
  if (SPACE_GROUPS.test(t)) return plain(t.replaceAll(' ', ''));
  return COMMA_GROUPS.test(t) ? Number(t.replaceAll(',', '')) : undefined;
};

/** `6`, `6.5`, `3/8`, `6 3/8`. */
const inches = (t: string): number | undefined => {
  const f = FRACTION.exec(t);
  if (f) return Number(f[3]) > 0 ? Number(f[1] ?? 0) + Number(f[2]) / Number(f[3]) : undefined;
  return number(t);
};

const feet = (t: string): number | undefined => {
  const whole = inches(t);
  if (whole !== undefined) return whole;
  const m = FEET_INCHES.exec(t);
  if (m) {
    const rest = m[2] === undefined ? 0 : inches(m[2]);
    // Twelve inches and more beside feet is a slip of the finger.
    return rest !== undefined && rest >= 0 && rest < 12 ? Number(m[1]) + rest / 12 : undefined;
  }
  const only = INCHES_ONLY.exec(t);
  const rest = only?.[1] === undefined ? undefined : inches(only[1]);
  return rest === undefined ? undefined : rest / 12;
};

const thirtySeconds = (t: string): number | undefined => {
  const m = THIRTY_SECONDS.exec(t);
  return m?.[1] === undefined ? number(t) : plain(m[1]);
};

/** Units with a way of writing of their own. */
const READERS: Readonly<Record<string, (t: string) => number | undefined>> = { ft: feet, in: inches, '32in': thirtySeconds };

/** The same sign and the same space, however the phone's keyboard writes them. */
const clean = (text: string): string =>
  text
    .trim()
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/^[\u2212\u2013]/, '-');

const names = (unit: Unit): readonly string[] => [unit.symbol, unit.id, unit.symbol.replace('°', '')].map((n) => n.toLowerCase()).filter((n) => n !== '' && !n.startsWith('/'));

/** The figure before a unit's name, if the text ends in one: `80 psi`, `17.5%`. */
const before = (t: string, unit: Unit): string | undefined => {
  const name = names(unit).find((n) => t.toLowerCase().endsWith(n));
  const rest = name === undefined ? undefined : t.slice(0, -name.length).trim();
  return rest !== undefined && /\d$/.test(rest) ? rest : undefined;
};

/**
 * Reads a figure as people type it: `17.5`, `17,5`, `1 234`, `−3`, `80 psi`; feet and inches as `24 ft 6 in`, `24' 6 1/2"`, `24-6`;
 * inches as `3/8` or `1 1/2`; tread as `4/32`.
 *
 * @param text      as typed
 * @param quantity  what is asked for
 * @param unit      the id of the unit that stands beside the field
 * @returns         the figure in that unit; or that it is no number, has two meanings, or names another unit
 */
export const readFigure = (text: string, quantity: Quantity, unit: string): Figure => {
  const t = clean(text);
  const own = unitOf(quantity.id, unit);
  const read = READERS[unit] ?? number;
  if (TWO_MEANINGS.test(before(t, own) ?? t)) return { ok: false, why: 'two-meanings' };
  const direct = read(t);
  if (direct !== undefined) return { ok: true, figure: direct };
  const bare = before(t, own);
  const figure = bare === undefined ? undefined : read(bare);
  // The longer name first, so that `kPa` is not taken for `Pa`.
  const other = [...quantity.units].sort((a, b) => b.symbol.length - a.symbol.length).find((u) => before(t, u) !== undefined && number(before(t, u) ?? '') !== undefined);
  if (figure !== undefined && (other === undefined || other.id === unit)) return { ok: true, figure };
  if (other !== undefined && other.id !== unit) return { ok: false, why: 'other-unit', unit: other };
  return { ok: false, why: 'not-a-number' };
};
