import type { FacePoint } from '../../../../src/terms';

export type Size = { readonly w: number; readonly h: number };
/** The part of a drawing that is looked at, in its own metres, and how many of them a CSS px is. */
export type View = { readonly x: number; readonly y: number; readonly w: number; readonly h: number; readonly m_per_px: number };

/** Close enough that a foot is wider than a gloved fingertip's doubt. [m] */
const CLOSE_M = 2.4;

const clamped = (at: number, size: number, whole: number): number => (size >= whole ? (whole - size) / 2 : Math.max(0, Math.min(whole - size, at - size / 2)));

/** The whole drawing, or the part round one point of it; it fills the frame either way. */
export const viewOf = (drawing: Size, frame: Size, about: FacePoint | undefined): View => {
  const whole = Math.max(drawing.w / frame.w, drawing.h / frame.h);
  const m_per_px = about === undefined ? whole : Math.min(whole, CLOSE_M / frame.w);
  const [w, h] = [frame.w * m_per_px, frame.h * m_per_px];
  const [cx, cy] = about ?? [drawing.w / 2, drawing.h / 2];
  return { x: clamped(cx, w, drawing.w), y: clamped(cy, h, drawing.h), w, h, m_per_px };
};
