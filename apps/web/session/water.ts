import type { Because } from '../../../src/plan';
import type { FaceId, FacePoint } from '../../../src/terms';

/** The map of one panel, as the plan's room works it out. */
export type MoistureField = {
  readonly panel: string;
  /** Excess over the dry places where there are some, else the corrected reading. */
  readonly of: 'excess' | 'reading';
  readonly threshold: number;
  readonly parts: readonly {
    readonly field: {
      readonly id: string;
      readonly face: FaceId;
      readonly outline_m: readonly FacePoint[];
      readonly holes_m: readonly (readonly FacePoint[])[];
      readonly masked_m: readonly (readonly FacePoint[])[];
    };
    readonly readings: number;
    readonly drawn: 'map' | 'dots';
    readonly why?: string;
    readonly leave_one_out?: { readonly error: number; readonly of_the_mean: number };
    readonly grid?: {
      readonly x0_m: number;
      readonly y0_m: number;
      readonly step_m: number;
      readonly columns: number;
      readonly rows: number;
      readonly chance: readonly (number | undefined)[];
      readonly estimate: readonly (number | undefined)[];
      readonly standard_error: readonly (number | undefined)[];
    };
  }[];
  readonly next_places: readonly { readonly point_m: FacePoint; readonly words: string }[];
  readonly variogram: unknown;
  readonly assumes: readonly string[];
  readonly because: Because;
};
