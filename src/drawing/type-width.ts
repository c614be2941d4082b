/**
 * Widths of type, for plates, collisions and page breaks: thousandths of the type size for each character of a
 * Helvetica-like face, which all faces of `FONT_FAMILY` share; from memory, unconfirmed. Near enough to leave room.
 */
const PLAIN: readonly (readonly [chars: string, width: number])[] = [
  ["ijl'’‘", 222],
  [' !,./:;IftI[]\\|', 278],
  ['()-r`·', 333],
  ['cksvxyzJ', 500],
  ['0123456789abdeghnopqu?#$_L“”+', 556],
  ['+<>=~±×÷', 584],
  ['FTZ', 611],
  ['ABEKPSVXY&', 667],
  ['CDHNRUw', 722],
  ['GOQ', 778],
  ['Mm', 833],
  ['%', 889],
  ['W', 944],
  ['—…@', 1000],
];
const BOLD: readonly (readonly [chars: string, width: number])[] = [
  [" ijl,./|'’‘I", 278],
  ['!()-ft:;[]`·', 333],
  ['rz*', 389],
  ['0123456789aceksvxyJ$#_', 556],
  ['bdghnopquLFTZ?', 611],
  ['EPSVXY', 667],
  ['ABCDHKNRU&', 722],
  ['wGOQ', 778],
  ['Mm', 861],
  ['%', 889],
  ['W', 944],
  ['—…@', 1000],
];

const tableOf = (rows: readonly (readonly [string, number])[]): ReadonlyMap<string, number> =>
  new Map(rows.flatMap(([chars, width]) => [...chars].map((c) => [c, width] as const)));
const plain = tableOf(PLAIN);
const bold = tableOf(BOLD);
const OTHER = 600;

/** Width of a line of type, in the unit of `size`. */
export const widthOf = (text: string, size: number, heavy = false): number => {
  const table = heavy ? bold : plain;
  let w = 0;
  for (const c of text) w += table.get(c) ?? OTHER;
  return (w * size) / 1000;
};

/** How many lines a text takes in a column, words kept whole. */
export const linesOf = (text: string, size: number, column: number, heavy = false): number => {
  let lines = 1;
  let used = 0;
  const space = widthOf(' ', size, heavy);
  for (const word of text.split(/\s+/)) {
    const w = widthOf(word, size, heavy);
    if (used > 0 && used + space + w > column) {
      lines += 1;
      used = w;
    } else used += (used > 0 ? space : 0) + w;
  }
  return lines;
};
