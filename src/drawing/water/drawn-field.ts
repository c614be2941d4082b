import type { Field } from '../../rig';
import type { FacePoint } from '../../terms';
import type { Grid } from './mesh';

/** What a map needs to know of a panel's field: see the plan's own, from which it is drawn. */
export type DrawnField = {
  readonly of: 'excess' | 'reading';
  readonly threshold: number;
  readonly parts: readonly DrawnPart[];
  readonly next_places: readonly { readonly point_m: FacePoint; readonly words: string }[];
};

export type DrawnPart = {
  readonly field: Field;
  readonly readings: number;
  readonly drawn: 'map' | 'dots';
  /** Why there is no map. */
  readonly why?: string;
  readonly leave_one_out?: { readonly error: number; readonly of_the_mean: number };
  readonly grid?: Omit<Grid, 'values'> & {
    readonly chance: readonly (number | undefined)[];
    readonly standard_error: readonly (number | undefined)[];
  };
};
