import type { Because } from '../finding';
import type { LeakTrace } from './leak';
import { pointsOn, showOn } from './scales';
import { DRY_REFERENCE, PRACTICE } from './sources';
import type { Weighed } from './yardsticks';

/** From here the trade calls in a professional: moisture evident, remedial work. [kg/kg] */
const EVIDENT = 0.25;
const SAME = 1e-9;

/** The wettest of the places as they read last: by the band where there is one, else by how far above the dry places. */
export const worstOf = (trace: LeakTrace): Weighed | undefined => {
  const latest = trace.leak.spots.flatMap((s) => {
    const readings = s.readings.flatMap((r) => trace.weighed.get(r.entry) ?? []);
    return readings.findLast((w) => w.state !== 'not-known') ?? [];
  });
  return wettest(latest);
};

export const wettest = (weighed: readonly Weighed[]): Weighed | undefined =>
  weighed.toSorted(
    (a, b) =>
      Number(b.yardsticks.bands !== undefined) - Number(a.yardsticks.bands !== undefined) ||
      (b.reading.value ?? 0) - (a.reading.value ?? 0) ||
      (a.reading.entry < b.reading.entry ? -1 : 1),
  )[0];

/** Wet enough that what carries may be going: pin meter in wood, 25 % and more. */
export const isStructural = (worst: Weighed | undefined): boolean => worst?.yardsticks.bands !== undefined && (worst.reading.value ?? 0) >= EVIDENT - SAME;

/** In one sentence what stands out of its surroundings. */
export const summary = (trace: LeakTrace): Because => {
  const wet = trace.wet.flatMap((s) => trace.weighed.get(s.entry.id) ?? []);
  const places = trace.leak.spots.length;
  const most = wettest(wet);
  const entries = most ? [most.reading.entry] : [trace.leak.id];
  if (!most) return { text: 'Water shows to eye or hand.', entries, source: PRACTICE };
  const by = most.yardsticks.reference;
  const more = by ? `, ${pointsOn(most.reading.scale, by.excess)} above the dry places of that day` : '';
  const where = places === 1 ? 'One place' : `${places} places`;
  return {
    text: `${where} wetter than the surroundings explain; the wettest read ${showOn(most.reading.scale, most.reading.value ?? most.reading.as_read)}${more}.`,
    entries: by ? [...new Set([...entries, ...by.reference.entries])] : entries,
    source: DRY_REFERENCE,
  };
};
