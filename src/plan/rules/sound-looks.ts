import { kinds } from '../../entries';

/** Kinds that have an answer "nothing wrong here": after care it proves what kinds without such an answer raised. */
export const SOUND_LOOKS: readonly string[] = kinds.filter((k) => k.sound !== undefined).map((k) => k.id);
