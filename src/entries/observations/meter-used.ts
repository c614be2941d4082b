import type { Field } from '../../terms';
import { wordIn } from '../line';

/** Two meters are two series, even of the same make: their readings are never put on one line. */
export const meter = {
  type: 'text',
  label: 'Meter',
  meaning: 'The name under which it is described for this rig, so that its readings are compared with its own only.',
  most: 60,
  optional: true,
} as const satisfies Field;

const surfaces = [
  { id: 'dry', word: 'Dry to the touch' },
  { id: 'wet', word: 'Wet to the touch', line: 'rain, dew or sweat: the figure then tells of the surface, not of the wood' },
  { id: 'frozen', word: 'Frozen', line: 'a meter does not take ice for water' },
] as const;

/** A figure taken on a wet or frozen surface is kept, and compared with nothing. */
export const surface = { type: 'choice', label: 'The surface was', options: surfaces, optional: true } as const satisfies Field;

/** The record's words for both; a dry surface goes without saying. */
export const meterWords = (name: string | undefined): string | undefined => (name === undefined ? undefined : `meter ${name}`);
export const surfaceWords = (id: string | undefined): string | undefined => (id === undefined || id === 'dry' ? undefined : `surface ${wordIn(surfaces, id)}`);
