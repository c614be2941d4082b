import type { Plan, Windows } from '../plan';
import type { Rig } from '../rig';
import { civilDay, isoDay } from '../units';
import { leanPlan, leanWater } from './water-document';

/** Format and version of the plan as a file. A change that old readers would misread gets a new version. */
const FORMAT = 'seamward-plan';
const WATER_FORMAT = 'seamward-water';
const WINDOWS_FORMAT = 'seamward-windows';
const VERSION = 1;

/** Parts of a plan that hold a civil day. */
const DAYS: ReadonlySet<string> = new Set(['on', 'since', 'last_seen', 'due', 'closed', 'day', 'from', 'until']);

/** Decimals to which numbers are written: finer than any source, coarse enough to be the same on every machine. */
const DECIMALS = 6;

const rounded = (n: number): number => {
  if (!Number.isFinite(n)) throw new Error(`${n} cannot be written into a plan`);
  const r = Number(n.toFixed(DECIMALS));
  return r === 0 ? 0 : r;
};

/** The value with its keys in alphabetical order, days as text, numbers rounded, and nothing undefined. */
const canonical = (value: unknown, key: string): unknown => {
  if (typeof value === 'number') return DAYS.has(key) ? isoDay(civilDay(value)) : rounded(value);
  if (Array.isArray(value)) return value.map((v) => canonical(v, key));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value)
    .filter(([, v]) => v !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return Object.fromEntries(entries.map(([k, v]) => [k, canonical(v, k)]));
};

const document = (format: string, rig: Rig, part: string, content: unknown): string =>
  `${JSON.stringify({ format, version: VERSION, rig: canonical({ id: rig.id, name: rig.name, kind: rig.kind }, 'rig'), [part]: canonical(content, part) }, null, 2)}\n`;

/**
 * A plan as JSON text: the same plan gives the same bytes on the command line and in the browser.
 *
 * @returns  JSON in lines, keys in alphabetical order, days as `2026-05-03`, numbers rounded here and nowhere else, a line break at the end
 */
export const planDocument = (plan: Plan, rig: Rig): string => document(FORMAT, rig, 'plan', leanPlan(plan));

/** What is known of water alone, as the plan's own document tells it. */
export const waterDocument = (plan: Plan, rig: Rig): string => document(WATER_FORMAT, rig, 'water', { on: plan.on, ...leanWater(plan.water) });

/** Weather windows as JSON text: instants in milliseconds since 1970, temperatures in K, chances as shares. */
export const windowsDocument = (windows: Windows, rig: Rig): string => document(WINDOWS_FORMAT, rig, 'windows', windows);
