import { useMemo } from 'react';
import { followedSpot, type WetThroughTime, wetTrendPlot } from '../../../../src/drawing';
import { kindById } from '../../../../src/entries';
import type { Leak, Trend } from '../../../../src/plan';
import { type CivilDay, lastDay, parseWhen, type Typed } from '../../../../src/units';
import { useDesk } from '../desk';
import { type LogLine, useEveryLine } from '../logbook-lines';
import { Picture } from '../picture';
import { useWidth } from '../use-width';

const WORD: Readonly<Record<Trend['word'], string>> = { drying: 'Drying', wetting: 'Getting wetter', dry: 'Dry', watch: 'Not yet to be told', 'too-few': 'Too few readings' };

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

/** The followed spot through time, with what happened to it meanwhile. */
export const WetTrend = ({ leak }: { readonly leak: Leak }) => {
  const { overview } = useDesk();
  const [frame, width] = useWidth<HTMLDivElement>(880, 20);
  const lines = useEveryLine();
  const spot = followedSpot(leak);
  const drawing = useMemo(() => {
    const trend = spot?.trend;
    if (!trend) return undefined;
    const all = lines ?? [];
    const days = [...(trend.earlier ?? []), ...trend.points].map((p) => p.day);
    const since = Math.min(...days) - 30;
    return wetTrendPlot({
      title: 'Points above the dry places of the day',
      points: trend.points,
      ...(trend.earlier ? { earlier: trend.earlier } : {}),
      ...(trend.slope_per_d === undefined ? {} : { slope_per_d: trend.slope_per_d }),
      ...(trend.interval_per_d === undefined ? {} : { interval_per_d: trend.interval_per_d }),
      word: WORD[trend.word],
      ...(trend.need === undefined ? {} : { need: `Need ${trend.need} more ${trend.need === 1 ? 'reading' : 'readings'}` }),
      why: trend.because.text,
      rains: rainsOf(all).filter((r) => r.day >= since),
      repairs: repairsOf(leak, all),
      covers: coversOf(all).filter((c) => c.to >= since),
      to: overview.plan.on,
      width,
      height: 240,
    });
  }, [spot, leak, lines, overview.plan.on, width]);
  if (!spot || !drawing) return null;
  return (
    <figure className="water-trend" ref={frame}>
      <figcaption>
        <h2>Ringed spot, points above the dry places of the day</h2>
      </figcaption>
      <Picture drawing={drawing} />
    </figure>
  );
};
