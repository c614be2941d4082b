import { createHash } from 'node:crypto';
import { readLogbookFile } from '../../src/adapters/logbook-file';
import { checkEntry } from '../../src/entries';
import type { Line, State, VerifyOptions } from '../../src/logbook';
import type { Rig } from '../../src/rig';
import { rigBook } from '../rig-book';
import { EXIT, Stop } from './outcome';

/** Bodies are judged against their kinds; Node's own SHA-256 gives the same digest as the pure one, several times faster. */
export const VERIFY: VerifyOptions = { check: checkEntry, hash: (text) => createHash('sha256').update(text, 'utf8').digest('hex') };

export type OpenLogbook = { readonly lines: readonly Line[]; readonly state: State<Rig>; readonly rig: Rig };

export const cannotRead = (path: string, error: unknown): Stop => {
  const code = (error as NodeJS.ErrnoException).code;
  const why = code === 'ENOENT' ? 'there is no such file' : code === 'EISDIR' ? 'it is a folder' : code === 'EACCES' ? 'this user may not read it' : String(code ?? error);
  return new Stop(`${path} cannot be read: ${why}.`);
};

/** Opens a logbook file and folds it. Damage is told on standard error and does not hide what is whole. */
export const openLogbook = async (path: string): Promise<OpenLogbook> => {
  const { lines, verification } = await readLogbookFile(path, VERIFY).catch((error: unknown) => {
    throw cannotRead(path, error);
  });
  const rigId = lines[0]?.entry.rig;
  if (rigId === undefined) throw new Stop(`${path} holds no entry that can be read. ${verification.sentences.join(' ')}`, EXIT.refused);
  if (verification.rigs.length > 1) throw new Stop(`${path} holds ${verification.rigs.length} rigs, or a line whose rig was damaged; give one logbook at a time.`, EXIT.refused);
  if (!verification.whole) process.stderr.write(`seamward: ${verification.sentences.join(' ')}\n`);
  const { state, disputes } = rigBook(rigId, undefined, lines);
  for (const dispute of disputes) process.stderr.write(`seamward: ${dispute.sentence}\n`);
  return { lines, state, rig: state.subject };
};
