import type { Clock, Closed, Conditions, Gate, JobWindows, Turn, Window, Windows } from '../plan';
import type { Rig } from '../rig';
import { type CivilDay, civilDay, dateOf, type Instant, monthName, type Preferences, show, showDay } from '../units';
import { sourceLines, sourceNumbers, wrap } from './lines';

/** What the words need beside the windows themselves. */
export type WindowsTold = {
  readonly now: Instant;
  readonly clock: Clock;
  readonly conditions: Conditions;
  readonly departure?: CivilDay;
  /** What was read, and when it was made. */
  readonly source: string;
  readonly issued?: Instant;
};

type Words = { readonly clock: Clock; readonly preferences: Preferences; readonly conditions: Conditions };

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const WEEKDAYS = ['Thu', 'Fri', 'Sat', 'Sun', 'Mon', 'Tue', 'Wed'] as const;

const wall = (at: Instant, clock: Clock): { readonly day: CivilDay; readonly time: string } => {
  const minutes = Math.floor(at / MINUTE_MS) + clock(at);
  const day = Math.floor(minutes / 1440);
  const rest = minutes - day * 1440;
  const two = (n: number): string => String(n).padStart(2, '0');
  return { day: civilDay(day), time: `${two(Math.floor(rest / 60))}:${two(rest % 60)}` };
};

const dayWords = (day: CivilDay): string => {
  const d = dateOf(day);
  return `${WEEKDAYS[((day % 7) + 7) % 7]} ${d.day} ${monthName(d.month).slice(0, 3)}`;
};

const time = (at: Instant, words: Words): string => wall(at, words.clock).time;
const moment = (at: Instant, words: Words): string => `${dayWords(wall(at, words.clock).day)} ${time(at, words)}`;
const span = (from: Instant, to: Instant, words: Words): string => `${time(from, words)} to ${time(to, words)}`;

const percent = (share: number): number => Math.round(share * 100);
const chance = ({ least, most }: Window['fails']): string => (percent(least) === percent(most) ? `${percent(least)} %` : `${percent(least)} to ${percent(most)} %`);

const temperature = (k: number | undefined, { preferences }: Words): string => (k === undefined ? 'not known' : show(k, 'temperature', preferences));
const difference = (k: number, { preferences }: Words): string => show(k, 'temperature-difference', preferences);
const speed = (v: number | undefined, { preferences }: Words): string => (v === undefined ? 'not known' : show(v, 'speed', preferences));

/** Two temperatures as a span, or one where both read alike. */
const between = (low: number | undefined, high: number | undefined, words: Words): string => {
  const [a, b] = [temperature(low, words), temperature(high, words)];
  return a === b ? a : `${a} to ${b}`;
};

/** `down to 37 °F; 39 °F`, or `just under the 39 °F` where both read alike. */
const past = (by: string, just: string, is: string, limit: string): string => (is === limit ? `${just} the ${limit}` : `${by} ${is}; ${limit}`);

type Say = (closed: Closed, found: JobWindows, words: Words) => string;

const SAYS: Readonly<Record<Gate, Say>> = {
  past: () => 'past',
  missing: ({ lacks }) => (lacks.length > 0 ? `the forecast lacks ${lacks.join(', ')}` : 'weather beyond what the laws of sun and sky cover'),
  indoors: () => 'indoors: the forecast says nothing of the air there',
  dark: () => 'dark',
  rain: ({ rain_chance }) => `rain (chance up to ${percent(rain_chance ?? 0)} %)`,
  'too-cold': ({ coldest }, { need }, words) => `too cold (surface ${past('down to', 'just under', temperature(coldest, words), temperature(need.least, words))} needed)`,
  dew: ({ margin, dew_point }, _, words) =>
    (margin ?? 0) <= 0
      ? `dew (surface ${difference(-(margin ?? 0), words)} below the dew point, ${temperature(dew_point, words)})`
      : `too near the dew point, ${temperature(dew_point, words)} (surface ${difference(margin ?? 0, words)} above it; ${difference(words.conditions.dew_margin, words)} needed)`,
  'too-warm': ({ warmest }, { need }, words) => `too warm (surface ${past('up to', 'just over', temperature(warmest, words), temperature(need.most, words))} at most)`,
  'too-close': ({ coldest, warmest }, _, words) => `too close to say (surface ${between(coldest, warmest, words)}): measure it`,
  wind: ({ wind, gust }, _, words) => `wind (${speed(wind, words)}${gust === undefined ? '' : `, gusts ${speed(gust, words)}`})`,
  'not-dry-before': (_, { need }) => `rain within the ${need.dry_before_h} h before`,
  'before-unknown': (_, { need }) => `nobody says whether it rained in the ${need.dry_before_h} h before`,
  'rain-after': ({ rain_chance }, { need }) => `rain within the ${need.rain_free_h} h after (chance up to ${percent(rain_chance ?? 0)} %)`,
  'after-unknown': (_, { need }) => `rain in the ${need.rain_free_h} h after is not known`,
  departure: (_, { need }) => `would not be cured before you leave (${Math.round(need.cure_h / 24)} days)`,
};

