import { showIn } from '../../units';
import type { Scale } from './water-types';

/**
 * What a step on each scale means. Points of moisture for pin and pinless meters; hundredths of its own scale for a relative one,
 * whose steps are not equal, so that its figures are wider. The half point below which no spread is believed and the three points of a
 * rise come from the method of the dry reference; the rest is ours.
 */
export type ScaleSteps = {
  /** The spread of dry places is never taken to be less. */
  readonly floor: number;
  /** A rise that no meter's own scatter explains. */
  readonly rise: number;
  /** So near the dry places that it counts as dry. */
  readonly dry: number;
  /** What two readings of one place may differ by, where the meter's owner gave nothing. */
  readonly scatter: number;
};

export const SCALES: Readonly<Record<Scale, ScaleSteps>> = {
  pin: { floor: 0.005, rise: 0.03, dry: 0.02, scatter: 0.01 },
  pinless: { floor: 0.005, rise: 0.03, dry: 0.02, scatter: 0.01 },
  relative: { floor: 0.02, rise: 0.12, dry: 0.06, scatter: 0.03 },
};

export const SCALE_WORD: Readonly<Record<Scale, string>> = { pin: 'pin meter', pinless: 'pinless meter', relative: 'relative scale' };

/** A figure of a scale, as people read it. */
export const showOn = (scale: Scale, value: number): string => (scale === 'relative' ? `${Math.round(value * 100)} of 100` : showIn(value, 'moisture-content', 'percent'));

/** A difference on a scale, in words. */
export const pointsOn = (scale: Scale, by: number): string => {
  const n = Math.abs(by) * 100;
  const text = scale === 'relative' ? String(Math.round(n)) : n.toFixed(1);
  return `${text} ${text === '1' || text === '1.0' ? 'point' : 'points'}`;
};
