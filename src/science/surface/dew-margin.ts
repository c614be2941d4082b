import { type Kelvin, kelvin } from '../../units';

/** How much warmer than the dew point a surface must be before anything is put on it. [K] ISO 8502-4 practice for paint on metal, taken over for sealants; 5 °F in adhesive charts. */
export const DEW_MARGIN = 3;

/** `wet`: at or below the dew point. `too-near`: within the margin. `clear`: above it. Each for certain; between them `too-close`. */
export type DewStanding = 'wet' | 'too-near' | 'too-close' | 'clear';

export type DewMargin = {
  /** How much warmer the surface is than the dew point; below 0 it is colder. [K] */
  readonly margin: number;
  /** The coldest surface allowed. [K] */
  readonly least: Kelvin;
  readonly standing: DewStanding;
};

/**
 * Whether a surface keeps its distance from the dew point.
 *
 * @param surface      temperature of the surface. [K]
 * @param dew_point    of the air that touches it. [K]
 * @param needed       margin asked for. [K]
 * @param uncertainty  what is open in the surface's temperature. [K]
 * @returns            margin, the coldest surface allowed, and which of four it is
 * @agrees             the coldest surface with two published examples; the four words are ours
 * @assumes            nothing is said for certain within the uncertainty of a limit
 * @source             1. ISO 8502-4 practice as quoted on several coating inspection pages: 3 K; adhesive charts: 5 °F
 */
export const dewMargin = (surface: Kelvin, dew_point: Kelvin, needed: number, uncertainty: number): DewMargin => {
  const margin = surface - dew_point;
  const standing: DewStanding = margin - needed >= uncertainty ? 'clear' : margin + uncertainty <= 0 ? 'wet' : margin - needed <= -uncertainty ? 'too-near' : 'too-close';
  return { margin, least: kelvin(dew_point + needed), standing };
};
