import { accept, figure, type Kelvin, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import { type DewStanding, dewMargin } from './dew-margin';

/** How cold and how warm a face may be, and how far either may be off; one figure twice where it was measured. [K] */
export type FaceSpan = { readonly coldest: Kelvin; readonly cold_open: number; readonly warmest: Kelvin; readonly warm_open: number };

/** Limits of a product for its surface, both allowed themselves, and the distance it keeps from the dew point. [K] */
export type LayingLimits = { readonly least?: Kelvin; readonly most?: Kelvin; readonly dew_margin: number };

/** Against a limit: kept, broken, or too close to say. */
export type LimitStanding = 'kept' | 'too-close' | 'broken';

export type ApplicationGate = {
  readonly cold: LimitStanding;
  readonly warm: LimitStanding;
  readonly dew: DewStanding;
  /** Nothing is broken and nothing in doubt. */
  readonly open: boolean;
};

export const gateSurface: Validity = { of: 'surface', least: 203.15, most: 393.15, words: 'a surface of −70 to 120 °C', source: 'ours: what a skin outdoors may have' };

const against = (spare: number, uncertainty: number): LimitStanding => (spare < 0 ? 'broken' : spare < uncertainty ? 'too-close' : 'kept');

/**
 * Whether a product may be laid on a face now: within its limits of temperature and far enough above the dew point.
 *
 * @param face       how cold and how warm it may be
 * @param dew_point  of the air that touches it. [K]
 * @param limits     of the product’s sheet
 * @returns          each gate by itself, and whether all stand open
 * @valid            surfaces −70…120 °C (refused otherwise)
 * @agrees           exactly with four published verdicts
 * @assumes          the coldest surface counts against cold and dew, the warmest against heat; limits themselves are allowed: our choice
 * @source           1. ISO 8502-4 practice as quoted on coating inspection pages: 3 K above the dew point; limits from the product’s sheet
 */
export const applicationGate = ({ coldest, cold_open, warmest, warm_open }: FaceSpan, dew_point: Kelvin, { least, most, dew_margin }: LayingLimits): Result<ApplicationGate> => {
  for (const t of [coldest, warmest]) if (!holds(t, gateSurface)) return outsideValidity(gateSurface, `${figure(t - 273.15, 1)} °C`);
  const cold = least === undefined ? 'kept' : against(coldest - least, cold_open);
  const warm = most === undefined ? 'kept' : against(most - warmest, warm_open);
  const dew = dewMargin(coldest, dew_point, dew_margin, cold_open).standing;
  return accept({ cold, warm, dew, open: cold === 'kept' && warm === 'kept' && dew === 'clear' });
};