/** The reason alone, for the sentence that says why there is no window. */
const PLAIN: Readonly<Record<Gate, string>> = {
  past: 'all of it is past',
  missing: 'the forecast lacks what is needed',
  indoors: 'it stands indoors, where the forecast says nothing of the air',
  dark: 'dark',
  rain: 'rain',
  'too-cold': 'too cold',
  dew: 'dew, or too near it',
  'too-warm': 'too warm',
  'too-close': 'too close to a limit to say',
  wind: 'too windy',
  'not-dry-before': 'rain shortly before',
  'before-unknown': 'rain shortly before is not known',
  'rain-after': 'rain before it may get wet',
  'after-unknown': 'rain before it may get wet is not known',
  departure: 'not cured before you leave',
};

const noneWords = ({ none }: JobWindows, words: Words): string => {
  if (!none) return '';
  const until = none.until === undefined ? '' : ` until ${moment(none.until, words)}`;
  const then = none.then === undefined ? '' : `; otherwise mostly ${PLAIN[none.then]}`;
  return `No window in this forecast: ${PLAIN[none.gate]}${until}${then}.`;
};

const windowWords = (w: Window, { need }: JobWindows, words: Words): string => {
  const surface = w.coldest === undefined ? '' : `, surface ${between(w.coldest, w.warmest, words)}, ${difference(w.margin ?? 0, words)} or more above the dew point`;
  const wind = w.wind === undefined ? '' : `, wind to ${speed(w.wind, words)}`;
  return `Open ${dayWords(w.day)} ${span(w.starts, w.ends, words)}${surface}${wind}. Chance that rain spoils it${need.rain_free_h > 0 ? `, to ${need.rain_free_h} h after` : ''}: ${chance(w.fails)}.`;
};

const byDay = (closed: readonly Closed[]): ReadonlyMap<CivilDay, readonly Closed[]> => {
  const days = new Map<CivilDay, Closed[]>();
  for (const c of closed) days.set(c.day, [...(days.get(c.day) ?? []), c]);
  return days;
};

/** The plainest reasons of an hour: rain needs no other, what follows from another is left out, and two are enough. */
const plainest = (gates: readonly Gate[]): readonly Gate[] => {
  if (gates.includes('rain')) return ['rain'];
  const surface = gates.some((g) => g === 'too-cold' || g === 'dew' || g === 'too-warm');
  return gates.filter((g) => !(surface && g === 'too-close')).slice(0, 2);
};

const smaller = <T extends number>(a: T | undefined, b: T | undefined): T | undefined => (a === undefined || (b !== undefined && b < a) ? b : a);
const larger = <T extends number>(a: T | undefined, b: T | undefined): T | undefined => (a === undefined || (b !== undefined && b > a) ? b : a);

/** Only what is there: a figure that neither has is left out. */
const present = <T extends object>(figures: T): { [K in keyof T]?: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(figures).filter(([, v]) => v !== undefined)) as { [K in keyof T]?: Exclude<T[K], undefined> };

const joined = (a: Closed, b: Closed): Closed => {
  const damper = (b.margin ?? Number.POSITIVE_INFINITY) < (a.margin ?? Number.POSITIVE_INFINITY) ? b : a;
  return {
    ...a,
    ends: b.ends,
    lacks: [...new Set([...a.lacks, ...b.lacks])],
    ...present({
      coldest: smaller(a.coldest, b.coldest),
      warmest: larger(a.warmest, b.warmest),
      margin: damper.margin,
      dew_point: damper.dew_point,
      wind: larger(a.wind, b.wind),
      gust: larger(a.gust, b.gust),
      rain_chance: larger(a.rain_chance, b.rain_chance),
    }),
  };
};

/** Spans that follow each other and are told with the same reasons are told as one. */
const together = (closed: readonly Closed[]): readonly Closed[] => {
  const told: Closed[] = [];
  for (const c of closed) {
    const last = told.at(-1);
    const same = last && !last.too_short && !c.too_short && last.ends === c.starts && plainest(last.gates).join() === plainest(c.gates).join();
    if (last && same) told[told.length - 1] = joined(last, c);
    else told.push(c);
  }
  return told;
};

const closedWords = (found: JobWindows, words: Words): readonly string[] =>
  [...byDay(found.closed)].map(([day, all]) => {
    const spans = together(all).map(
      (c) =>
        `${span(c.starts, c.ends, words)} ${
          c.too_short
            ? 'too short for the work'
            : plainest(c.gates)
                .map((g) => SAYS[g](c, found, words))
                .join(', ')
        }`,
    );
    return wrap(`Closed ${dayWords(day)}: ${spans.join('; ')}.`, 4);
  });

