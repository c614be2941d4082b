import type { Entry } from '../terms';
import { type Instant, parseInstant, parseWhen, showDay, type When } from '../units';
import type { Settled } from './amendments';
import type { Chains, Known } from './known-order';
import type { ClockDoubt } from './state';

/**
 * A device clock that contradicts what was known when. Clocks decide nothing here, so nothing is re-dated: the doubt is shown,
 * and a correction that states when it was so answers it. The tolerances are our own.
 */
const HOUR_MS = 3_600_000;
/** One clock may step back this far between two of its own entries. [ms] */
const OWN_TOLERANCE_MS = HOUR_MS;
/** Two clocks may differ this much: a day covers a wrong time zone. [ms] */
const OTHER_TOLERANCE_MS = 24 * HOUR_MS;
/** A clock that shows an earlier year was never set: devices start in 1970, 1980 or 2000. Our own line. */
const EARLIEST_YEAR = 2010;

const dayText = (text: string): string => {
  const when = parseWhen(text);
  return when === undefined ? text : showDay(when.form === 'instant' ? when.day : when.to);
};

const start = (when: When): Instant | number => (when.form === 'instant' ? when.at : when.from * 24 * HOUR_MS);

/** The entries that were new to a device when it wrote this one: its own previous, and what it had since taken in from others. */
const newBefore = (known: Known, chains: Chains): readonly Known[] => {
  const { entry } = known.line;
  const at = (device: string, counter: number): Known | undefined => {
    const chain = chains.get(device);
    const guess = chain?.[counter - 1];
    return guess?.line.entry.counter === counter ? guess : chain?.find((k) => k.line.entry.counter === counter);
  };
  const previous = at(entry.device, entry.counter - 1);
  const moved = entry.heads.filter((h) => !previous?.line.entry.heads.some((p) => p.device === h.device && p.counter === h.counter));
  return [previous, ...moved.map((h) => at(h.device, h.counter))].filter((k) => k !== undefined);
};

/** What is doubtful about one entry's times, at most one sentence. */
export const clockDoubt = (known: Known, settled: Settled, chains: Chains): ClockDoubt | undefined => {
  if (settled.withdrawn || settled.dated) return undefined;
  const { entry } = known.line;
  const { recorded } = known;
  const says = `The clock of the device said ${dayText(entry.recorded_at)} when this was written`;
  const ask = 'Say when it was.';
  if (Number(entry.recorded_at.slice(0, 4)) < EARLIEST_YEAR) return { entry: entry.id, sentence: `${says}, which cannot be. ${ask}` };
  for (const before of newBefore(known, chains)) {
    const other = before.line.entry;
    const tolerance = other.device === entry.device ? OWN_TOLERANCE_MS : OTHER_TOLERANCE_MS;
    if (recorded < before.recorded - tolerance)
      return { entry: entry.id, sentence: `${says}, but it was written after an entry of ${dayText(other.recorded_at)}. One of the two clocks was wrong. ${ask}` };
  }
  if (start(settled.when) > recorded + OTHER_TOLERANCE_MS)
    return { entry: entry.id, sentence: `${says}, but it tells of ${dayText(settled.observed_at)}, which had not come yet. ${ask}` };
  return undefined;
};

/** Entries that claim to have been recorded after now. Asked by whoever has a clock; the fold has none. */
export const fromTheFuture = (entries: Iterable<Entry>, now: Instant): readonly ClockDoubt[] => {
  const doubts: ClockDoubt[] = [];
  for (const entry of entries) {
    const recorded = parseInstant(entry.recorded_at);
    if (recorded !== undefined && recorded > now + OTHER_TOLERANCE_MS)
      doubts.push({ entry: entry.id, sentence: `This was recorded on ${dayText(entry.recorded_at)}, which has not come yet. The clock of one device is wrong. Say when it was.` });
  }
  return doubts;
};
