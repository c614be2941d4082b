import type { Field } from '../../terms';

/** Readings of all three kinds of meter are judged beside a dry place of the same wall, read with the same meter. */
export const dryReference = {
  type: 'flag',
  label: 'A dry place to compare with',
  meaning: 'A place on the same wall that is believed dry.',
  optional: true,
} as const satisfies Field;

/** The record's words for it; nothing where the place was not one. */
export const dryWords = (is: boolean | undefined): string | false => is === true && 'dry place to compare with';