const turnWords = (turn: Turn, names: ReadonlyMap<string, string>, words: Words): string => {
  const where = turn.station === undefined ? '' : `${names.get(turn.station) ?? turn.station}: `;
  const prepares = turn.lays > turn.starts ? `${time(turn.starts, words)} strip, clean and prime; ${time(turn.lays, words)} seal` : `${time(turn.starts, words)} begin`;
  const after = [
    ...(turn.rain_free_until === undefined ? [] : [`keep rain off until ${moment(turn.rain_free_until, words)}`]),
    ...(turn.travel_from === undefined ? [] : [`do not travel before ${moment(turn.travel_from, words)}`]),
  ].join('; ');
  return wrap(`${where}${turn.title}. ${prepares}; done ${time(turn.ends, words)}${after === '' ? '' : `; ${after}`}. Chance that rain spoils it: ${chance(turn.fails)}.`, 2);
};

const ageWords = ({ issued, now }: WindowsTold): string => {
  if (issued === undefined) return '';
  const hours = Math.round((now - issued) / HOUR_MS);
  return hours < 1 ? ', made within the last hour' : hours < 48 ? `, made ${hours} h ago` : `, made ${Math.round((now - issued) / DAY_MS)} days ago`;
};

/** Jobs whose hours are the same are told once. */
const alike = (jobs: readonly JobWindows[]): readonly (readonly JobWindows[])[] => {
  const groups = new Map<string, JobWindows[]>();
  for (const j of jobs) {
    const key = JSON.stringify([j.windows, j.closed, j.none, j.need.product]);
    groups.set(key, [...(groups.get(key) ?? []), j]);
  }
  return [...groups.values()];
};

/** The weather windows as plain text: the best day, each job's windows, and why the other hours are closed. */
export const windowsText = (windows: Windows, rig: Rig, told: WindowsTold, preferences: Preferences): string => {
  const words: Words = { clock: told.clock, preferences, conditions: told.conditions };
  const names = new Map(rig.stations.map((s) => [s.id as string, s.name]));
  const nameOf = (j: JobWindows): string => (j.station === undefined ? j.title : `${names.get(j.station) ?? j.station}: ${j.title}`);
  const sources = sourceNumbers();
  const lines = [
    `${rig.name === '' ? 'Rig' : rig.name}: weather windows from ${moment(told.now, words)}`,
    wrap(`${told.source}${ageWords(told)}; it ends ${moment(windows.ends, words)}.`, 0),
  ];
  if (windows.over) return `${[...lines, 'The forecast lies in the past: nothing in it is ahead. Take a new one.'].join('\n')}\n`;
  if (windows.hours_lacking > 0) lines.push(wrap(`${windows.hours_lacking} of ${windows.hours} hours ahead lack something; no window is taken from them.`, 0));
  const { rain_chance, rain_amount } = told.conditions;
  const amount = rain_amount === undefined ? '' : `, or more than ${show(rain_amount, 'small-length', preferences)} in an hour`;
  lines.push(wrap(`Rain counts from a chance above ${percent(rain_chance)} %${amount}.`, 0));
  if (told.departure !== undefined) lines.push(`You leave on ${showDay(told.departure)}.`);
  if (windows.jobs.length === 0) lines.push('', 'No job of your own waits for the weather.');
  if (windows.best) {
    lines.push('', `Best day: ${dayWords(windows.best.day)}, ${windows.best.turns.length} of ${windows.jobs.length} ${windows.jobs.length === 1 ? 'job' : 'jobs'}`);
    lines.push(...windows.best.turns.map((t) => turnWords(t, names, words)));
  } else if (windows.jobs.length > 0) lines.push('', 'No day of this forecast has a window for any job.');
  alike(windows.jobs).forEach((group, i) => {
    const [found] = group;
    if (!found) return;
    lines.push('', ...group.map((j) => wrap(`${i + 1}. ${nameOf(j)}`, 2)));
    if (found.need.product !== undefined) lines.push(wrap(`${found.need.product} ${found.need.sources.map(sources.of).join(' ')}`, 4));
    lines.push(...found.windows.map((w) => wrap(windowWords(w, found, words), 4)), ...(found.none ? [wrap(noneWords(found, words), 4)] : []), ...closedWords(found, words));
  });
  if (windows.not_weighed.length > 0)
    lines.push(
      '',
      wrap(
        `${windows.not_weighed.length} other ${windows.not_weighed.length === 1 ? 'job is' : 'jobs are'} not weighed against the weather: inside, from the ground with nothing that must stick, or at no station.`,
        0,
      ),
    );
  lines.push('', wrap('Look before you climb: a wet or frosted roof is slippery, and a ladder is not for gusts. The product’s own sheet and the rig’s manual come first.', 0));
  lines.push('', 'What is taken', ...windows.assumes.map((a) => wrap(a, 2)), ...sourceLines(sources));
  return `${lines.join('\n')}\n`;
};
