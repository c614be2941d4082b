import type { FaceId, FacePoint } from '../../terms';

/** A part of a panel within which readings may be compared by their distance: a bay between frame members, or the whole bonded sheet. */
export type Field = {
  readonly id: string;
  readonly face: FaceId;
  readonly outline_m: readonly FacePoint[];
  /** Where nothing is drawn or estimated: openings, wheel arches, metal. */
  readonly holes_m: readonly (readonly FacePoint[])[];
  /** Strips that a pinless meter cannot read through: frame tubes. */
  readonly masked_m: readonly (readonly FacePoint[])[];
};

/** The fields of one face, and what they rest on. */
export type Fields = {
  readonly face: FaceId;
  readonly fields: readonly Field[];
  /** In words, for the person: `studs every 16 in, typical, measure yours`. */
  readonly assumes: readonly string[];
};
