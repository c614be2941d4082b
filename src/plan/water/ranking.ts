import type { Leak } from './water-types';

/** Where a leak may come in, as it is told: the likeliest first, in one sentence, and what to try next. */
export type Ranking = Pick<Leak, 'candidates' | 'unknown_source' | 'sentence' | 'apart' | 'clues' | 'next_test'>;
