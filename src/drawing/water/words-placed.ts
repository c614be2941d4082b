import type { Bounds } from '../frame';
import { linesOf, widthOf } from '../type-width';

/** Words broken into lines of a column. */
export const wrapped = (text: string, size: number, column: number, heavy = false): readonly string[] => {
  const out: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = out.at(-1);
    if (last !== undefined && linesOf(`${last} ${word}`, size, column, heavy) === 1 && widthOf(`${last} ${word}`, size, heavy) <= column) out[out.length - 1] = `${last} ${word}`;
    else out.push(word);
  }
  return out;
};

export const meet = (a: Bounds, b: Bounds): boolean => a.x1 > b.x0 && a.x0 < b.x1 && a.y1 > b.y0 && a.y0 < b.y1;
