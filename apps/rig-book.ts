import { kinds, readBody } from '../src/entries';
import { advance, type Book, type Line } from '../src/logbook';
import { blankRig, type Rig } from '../src/rig';
import type { RigId } from '../src/terms';

/**
 * One rig's book, moved on by more lines: the fold with this house's kinds. Web, command line and demo fold by this alone,
 * so that the same logbook gives the same plan everywhere; a correction whose result its kind cannot read is left out and told.
 *
 * @param before  undefined for an empty book
 */
export const rigBook = (rig: RigId, before: Book<Rig> | undefined, lines: readonly Line[]): Book<Rig> =>
  advance(kinds, blankRig(rig), before, lines, { fits: (kind, body) => readBody(kind, body).ok });
