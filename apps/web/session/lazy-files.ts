import { type Line, type PhotoStore, readLogbook, writeLogbook } from '../../../src/logbook';
import type { Refusal } from '../../../src/units';
import type { Files, ReadFile } from './ports';

/** Bytes with which every ZIP archive begins: `PK`. */
const ZIP = [0x50, 0x4b] as const;

const readText = (text: string): Omit<ReadFile, 'photos'> => {
  const { lines, verification } = readLogbook(text);
  const doubt = verification.closing === 'right' ? undefined : verification.sentences.join(' ');
  return { lines: lines.map((l) => l.text), refused: verification.quarantined.map((q) => ({ line: q.line, refusals: q.refusals })), ...(doubt === undefined ? {} : { doubt }) };
};

const saidAtOnce = (refusals: readonly Refusal[]): Error => new Error(refusals.map((r) => r.sentence).join(' '));

const photosOf = async (hashes: readonly string[], store: PhotoStore) => {
  const found = [];
  for (const hash of hashes) {
    const photo = await store.get(hash);
    if (photo) found.push({ hash, bytes: photo.bytes });
  }
  return found;
};

/** Files out and in; the archive, the plan's document and the sample are loaded only when they are wanted. */
export const lazyFiles: Files = {
  logbook: async (lines) => writeLogbook(lines),
  archive: async (lines: readonly Line[], store) => {
    const { photosNamed, writeArchive } = await import('../../../src/adapters/archive');
    return writeArchive(lines, await photosOf(photosNamed(lines), store));
  },
  plan: async (plan, rig) => (await import('../../../src/report')).planDocument(plan, rig),
  paper: async (...given) => (await import('./paper')).paper(...given),
  read: async (_name, bytes) => {
    if (!ZIP.every((b, i) => bytes[i] === b)) return { ...readText(new TextDecoder().decode(bytes)), photos: [] };
    const { readArchive } = await import('../../../src/adapters/archive');
    const read = readArchive(bytes);
    if (!read.ok) throw saidAtOnce(read.refusals);
    const text = readText(read.value.logbook);
    return { ...text, photos: read.value.photos, refused: [...text.refused, ...read.value.refused.map((r) => ({ line: 0, refusals: [r] }))] };
  },
  demo: async () => writeLogbook((await import('../../demo')).demoLines()),
};
