import type { Field } from '../../rig';
import type { Variogram } from '../../science';
import type { FacePoint } from '../../terms';
import type { Because } from '../finding';

/** Values at equal steps from a first node, row by row; undefined where nothing is said. */
export type FieldGrid = {
  readonly x0_m: number;
  readonly y0_m: number;
  readonly step_m: number;
  readonly columns: number;
  readonly rows: number;
  /** Of lying above the threshold. [1] Undefined all over for inverse distance, which has no error. */
  readonly chance: readonly (number | undefined)[];
  readonly estimate: readonly (number | undefined)[];
  readonly standard_error: readonly (number | undefined)[];
};

/** What the readings within one field show. */
export type FieldPart = {
  readonly field: Field;
  /** Places read, not readings: a place read twice counts once. */
  readonly readings: number;
  readonly drawn: 'map' | 'dots';
  /** Why there is no map, in a sentence. */
  readonly why?: string;
  /** Root mean square error of guessing each reading from the others, and from their plain mean. */
  readonly leave_one_out?: { readonly error: number; readonly of_the_mean: number };
  /** The likeness that was used here: the panel's, with the spread of this field's readings. */
  readonly variogram: Variogram;
  readonly grid?: FieldGrid;
};

/** Where one more reading tells most. */
export type NextPlace = { readonly point_m: FacePoint; readonly words: string };

/** The map of one panel. */
export type MoistureField = {
  readonly panel: string;
  /** Excess over the dry places of the same day where there are some, else the corrected reading. */
  readonly of: 'excess' | 'reading';
  readonly threshold: number;
  /** Fields that hold a reading. */
  readonly parts: readonly FieldPart[];
  readonly next_places: readonly NextPlace[];
  /** Before the readings of a field give it their spread. */
  readonly variogram: Variogram;
  /** What the map rests on, in sentences. */
  readonly assumes: readonly string[];
  readonly because: Because;
};

export type FieldOptions = {
  readonly threshold?: number;
  /** Inverse distance draws an estimate only: no chance, no standard error. */
  readonly method?: 'kriging' | 'inverse-distance';
};
