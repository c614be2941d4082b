import { accept, type CivilDay, civilDay, fromSi, isoDay, parseInstant, parseWhen, type QuantityId, type Refusal, type Result, readQuantity, refuse, type Typed } from '../units';
import { ANY_TEMPERATURE, span } from './span';

/** What a logger’s file says about the air, hour by hour, and the entry that is made of it. */
export type HourlyAir = {
  /** The days it covers, as `observed_at` of the entry. */
  readonly observed_at: string;
  /** Body of a `lived-air` entry: means over the hours that were measured, and the hours. */
  readonly body: {
    readonly temperature: Typed;
    readonly relative_humidity: Typed;
    readonly hours: { readonly from: string; readonly step_s: number; readonly temperature_k: readonly (number | null)[]; readonly relative_humidity: readonly (number | null)[] };
  };
  readonly hours_measured: number;
  /** Hours between the first and the last in which nothing was measured. */
  readonly hours_missing: number;
  readonly longest_gap_h: number;
  readonly sentence: string;
};

const HOUR_MS = 3_600_000;
/** A year and some days: more is not one season's air. */
const HOURS_MOST = 9000;
/** Enough to see what is wrong with a file; more of the same does not help. */
const SAID_MOST = 12;

const HUMIDITY = span('relative-humidity', 'percent', 0, 100);

const COLUMNS = 'time, temperature_c or temperature_f, relative_humidity_percent';

type Columns = { readonly separator: string; readonly time: number; readonly temperature: number; readonly unit: 'c' | 'f'; readonly humidity: number };
type Row = { readonly line: number; readonly at: number; readonly day: CivilDay; readonly temperature_k: number | undefined; readonly humidity: number | undefined };

const said = (line: number, path: string, code: string, expected: string, received: string, sentence: string): Refusal => ({
  code,
  path,
  expected,
  received,
  sentence: `Line ${line}: ${sentence}`,
});

const cellsOf = (line: string, separator: string): readonly string[] =>
  line.split(separator).map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );

const columnsOf = (header: string): Result<Columns> => {
  const separator = header.includes('\t') ? '\t' : header.includes(';') ? ';' : ',';
  const names = cellsOf(header.toLowerCase(), separator);
  const [time, c, f, humidity] = ['time', 'temperature_c', 'temperature_f', 'relative_humidity_percent'].map((name) => names.indexOf(name)) as [number, number, number, number];
  const missing = [...(time < 0 ? ['time'] : []), ...(c < 0 && f < 0 ? ['temperature_c or temperature_f'] : []), ...(humidity < 0 ? ['relative_humidity_percent'] : [])];
  const received = header.trim() === '' ? 'nothing' : `“${header.trim().slice(0, 80)}”`;
  if (missing.length > 0)
    return refuse(
      said(
        1,
        'header',
        'column-missing',
        COLUMNS,
        received,
        `the first line names the columns with their units; it lacks ${missing.join(' and ')}. Rename the columns of your logger’s file.`,
      ),
    );
  if (c >= 0 && f >= 0)
    return refuse(said(1, 'header', 'given-twice', 'temperature_c or temperature_f', received, 'the temperature stands here in two units. Keep one of the two columns.'));
  return accept({ separator, time, temperature: c >= 0 ? c : f, unit: c >= 0 ? 'c' : 'f', humidity });
};

/** A cell as SI; nothing where the logger wrote nothing. */
const cellValue = (line: number, column: string, cell: string, quantity: QuantityId, unit: string, limits: typeof HUMIDITY): Result<number | undefined> => {
  if (cell === '') return accept(undefined);
  const read = readQuantity(cell, quantity, unit, limits);
  if (read.ok) return accept(read.value.si);
  const [first] = read.refusals;
  return first ? refuse(said(line, column, first.code, first.expected, first.received, first.sentence)) : accept(undefined);
};

/** With an offset, or as a clock on the wall showed it where the offset of that clock is given beside. */
const instantText = (cell: string, offset: string | undefined): string => {
  const text = cell.replace(/^(\d{4}-\d{2}-\d{2}) /, '$1T');
  return offset !== undefined && /T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?$/.test(text) ? `${text}${offset}` : text;
};

const rowOf = (line: number, text: string, columns: Columns, offset: string | undefined): Result<Row> => {
  const cells = cellsOf(text, columns.separator);
  const cell = cells[columns.time] ?? '';
  const written = instantText(cell, offset);
  const when = parseWhen(written);
  const at = parseInstant(written);
  const temperature = cellValue(line, `temperature_${columns.unit}`, cells[columns.temperature] ?? '', 'temperature', columns.unit, ANY_TEMPERATURE);
  const humidity = cellValue(line, 'relative_humidity_percent', cells[columns.humidity] ?? '', 'relative-humidity', 'percent', HUMIDITY);
  const refusals = [...(temperature.ok ? [] : temperature.refusals), ...(humidity.ok ? [] : humidity.refusals)];
  if (at === undefined || when?.form !== 'instant')
    refusals.unshift(
      said(
        line,
        'time',
        'no-such-time',
        'a time with its offset, such as 2026-09-19T10:00:00-04:00',
        cell === '' ? 'nothing' : `“${cell}”`,
        cell === '' ? 'there is no time.' : `“${cell}” is not a time with its offset from universal time.`,
      ),
    );
  if (refusals.length > 0 || at === undefined || when?.form !== 'instant' || !temperature.ok || !humidity.ok) return refuse(...refusals);
  return accept({ line, at, day: when.day, temperature_k: temperature.value, humidity: humidity.value });
};

