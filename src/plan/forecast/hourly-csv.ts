import { accept, parseInstant, type Refusal, type Result, readQuantity, refuse } from '../../units';
import { type Forecast, HOUR_MS } from './forecast-types';
import { fewRefusals, forecastOf } from './hours';
import { DAMP, LAYERS, type Layer, type LayerId, needed } from './layers';

type Column = { readonly layer: Layer; readonly name: string; readonly unit: string; readonly at: number };

const nameOf = (layer: Layer): string => layer.units.map((u) => `${layer.column}_${u}`).join(' or ');
const expectedNames = (): string =>
  `time, ${needed().map(nameOf).join(', ')}, and ${LAYERS.filter((l) => DAMP.includes(l.id))
    .map(nameOf)
    .join(' or ')}`;

const said = (line: number, path: string, code: string, expected: string, received: string, sentence: string): Refusal => ({
  code,
  path: `line ${line}, ${path}`,
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

const columnsOf = (names: readonly string[], header: string): Result<readonly Column[]> => {
  const columns = LAYERS.flatMap((layer) => layer.units.map((unit) => ({ layer, unit, name: `${layer.column}_${unit}`, at: names.indexOf(`${layer.column}_${unit}`) }))).filter(
    (c) => c.at >= 0,
  );
  const has = (id: LayerId): boolean => columns.some((c) => c.layer.id === id);
  const missing = [
    ...(names.includes('time') ? [] : ['time']),
    ...needed()
      .filter((l) => !has(l.id))
      .map(nameOf),
    ...(DAMP.some(has) ? [] : ['dew_point_c or relative_humidity_percent']),
  ];
  const received = header.trim() === '' ? 'nothing' : `“${header.trim().slice(0, 120)}”`;
  if (missing.length > 0)
    return refuse(said(1, 'header', 'column-missing', expectedNames(), received, `the first line names the columns with their units; it lacks ${missing.join(' and ')}.`));
  const twice = columns.find((c, i) => columns.findIndex((o) => o.layer === c.layer) !== i) ?? columns.find((c) => names.lastIndexOf(c.name) !== c.at);
  if (twice) return refuse(said(1, 'header', 'given-twice', expectedNames(), received, `${twice.layer.words} stands here twice. Keep one of the columns.`));
  return accept(columns);
};

/**
 * Reads a plain table of hours: one line of column names with their units, then one line for each hour; a value holds for the hour that begins then.
 *
 * @param text  columns parted by commas, semicolons or tabs; others than those named are passed over; an empty cell is missing
 * @returns     hours; or what is wrong, by line
 */
export const readHourlyForecast = (text: string): Result<Forecast> => {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const header = lines[0] ?? '';
  const separator = header.includes('\t') ? '\t' : header.includes(';') ? ';' : ',';
  const names = cellsOf(header.toLowerCase(), separator);
  const columns = columnsOf(names, header);
  if (!columns.ok) return columns;
  const time = names.indexOf('time');
  const values = new Map<LayerId, Map<number, number>>(columns.value.map((c) => [c.layer.id, new Map()]));
  const refusals: Refusal[] = [];
  let before = Number.NEGATIVE_INFINITY;
  lines.slice(1).forEach((line, k) => {
    if (line.trim() === '') return;
    const n = k + 2;
    const cells = cellsOf(line, separator);
    const cell = cells[time] ?? '';
    const at = parseInstant(cell.replace(/^(\d{4}-\d{2}-\d{2}) /, '$1T'));
    const received = cell === '' ? 'nothing' : `“${cell}”`;
    if (at === undefined || at % HOUR_MS !== 0) {
      const why =
        cell === ''
          ? 'there is no time.'
          : at === undefined
            ? `${received} is no time with its offset from universal time, without which an hour of a clock-change day may be twice or not at all.`
            : `${received} is not a full hour.`;
      refusals.push(said(n, 'time', at === undefined ? 'no-such-time' : 'no-full-hour', 'a full hour with its offset, such as 2026-10-04T06:00:00-04:00', received, why));
      return;
    }
    if (at <= before) refusals.push(said(n, 'time', 'not-later', 'a later hour than on the line before', received, 'the time does not go forward.'));
    before = Math.max(before, at);
    for (const { layer, name, unit, at: place } of columns.value) {
      const written = cells[place] ?? '';
      if (written === '') continue;
      const read = readQuantity(written, layer.quantity, unit, layer.limits);
      if (read.ok) values.get(layer.id)?.set(at / HOUR_MS, read.value.si);
      else refusals.push(...read.refusals.map((r) => said(n, name, r.code, r.expected, r.received, r.sentence)));
    }
  });
  return refusals.length > 0 ? fewRefusals(refusals, expectedNames()) : forecastOf({ source: 'Table of hours' }, values);
};
