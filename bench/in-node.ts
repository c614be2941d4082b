import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '../journeys/browser';
import { kinds } from '../src/entries';
import { advance, fold, type Line, writeLogbook } from '../src/logbook';
import { planAfter } from '../src/plan';
import { blankRig } from '../src/rig';
import { dayOf } from '../src/units';
import { entryRanking } from './entry-ranking';
import { LONG_RIG, longLogbook } from './long-logbook';
import { mapGrid } from './map-grid';
import { ms, type Row } from './table';
import { interleaved, summary, type Timing } from './timing';
import { weatherRow } from './weather-windows';

const ON = dayOf(2026, 10, 4);
const blank = blankRig(LONG_RIG);
const range = (t: Timing): string => `${ms(t.median)} (${ms(t.least)} to ${ms(t.most)})`;

/** Fold, judge and plan of ten years, against parsing the same lines as JSON. */
const wholeLogbook = (lines: readonly Line[]): Row => {
  const texts = lines.map((l) => l.text);
  const times = interleaved(
    {
      plan: () => {
        const state = fold(kinds, blank, lines);
        planAfter(undefined, state.subject, state, ON);
      },
      parse: () => texts.map((t) => JSON.parse(t) as unknown),
    },
    15,
  );
  const { plan, parse } = times as { readonly plan: Timing; readonly parse: Timing };
  return {
    what: `fold, judge and plan of ${lines.length} entries, 150 stations`,
    goal: '50 ms',
    reached: range(plan),
    ratio: `${(plan.median / parse.median).toFixed(1)} × parsing the same lines as JSON`,
    met: plan.median <= 50,
  };
};

/** One more entry, again and again, on the running book. */
const oneMore = (lines: readonly Line[]): Row => {
  const last = lines.slice(-200);
  let book = advance(kinds, blank, undefined, lines.slice(0, -200));
  let planned = planAfter(undefined, book.state.subject, book.state, ON);
  const times = last.map((line) => {
    const since = performance.now();
    book = advance(kinds, blank, book, [line]);
    planned = planAfter(planned, book.state.subject, book.state, ON);
    return performance.now() - since;
  });
  const whole = interleaved({ all: () => planAfter(undefined, book.state.subject, fold(kinds, blank, lines), ON) }, 5)['all'];
  const t = summary(times);
  return {
    what: 'after one more entry',
    goal: '5 ms',
    reached: range(t),
    ratio: `${(t.median / (whole?.median ?? Number.NaN)).toFixed(2)} × doing all anew`,
    met: t.median <= 5,
  };
};

/** `seamward verify` of a long file: time, and peak memory against a file a tenth as long. */
const verifyFile = (): readonly Row[] => {
  const folder = mkdtempSync(join(tmpdir(), 'seamward-verify-'));
  try {
    const run = (count: number): { readonly took: number; readonly peak_mb: number; readonly hash: number } => {
      const path = join(folder, `${count}.jsonl`);
      writeFileSync(path, writeLogbook(longLogbook(count)));
      const since = performance.now();
      const done = spawnSync(
        process.execPath,
        [
          '-e',
          `process.argv.splice(1,0,'seamward');process.on('exit',()=>process.stderr.write('peak '+process.resourceUsage().maxRSS));import(${JSON.stringify(join(root, 'dist/cli/main.js'))})`,
          'verify',
          path,
        ],
        { encoding: 'utf8' },
      );
      const took = performance.now() - since;
      if (done.status !== 0) throw new Error(`verify failed: ${done.stdout}${done.stderr}`);
      const hashSince = performance.now();
      createHash('sha256').update(readFileSync(path)).digest();
      return { took, peak_mb: Number(/peak (\d+)/.exec(done.stderr)?.[1]) / 1024, hash: performance.now() - hashSince };
    };
    const short = run(10_000);
    const long = run(100_000);
    return [
      {
        what: 'verify of 100,000 entries, with the start of Node',
        goal: '2 s',
        reached: ms(long.took),
        ratio: `${(long.took / long.hash).toFixed(1)} × one SHA-256 of the same file`,
        met: long.took <= 2000,
      },
      {
        what: 'memory of that verify',
        goal: 'flat',
        reached: `${Math.round(long.peak_mb)} MB at its peak`,
        ratio: `${(long.peak_mb / short.peak_mb).toFixed(2)} × that of 10,000 entries`,
        met: long.peak_mb / short.peak_mb < 1.5,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
};

export const inNode = (): readonly Row[] => {
  const lines = longLogbook(5000);
  return [wholeLogbook(lines), oneMore(lines), mapGrid(), ...entryRanking(), weatherRow(), ...verifyFile()];
};