const backwards = (rows: readonly Row[]): readonly Refusal[] =>
  rows.slice(1).flatMap((row, i) => {
    const before = rows[i];
    return before && row.at <= before.at
      ? [
          said(
            row.line,
            'time',
            'not-later',
            'a later time than on the line before',
            row.at === before.at ? 'the same time' : 'an earlier time',
            'the time does not go forward. Where the clocks were put back, give times with their offset.',
          ),
        ]
      : [];
  });

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** What fell into one hour, averaged; an hour counts only where both were measured. */
const hourly = (rows: readonly Row[]): ReadonlyMap<number, { readonly temperature_k: number; readonly humidity: number }> => {
  const by = new Map<number, { readonly t: number[]; readonly h: number[] }>();
  for (const { at, temperature_k, humidity } of rows) {
    if (temperature_k === undefined || humidity === undefined) continue;
    const hour = Math.floor(at / HOUR_MS);
    const held = by.get(hour) ?? { t: [], h: [] };
    held.t.push(temperature_k);
    held.h.push(humidity);
    by.set(hour, held);
  }
  return new Map([...by].map(([hour, { t, h }]) => [hour, { temperature_k: mean(t), humidity: mean(h) }]));
};

const round = (n: number, decimals: number): number => Number(n.toFixed(decimals));

const instantOf = (hour: number): string => `${isoDay(civilDay(Math.floor(hour / 24)))}T${String(((hour % 24) + 24) % 24).padStart(2, '0')}:00:00Z`;

/** A mean as a person would have typed it: as fine as a logger is good for. */
const typedMean = (si: number, quantity: QuantityId, unit: string, decimals: number): Typed => {
  const read = readQuantity(fromSi(si, quantity, unit).toFixed(decimals), quantity, unit);
  if (!read.ok) throw new Error(`a mean of ${quantity} cannot be read back`);
  return read.value;
};

const longestRun = (missing: readonly boolean[]): number => {
  let longest = 0;
  let run = 0;
  for (const is of missing) {
    run = is ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
};

const hoursWords = (n: number): string => `${n} ${n === 1 ? 'hour' : 'hours'}`;

/**
 * Reads the file of a temperature and humidity logger: one line of column names with units, then one line a reading.
 * Several readings within an hour are averaged; an hour without one stays missing and is counted.
 *
 * @param text    the file; columns parted by commas, semicolons or tabs, others than the three named are passed over
 * @param offset  of the logger’s clock, such as `-04:00`, for times that name none; left out, every time must carry its own
 * @returns       the body of a `lived-air` entry with its days; or what is wrong, by line
 */
export const readHourlyAir = (text: string, offset?: string): Result<HourlyAir> => {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const columns = columnsOf(lines[0] ?? '');
  if (!columns.ok) return columns;
  const read = lines.slice(1).flatMap((line, i) => (line.trim() === '' ? [] : [rowOf(i + 2, line, columns.value, offset)]));
  const rows = read.flatMap((r) => (r.ok ? [r.value] : []));
  const refusals = [...read.flatMap((r) => (r.ok ? [] : r.refusals)), ...backwards(rows)];
  if (refusals.length > SAID_MOST) {
    const more = refusals.length - SAID_MOST;
    return refuse(...refusals.slice(0, SAID_MOST), { code: 'and-more', path: '', expected: COLUMNS, received: `${more} more`, sentence: `${more} more lines cannot be read.` });
  }
  if (refusals.length > 0) return refuse(...refusals);

  const measured = hourly(rows);
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last || measured.size < 2)
    return refuse({
      code: 'too-few',
      path: '',
      expected: 'at least two hours with both',
      received: hoursWords(measured.size),
      sentence: 'There are fewer than two hours with a temperature and a humidity.',
    });
  const humidities = [...measured.values()].map((v) => v.humidity);
  if (Math.max(...humidities) <= 0.01)
    return refuse({
      code: 'other-unit-likely',
      path: 'relative_humidity_percent',
      expected: 'per cent, 0 to 100',
      received: 'nothing above 1',
      sentence: 'No humidity is above 1 %: these look like fractions. Multiply them by 100, or check the column.',
    });
  const hours = [...measured.keys()];
  const [from, to] = [Math.min(...hours), Math.max(...hours)];
  const length = to - from + 1;
  if (length > HOURS_MOST)
    return refuse({
      code: 'above-limit',
      path: '',
      expected: `${HOURS_MOST} hours or fewer`,
      received: hoursWords(length),
      sentence: `From first to last there are ${hoursWords(length)}. Give one year at most, as one file each.`,
    });

  const all = Array.from({ length }, (_, i) => measured.get(from + i));
  const missing = all.map((v) => v === undefined);
  const hours_missing = missing.filter((is) => is).length;
  const longest_gap_h = longestRun(missing);
  return accept({
    observed_at: `${isoDay(first.day)}/${isoDay(last.day)}`,
    body: {
      temperature: typedMean(mean([...measured.values()].map((v) => v.temperature_k)), 'temperature', columns.value.unit, 1),
      relative_humidity: typedMean(mean(humidities), 'relative-humidity', 'percent', 0),
      hours: {
        from: instantOf(from),
        step_s: 3600,
        temperature_k: all.map((v) => (v ? round(v.temperature_k, 2) : null)),
        relative_humidity: all.map((v) => (v ? round(v.humidity, 4) : null)),
      },
    },
    hours_measured: measured.size,
    hours_missing,
    longest_gap_h,
    sentence:
      hours_missing === 0
        ? `${hoursWords(measured.size)} without a gap.`
        : `${hoursWords(measured.size)} measured, ${hoursWords(hours_missing)} missing${hours_missing > 1 ? `, at most ${longest_gap_h} in a row` : ''}; they stay missing.`,
  });
};
