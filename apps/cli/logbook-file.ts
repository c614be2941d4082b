import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { kinds, readBody } from '../../src/entries';
import { type BodyCheck, fold, type Line, readLogbook, type State, type Verification } from '../../src/logbook';
import { blankRig, type Rig } from '../../src/rig';
import { EXIT, Stop } from './outcome';

/** Node's own SHA-256: the same digest as the pure one, several times faster. */
export const nodeHash = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** Judges a body against its kind; kinds this version does not know are kept unread. */
export const bodyCheck: BodyCheck = (entry) => {
  const kind = kinds.find((k) => k.id === entry.kind);
  if (kind === undefined || entry.version !== kind.version) return [];
  const read = readBody(kind, entry.body);
  return read.ok ? [] : read.refusals;
};

export type OpenLogbook = { readonly lines: readonly Line[]; readonly verification: Verification; readonly state: State<Rig>; readonly rig: Rig };

export const cannotRead = (path: string, error: unknown): Stop => {
  const code = (error as NodeJS.ErrnoException).code;
  const why = code === 'ENOENT' ? 'there is no such file' : code === 'EISDIR' ? 'it is a folder' : code === 'EACCES' ? 'this user may not read it' : String(code ?? error);
  return new Stop(`${path} cannot be read: ${why}.`);
};

/** Opens a logbook file and folds it. Damage is told on standard error and does not hide what is whole. */
export const openLogbook = (path: string): OpenLogbook => {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    throw cannotRead(path, error);
  }
  const { lines, verification } = readLogbook(text, { check: bodyCheck, hash: nodeHash });
  const rigId = lines[0]?.entry.rig;
  if (rigId === undefined) throw new Stop(`${path} holds no entry that can be read. ${verification.sentences.join(' ')}`, EXIT.refused);
  if (verification.rigs.length > 1) throw new Stop(`${path} holds ${verification.rigs.length} rigs; give one logbook file at a time.`, EXIT.refused);
  if (!verification.whole) process.stderr.write(`seamward: ${verification.sentences.join(' ')}\n`);
  const state = fold(kinds, blankRig(rigId), lines);
  return { lines, verification, state, rig: state.subject };
};
