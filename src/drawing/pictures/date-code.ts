import { arcD, flat, type Point } from '../path';
import { penOn } from '../pen';
import type { Drawing, Primitive } from '../primitives';

/** Where on the sidewall the date code stands: at the end of the line of letters, in a window of its own. */
export type DateCodeOptions = {
  /** The four figures read; dots stand where nothing has been typed. */
  readonly code?: string;
  readonly width_px?: number;
};

const p = penOn(flat);

const W = 330;
const H = 104;
/** Centre of the wheel, above the picture. */
const CX = W / 2;
const CY = -330;
const [BEAD, LETTERS, TREAD] = [345, 378, 412] as const;

/** A point at a bearing from straight down, positive to the right. [rad] */
const at = (r: number, a: number): Point => [CX + r * Math.sin(a), CY + r * Math.cos(a)];

const ring = (r: number): Primitive => ({ form: 'path', d: arcD(flat, CX, CY, r, r, Math.PI / 2 - 0.5, Math.PI / 2 + 0.5), ink: 'picture-line' });

const lugs: Primitive = p.strokes(
  'slide',
  Array.from({ length: 25 }, (_, i): readonly Point[] => {
    const a = (i - 12) * 0.035;
    return [at(TREAD + 2, a), at(TREAD + 14, a)];
  }),
);

const letter = (text: string, a: number, size: number, ink: 'text-bold' | 'text'): Primitive => {
  const [x, y] = at(LETTERS + size * 0.36, a);
  return { form: 'text', x, y, text, size, anchor: 'middle', ink, rotate: (-a * 180) / Math.PI };
};

/** Plant, size and maker's marks: rings, because they are not asked for. */
const unread = (from: number): Primitive[] => [0, 1, 2].map((i) => p.disc('picture-paper', ...at(LETTERS, from + i * 0.024), 3.4));

export const dateCodePicture = ({ code = '', width_px = W }: DateCodeOptions = {}): Drawing => {
  const from = 0.265;
  const step = 0.042;
  const window = [at(LETTERS - 17, from - 0.033), at(LETTERS - 17, from + 3 * step + 0.033), at(LETTERS + 17, from + 3 * step + 0.033), at(LETTERS + 17, from - 0.033)];
  const digits = [0, 1, 2, 3].map((i) => letter(code[i] ?? '·', from + i * step, 24, 'text-bold'));
  return {
    width: W,
    height: H,
    title: code === '' ? 'Sidewall of a tyre: the date code is the last four figures, in a window of its own' : `Sidewall of a tyre with the date code ${code.split('').join(' ')}`,
    px: width_px / W,
    primitives: [
      ring(BEAD),
      ring(BEAD + 5),
      ring(TREAD),
      lugs,
      ...['D', 'O', 'T'].map((c, i) => letter(c, -0.36 + i * 0.05, 22, 'text-bold')),
      ...unread(-0.17),
      ...unread(-0.05),
      ...unread(0.07),
      p.poly('shade', window, 3),
      p.poly('picture-line', window, 3),
      ...digits,
    ],
  };
};
