import { type Share, share } from '../../units';
import { type ForecastHour, HOUR_MS } from '../forecast/forecast-types';
import type { Conditions } from './windows-types';

/** Rain over the hours of a forecast, ready for many spans of them. */
export type Rain = {
  readonly at: (hour: number) => 'rain' | 'dry' | 'unknown';
  /** Over the hours from one up to another, not counting it; hours outside the forecast are unknown. */
  readonly over: (from: number, to: number) => 'rain' | 'dry' | 'unknown';
  /** The largest chance over those hours. */
  readonly largest: (from: number, to: number) => Share | undefined;
  /** Chance that it rains at all over them: no less than the largest, no more than if each spell came by itself. */
  readonly chance: (from: number, to: number) => { readonly least: Share; readonly most: Share };
};

/**
 * A chance is told for an interval, and the same interval stands in every one of its hours: equal hours that follow each other are one
 * spell. The longest interval for which such chances are told is half a day (from memory, unconfirmed). [h]
 */
const SPELL_MOST = 12;

const countOf = (marks: readonly boolean[]): readonly number[] => {
  const sums = [0];
  for (const m of marks) sums.push((sums.at(-1) ?? 0) + (m ? 1 : 0));
  return sums;
};

/**
 * @param dry_since  since when it has not rained here, told by a person: hours before the forecast, and its own up to now, are then dry
 * @param now        hours that end by then may be told dry by a person
 */
export const rainOver = (hours: readonly ForecastHour[], { rain_chance, rain_amount }: Conditions, now: number, dry_since: number | undefined): Rain => {
  const start = hours[0]?.at ?? 0;
  const toldDry = (at: number): boolean => dry_since !== undefined && at >= dry_since && at + HOUR_MS <= now;
  const state = hours.map((h) => {
    if (toldDry(h.at)) return 'dry';
    if ((h.rain_chance ?? 0) > rain_chance || (rain_amount !== undefined && (h.rain ?? 0) > rain_amount)) return 'rain';
    return h.rain_chance === undefined || (rain_amount !== undefined && h.rain === undefined) ? 'unknown' : 'dry';
  });
  const [rains, unknowns] = [countOf(state.map((s) => s === 'rain')), countOf(state.map((s) => s === 'unknown'))];
  const within = (sums: readonly number[], from: number, to: number): number => (sums[Math.min(to, hours.length)] ?? 0) - (sums[Math.max(0, Math.min(from, hours.length))] ?? 0);
  const outside = (from: number, to: number): boolean => {
    if (to > hours.length) return true;
    for (let i = from; i < Math.min(0, to); i += 1) if (!toldDry(start + i * HOUR_MS)) return true;
    return false;
  };
  const largest = (from: number, to: number): Share | undefined => {
    let most: number | undefined;
    for (let i = Math.max(0, from); i < Math.min(to, hours.length); i += 1) {
      const p = hours[i]?.rain_chance;
      if (p !== undefined && (most === undefined || p > most)) most = p;
    }
    return most === undefined ? undefined : share(most);
  };
  return {
    at: (hour) => state[hour] ?? 'unknown',
    over: (from, to) => (from >= to ? 'dry' : within(rains, from, to) > 0 ? 'rain' : outside(from, to) || within(unknowns, from, to) > 0 ? 'unknown' : 'dry'),
    largest,
    chance: (from, to) => {
      let [dry, spell, last] = [1, 0, -1];
      for (let i = Math.max(0, from); i < Math.min(to, hours.length); i += 1) {
        const p = hours[i]?.rain_chance ?? 0;
        spell = p === last && spell < SPELL_MOST ? spell + 1 : 1;
        if (spell === 1) dry *= 1 - p;
        last = p;
      }
      return { least: largest(from, to) ?? share(0), most: share(1 - dry) };
    },
  };
};
