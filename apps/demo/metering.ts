/**
 * What the demo's owner read with a meter inside the road wall, forward of the slide-out: the wall is framed, a member every
 * 16 inches, and water that gets in at the window's forward corner runs down the bay below it, to the compartment door. Invented, with the scatter of a real meter.
 */

/** Every reading is taken with this one, described in the logbook before the first round. */
export const METER = 'Two-pin, grey';

/** Metres rearward from the front of the body, metres above ground, and what the meter showed, in %. */
export type Reading = readonly [x_m: number, y_m: number, percent: string];

/** The readings of one day: places believed dry, and the others. */
export type Metering = { readonly dry: readonly Reading[]; readonly wall: readonly Reading[] };

/** Below the forward corner of the window's sill: read at every round. */
export const SILL = [0.72, 1.5] as const;

/** Dry places of the same wall: ahead of the window, and behind the slide-out. The same at every round. */
const DRY_AT = [
  [0.2, 1.3],
  [4.6, 1.6],
  [5.5, 1.6],
  [6, 1.95],
] as const;

const usual = (sill: string, ...dry: readonly [string, string, string, string]): Metering => ({
  dry: DRY_AT.map(([x, y], i): Reading => [x, y, dry[i] ?? '']),
  wall: [[...SILL, sill]],
});

const and = (metering: Metering, ...more: readonly Reading[]): Metering => ({ ...metering, wall: [...metering.wall, ...more] });

/** By the day of the round. */
export const METERINGS: Readonly<Record<string, Metering>> = {
  '2023-10-14': usual('11.0', '10.8', '10.6', '10.9', '10.7'),
  '2024-04-20': usual('11.4', '10.9', '10.8', '11.1', '10.9'),
  '2024-10-12': usual('13.0', '10.7', '10.5', '10.8', '10.9'),
  '2025-04-19': usual('12.6', '10.9', '10.9', '11.2', '10.7'),
  '2025-10-11': usual('14.5', '11.0', '10.8', '11.2', '11.1'),
  '2026-04-18': and(usual('18.2', '11.1', '11.0', '11.4', '10.9'), [0.62, 1.25, '17.4'], [0.62, 1, '19.6'], [0.6, 2.3, '11.3'], [1, 1.22, '11.4']),
  // The wall metered on a grid, bay by bay, after the stain was seen.
  '2026-10-03': and(
    usual('24.1', '11.0', '10.8', '11.2', '11.1'),
    // above the window, to the roof edge
    [0.68, 2.72, '11.2'],
    [0.6, 2.5, '11.0'],
    [0.6, 2.3, '11.4'],
    [1, 2.45, '10.9'],
    [1, 2.25, '11.1'],
    [1.33, 2.3, '11.0'],
    // ahead of the bay
    [0.22, 1.75, '11.3'],
    [0.3, 1.5, '11.2'],
    [0.3, 1.1, '10.9'],
    [0.35, 0.8, '11.5'],
    // the bay, from beside the window's forward edge to the compartment door
    [0.58, 1.95, '16.2'],
    [0.56, 1.65, '18.6'],
    [0.5, 1.48, '18.9'],
    [0.6, 1.38, '23.4'],
    [0.76, 1.36, '24.8'],
    [0.46, 1.26, '18.4'],
    [0.62, 1.25, '25.8'],
    [0.76, 1.2, '25.1'],
    [0.48, 1.1, '20.6'],
    [0.62, 1.12, '27.3'],
    [0.76, 1.06, '26.4'],
    [0.62, 1, '28.4'],
    // behind it, below the window and beside the slide-out
    [0.92, 1.42, '12.4'],
    [1.12, 1.42, '11.2'],
    [1, 1.22, '11.6'],
    [0.9, 1.05, '13.4'],
    [1.12, 1.05, '11.5'],
    [1.33, 1.5, '11.0'],
    [1.33, 1.1, '11.3'],
    [1.32, 0.8, '11.1'],
  ),
};
