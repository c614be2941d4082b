import { accept, type MetresPerSecond, metresPerSecond, type Result, refuse, toSi } from '../../units';

type Row = { readonly symbol: string; readonly kmh: number; readonly read: boolean };
const row = (symbol: string, kmh: number, read: boolean): Row => ({ symbol, kmh, read });

/** Speed symbols and their speeds. [km/h] */
const SYMBOLS: readonly Row[] = [
  row('B', 50, false),
  row('C', 60, false),
  row('D', 65, false),
  row('E', 70, false),
  row('F', 80, false),
  row('G', 90, true),
  row('J', 100, false),
  row('K', 110, true),
  row('L', 120, true),
  row('M', 130, true),
  row('N', 140, true),
  row('P', 150, false),
  row('Q', 160, true),
  row('R', 170, true),
  row('S', 180, true),
  row('T', 190, true),
  row('U', 200, true),
  row('H', 210, true),
  row('V', 240, true),
  row('W', 270, true),
  row('Y', 300, true),
];

/**
 * The speed for which a tyre is rated at its load. A trailer's own limit or the law may be lower.
 *
 * @param symbol  the letter after the load index
 * @returns       speed, and whether the row was read in print. [m/s]
 * @valid         B to Y without the two-character A symbols; anything else is refused
 * @agrees        exactly with the printed cases and the rows of speed-symbol.csv
 * @source        1. Tyre sellers' tables and EU product sheets, as read; B to F, J and P from memory, unconfirmed
 */
export const speedOfSymbol = (symbol: string): Result<{ readonly speed: MetresPerSecond; readonly read: boolean }> => {
  const found = SYMBOLS.find((s) => s.symbol === symbol.toUpperCase());
  return found
    ? accept({ speed: metresPerSecond(toSi(found.kmh, 'speed', 'kmh')), read: found.read })
    : refuse({
        code: 'no-such-speed-symbol',
        path: 'speed_symbol',
        expected: SYMBOLS.map((s) => s.symbol).join(' '),
        received: `“${symbol}”`,
        sentence: `“${symbol}” is not a speed symbol that is known here. It is the letter after the load index.`,
      });
};
