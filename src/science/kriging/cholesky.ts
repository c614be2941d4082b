/** Lower triangle of a symmetric positive definite matrix, row by row; the diagonal is kept as its inverse, because it is only ever divided by. */
export type Triangle = { readonly size: number; readonly rows: Float64Array };

/** A pivot this much smaller than the diagonal has lost half its digits; what is reckoned on from it would be noise. */
const LOST = 1e-8;

/** Where row i begins. */
export const rowAt = (i: number): number => (i * (i + 1)) / 2;

/** L with L Lᵀ = the matrix; undefined where it is singular to working accuracy. */
export const cholesky = (size: number, entry: (i: number, j: number) => number): Triangle | undefined => {
  const rows = new Float64Array(rowAt(size));
  for (let i = 0; i < size; i++) {
    const ri = rowAt(i);
    for (let j = 0; j <= i; j++) {
      const rj = rowAt(j);
      let sum = entry(i, j);
      const whole = sum;
      for (let k = 0; k < j; k++) sum -= (rows[ri + k] ?? 0) * (rows[rj + k] ?? 0);
      if (i !== j) rows[ri + j] = sum * (rows[rj + j] ?? 0);
      else if (sum > LOST * whole) rows[ri + i] = 1 / Math.sqrt(sum);
      else return undefined;
    }
  }
  return { size, rows };
};

/** L⁻¹ b, in place. */
export const forward = ({ size, rows }: Triangle, b: Float64Array): Float64Array => {
  for (let i = 0; i < size; i++) {
    const ri = rowAt(i);
    let sum = b[i] ?? 0;
    for (let j = 0; j < i; j++) sum -= (rows[ri + j] ?? 0) * (b[j] ?? 0);
    b[i] = sum * (rows[ri + i] ?? 0);
  }
  return b;
};

/** (L Lᵀ)⁻¹ b, in place. */
export const solve = (triangle: Triangle, b: Float64Array): Float64Array => {
  const { size, rows } = triangle;
  forward(triangle, b);
  for (let i = size - 1; i >= 0; i--) {
    let sum = b[i] ?? 0;
    for (let j = i + 1; j < size; j++) sum -= (rows[rowAt(j) + i] ?? 0) * (b[j] ?? 0);
    b[i] = sum * (rows[rowAt(i) + i] ?? 0);
  }
  return b;
};
