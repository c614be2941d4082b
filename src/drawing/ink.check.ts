import { describe, expect, it } from 'vitest';
import { inkStyle, type Theme, TONES } from './ink';
import { INKS } from './primitives';

/** Contrast by the formula of WCAG 2.2 (relative luminance, contrast ratio; from memory, unconfirmed) against the house's own bar: in the field text 15 to 1, graphics 4.5 to 1. */
const channel = (v: number): number => (v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => channel(Number.parseInt(hex.slice(i, i + 2), 16) / 255));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
};
const THEMES: readonly Theme[] = ['desk', 'field', 'night', 'paper'];

describe('inks', () => {
  it('have a style in every theme', () => {
    for (const theme of THEMES) for (const ink of INKS) expect(inkStyle(ink, theme).fill).toMatch(/^(none|#[0-9A-F]{6})$/);
  });

  it('give field and night text at least 15 to 1, and every line at least 4.5 to 1', () => {
    for (const theme of ['field', 'night'] as const) {
      const ground = TONES[theme].paper;
      for (const ink of INKS) {
        const s = inkStyle(ink, theme);
        if (s.weight !== undefined) expect(contrast(s.fill, ground), `${ink} ${theme}`).toBeGreaterThanOrEqual(15);
        else if (s.stroke !== 'none' && s.stroke !== ground) expect(contrast(s.stroke, ground), `${ink} ${theme}`).toBeGreaterThanOrEqual(4.5);
      }
    }
  });

  it('give text at the desk at least 7 to 1', () => {
    for (const ink of INKS) {
      const s = inkStyle(ink, 'desk');
      if (s.weight !== undefined) expect(contrast(s.fill, TONES.desk.paper), ink).toBeGreaterThanOrEqual(7);
    }
  });

  it('tell seam, opening and fitting apart by their lines', () => {
    for (const theme of THEMES) {
      const [seam, opening, fitting] = [inkStyle('seam', theme), inkStyle('opening', theme), inkStyle('fitting', theme)];
      expect(seam.width).toBeGreaterThan(opening.width * 1.5);
      expect(opening.width).toBeGreaterThan(fitting.width * 1.3);
      expect(inkStyle('stitch', theme).dash).toBeDefined();
    }
  });

  it('print in black, white and grey only', () => {
    for (const ink of INKS) {
      const s = inkStyle(ink, 'paper');
      for (const c of [s.fill, s.stroke])
        if (c !== 'none')
          expect(
            Math.max(...[1, 3, 5].map((i) => Number.parseInt(c.slice(i, i + 2), 16))) - Math.min(...[1, 3, 5].map((i) => Number.parseInt(c.slice(i, i + 2), 16))),
          ).toBeLessThan(10);
    }
  });
});
