import type { Leak, Panel, Spot, Water } from '../../../../src/plan';
import type { Rig } from '../../../../src/rig';
import { showDay } from '../../../../src/units';
import { count, upperFirst } from '../desk';

/** A chance as a person says it; the figure itself is in the worksheet. */
export const chanceWords = (p: number): string => {
  if (p >= 0.95) return 'more than 19 in 20';
  if (p >= 0.15) return `about ${Math.round(p * 10)} in 10`;
  if (p >= 0.04) return `about 1 in ${Math.round(1 / p)}`;
  return 'less than 1 in 25';
};

const STOP: Readonly<Record<Leak['stop']['state'], string>> = {
  open: 'Still coming in, as far as is known',
  repaired: 'Repaired, not yet shown to hold',
  stopped: 'Leak stopped',
  reopened: 'Came in again after the repair',
};
export const stopWords = (leak: Leak): string => STOP[leak.stop.state];

/** Settled for good: dry again, or another cause found. */
export const isSettled = (leak: Leak): boolean => (leak.stop.state === 'stopped' && leak.dryness.state === 'dry') || leak.other_causes.some((c) => c.state === 'it-is-this');

const RANK: readonly Leak['stop']['state'][] = ['reopened', 'open', 'repaired', 'stopped'];

/** What still comes in first, what is settled last. */
export const inOrder = (leaks: readonly Leak[]): readonly Leak[] =>
  [...leaks].sort((a, b) => Number(isSettled(a)) - Number(isSettled(b)) || RANK.indexOf(a.stop.state) - RANK.indexOf(b.stop.state) || b.since - a.since || (a.id < b.id ? -1 : 1));

/** Where a leak shows, on the shortest way: its station, or its face and side. */
export const leakPlace = (rig: Rig, leak: Leak): string => {
  const spot = leak.spots[0];
  if (!spot) return 'A wet place';
  const station = rig.stations.find((s) => s.id === spot.station);
  const face = rig.faces.find((f) => f.id === spot.face);
  const side = spot.side === 'inside' ? (face?.inside_name ?? 'Inside') : (face?.name ?? 'Outside');
  return station ? `${upperFirst(station.name)}${spot.side === 'inside' ? ', inside' : ''}` : side;
};

const METER: Readonly<Record<Panel['scale'], readonly [one: string, many: string]>> = {
  pin: ['pin reading', 'pin readings'],
  pinless: ['pinless reading', 'pinless readings'],
  relative: ['reading on a relative scale', 'readings on a relative scale'],
};

/** How many readings a map rests on and when they were taken. */
export const readingsWords = (panel: Panel, withMeter = true): string => {
  const latest = panel.spots.flatMap((s) => s.readings.slice(-1));
  if (latest.length === 0) return '';
  const days = latest.map((r) => r.day).sort((a, b) => a - b);
  const [from, to] = [days[0], days.at(-1)];
  if (from === undefined || to === undefined) return '';
  const [one, many] = METER[panel.scale];
  const when = from === to ? `on ${showDay(to, true)}` : `from ${showDay(from, true)} to ${showDay(to, true)}`;
  return `${count(latest.length, one, many)} ${when}${panel.meter === '' || !withMeter ? '' : `, ${panel.meter}`}`;
};

/** Figures of a scale, as they are spoken of. */
export const readWords = (panel: Panel, v: number): string => (panel.scale === 'relative' ? `${(v * 100).toFixed(0)} on the scale` : `${(v * 100).toFixed(1)} %`);

const STATE: Readonly<Record<Spot['state'], string>> = {
  wet: 'Wet',
  damp: 'Damp',
  dry: 'Dry',
  weather: 'Damp as the air is',
  condensation: 'Sweats',
  'not-known': 'Not known',
};
export const stateWords = (state: Spot['state']): string => STATE[state];

const NO_NUMBER: Readonly<Record<NonNullable<Spot['readings'][number]['no_number']>, string>> = {
  frozen: 'frozen',
  'surface-wet': 'surface wet',
  'no-wood': 'no wood behind',
  'beyond-meter': 'beyond what the meter tells',
};
export const noNumberWords = (why: NonNullable<Spot['readings'][number]['no_number']>): string => NO_NUMBER[why];

/** The panel on which a leak was metered: the one that holds most of its spots. */
export const panelOfLeak = (water: Water, leak: Leak): Panel | undefined => {
  const mine = new Set(leak.spots.map((s) => s.id));
  const shared = (p: Panel): number => p.spots.filter((s) => mine.has(s.id)).length;
  return [...water.panels].filter((p) => shared(p) > 0).sort((a, b) => shared(b) - shared(a))[0];
};

/** A sentence without its stop, for a title. */
export const asTitle = (sentence: string): string => sentence.replace(/\.$/, '');

/** One wall in the choice of walls, with the verdict it has. */
export const panelVerdict = (water: Water, panel: Panel): string => {
  const why = water.no_leak.find((n) => n.panel === panel.id)?.why;
  if (why !== undefined) return why === 'weather' ? 'damp as its air is' : 'sweats';
  const wet = panel.spots.filter((s) => s.state === 'wet' || s.state === 'damp').length;
  return wet > 0 ? count(wet, 'wet place', 'wet places') : 'no wet place';
};
