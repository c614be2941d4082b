import type { Agreement } from '../../terms';
import { fromSi } from '../../units';
import { loadOfIndex, speedOfSymbol } from '.';

export const tyreAgreements: readonly Agreement[] = [
  {
    quantity: 'Load of a load index',
    source: 'Load index tables of a tyre maker (75 to 150) and of a public page (60 to 119)',
    table: 'src/science/tyre/load-index.csv',
    rows: 90,
    allowed: { by: 'difference', most: 0, unit: 'kg' },
    remark: 'A table against its print: exactly. Index 135 is left out because prints disagree, 151 and above because none was read.',
    measure: (rows) =>
      rows.map((r) => {
        const load = loadOfIndex(Number(r.load_index));
        return { label: `index ${r.load_index}`, expected: Number(r.max_load_kg), got: load.ok ? load.value.load : 'refused' };
      }),
  },
  {
    quantity: 'Load of a load index against its series',
    source: '45 kg × 10^(n/80), the series that load indices are rounded from; from memory, unconfirmed',
    table: 'src/science/tyre/load-index.csv',
    rows: 90,
    allowed: { by: 'ratio', most: 0.018, unit: '' },
    remark: 'The steps of the table are rounded preferred numbers: up to 1.7 % from the series. Most slipped digits would be far more.',
    measure: (rows) =>
      rows.map((r) => {
        const load = loadOfIndex(Number(r.load_index));
        return { label: `index ${r.load_index}`, expected: 45 * 10 ** (Number(r.load_index) / 80), got: load.ok ? load.value.load : 'refused' };
      }),
  },
  {
    quantity: 'Speed of a speed symbol',
    source: 'Tyre sellers’ tables and EU product sheets',
    table: 'src/science/tyre/speed-symbol.csv',
    rows: 14,
    allowed: { by: 'difference', most: 1e-9, unit: 'km/h' },
    remark: 'A table against its print: exactly. Symbols from memory are left out.',
    measure: (rows) =>
      rows.map((r) => {
        const speed = speedOfSymbol(String(r.symbol));
        return { label: String(r.symbol), expected: Number(r.speed_kmh), got: speed.ok ? fromSi(speed.value.speed, 'speed', 'kmh') : 'refused' };
      }),
  },
];
