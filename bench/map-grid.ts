import { kriging, type Sample, type Variogram } from '../src/science';
import { ms, type Row } from './table';
import { interleaved, type Timing } from './timing';

const READINGS = 60;
const COLUMNS = 60;
const ROWS = 40;

/** Sixty readings of an invented wall of 3 × 2 m, off every lattice; only their number matters here. */
const samples: readonly Sample[] = Array.from({ length: READINGS }, (_, i) => ({
  x: ((i * 0.618034) % 1) * 3,
  y: ((i * 0.754878) % 1) * 2,
  value: 0.11 + 0.1 * Math.sin(i) ** 2,
}));

/** The likeness a map of the product starts from. */
const likeness: Variogram = { model: 'spherical', nugget: 0.0001, partial_sill: 0.0025, range: 1.2192, anisotropy: { ratio: 2, direction_rad: Math.PI / 2 } };

const along = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => 0.025 + i * 0.05);

/** The multiplications that no standard error goes without: half a square of the readings for each node, one node after the other. */
const multiplications = (): number => {
  const row = new Float64Array((READINGS * (READINGS + 1)) / 2).fill(0.5);
  let sum = 0;
  for (let node = 0; node < COLUMNS * ROWS; node++) for (let k = 0; k < row.length; k++) sum += (row[k] as number) * node;
  return sum;
};

/** A map of one field, with standard errors. */
export const mapGrid = (): Row => {
  const [xs, ys] = [along(COLUMNS), along(ROWS)];
  const times = interleaved(
    {
      map: () => {
        const made = kriging(samples, likeness);
        if (!made.ok) throw new Error(made.refusals[0]?.sentence);
        made.value.grid(xs, ys);
      },
      plain: multiplications,
    },
    25,
  );
  const { map, plain } = times as { readonly map: Timing; readonly plain: Timing };
  return {
    what: `${READINGS} readings to a ${COLUMNS} × ${ROWS} grid with standard errors`,
    goal: '10 ms',
    reached: `${ms(map.median)} (${ms(map.least)} to ${ms(map.most)})`,
    ratio: `${(map.median / plain.median).toFixed(1)} × its bare multiplications`,
    met: map.median <= 10,
  };
};
