import type { WetThroughTime } from '../../../src/drawing';
import { kindById } from '../../../src/entries';
import type { Leak, Trend } from '../../../src/plan';
import { type CivilDay, lastDay, parseWhen, type Typed } from '../../../src/units';
import type { LogLine } from './every-line';

export const TREND_WORD: Readonly<Record<Trend['word'], string>> = {
  drying: 'Drying',
  wetting: 'Getting wetter',
  dry: 'Dry',
  watch: 'Not yet to be told',
  'too-few': 'Too few readings',
};

const dayOfLine = (l: LogLine): CivilDay | undefined => {
  const when = parseWhen(l.entry.observed_at);
  return when && lastDay(when);
};

const siOf = (v: unknown): number | undefined => (typeof v === 'object' && v !== null && 'si' in v ? (v as Typed).si : undefined);

const rainsOf = (lines: readonly LogLine[]): NonNullable<WetThroughTime['rains']> =>
  lines.flatMap((l) => {
    const day = dayOfLine(l);
    if (l.entry.kind !== 'rain-fell' || l.withdrawn || day === undefined) return [];
    const amount = siOf((l.body as { readonly amount?: unknown }).amount);
    return [{ day, ...(amount === undefined ? {} : { amount_m: amount }) }];
  });

const UNDER: Readonly<Record<string, string>> = { roofed: 'under a roof', covered: 'under a cover', indoors: 'indoors' };

const coversOf = (lines: readonly LogLine[]): NonNullable<WetThroughTime['covers']> =>
  lines.flatMap((l) => {
    const when = parseWhen(l.entry.observed_at);
    const words = UNDER[(l.body as { readonly cover?: string }).cover ?? ''];
    return l.entry.kind === 'stay' && !l.withdrawn && when?.form === 'span' && words !== undefined ? [{ from: when.from, to: when.to, words }] : [];
  });

const repairsOf = (leak: Leak, lines: readonly LogLine[]): NonNullable<WetThroughTime['repairs']> =>
  leak.repairs.flatMap((id) => {
    const line = lines.find((l) => l.entry.id === id);
    const day = line && dayOfLine(line);
    return line && day !== undefined ? [{ day, words: (kindById(line.entry.kind)?.title ?? line.entry.kind).toLowerCase() }] : [];
  });

/** Rain and cover so long before the first reading are shown with it. [d] */
const BEFORE_D = 30;

/** `Need 2 more readings`. */
export const needWords = ({ need }: Trend): string | undefined => (need === undefined ? undefined : `Need ${need} more ${need === 1 ? 'reading' : 'readings'}`);

/** One place of a leak through time, with what happened to the rig meanwhile. */
export const wetThroughTime = (leak: Leak, trend: Trend, lines: readonly LogLine[], to: CivilDay): WetThroughTime => {
  const since = Math.min(...[...(trend.earlier ?? []), ...trend.points].map((p) => p.day)) - BEFORE_D;
  const need = needWords(trend);
  return {
    title: 'Points above the dry places of the day',
    points: trend.points,
    ...(trend.earlier ? { earlier: trend.earlier } : {}),
    ...(trend.slope_per_d === undefined ? {} : { slope_per_d: trend.slope_per_d }),
    ...(trend.interval_per_d === undefined ? {} : { interval_per_d: trend.interval_per_d }),
    word: TREND_WORD[trend.word],
    ...(need === undefined ? {} : { need }),
    why: trend.because.text,
    rains: rainsOf(lines).filter((r) => r.day >= since),
    repairs: repairsOf(leak, lines),
    covers: coversOf(lines).filter((c) => c.to >= since),
    to,
  };
};
