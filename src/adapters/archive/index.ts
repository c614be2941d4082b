import { strFromU8, strToU8, type UnzipFileInfo, unzipSync, type Zippable, zipSync } from 'fflate';
import { hashOfBytes, type Line, writeLogbook } from '../../logbook';
import type { Hash } from '../../terms';
import { accept, type Refusal, type Result, refuse } from '../../units';
import { photoForm } from '../photo/sniff';

/**
 * One file with a whole rig: `logbook.jsonl` and `photos/<hash>`. A common ZIP archive, so that any computer can open it.
 * It is read whole in memory, with limits set before anything is unpacked.
 */
const LOGBOOK = 'logbook.jsonl';
const PHOTO = /^photos\/([0-9a-f]{64})$/;

/** A photograph of 40 MB is refused when it is taken in; nothing honest is larger. [bytes] */
const LARGEST_PHOTO = 40_000_000;
/** About 400,000 entries. [bytes] */
const LARGEST_LOGBOOK = 200_000_000;
const LARGEST_WHOLE = 1_500_000_000;
const MOST_PARTS = 20_000;

export type PhotoPart = { readonly hash: Hash; readonly bytes: Uint8Array; readonly media_type: string };

export type Archive = {
  /** The logbook's own text: read it with `readLogbook`. */
  readonly logbook: string;
  readonly photos: readonly PhotoPart[];
  /** Parts that were not taken, and why. */
  readonly refused: readonly Refusal[];
};

/** The photographs that entries name. */
export const photosNamed = (lines: readonly Line[]): readonly Hash[] => [...new Set(lines.flatMap((l) => (l.entry.photos ?? []).map((p) => p.hash)))].sort();

/** The same logbook and photographs give the same archive, byte for byte. */
export const writeArchive = (lines: readonly Line[], photos: readonly Pick<PhotoPart, 'hash' | 'bytes'>[]): Uint8Array => {
  // ZIP writes the local time of the machine; one fixed day keeps the archive the same everywhere.
  const mtime = new Date(1980, 0, 2);
  const parts: Zippable = { [LOGBOOK]: [strToU8(writeLogbook(lines)), { level: 6, mtime }] };
  for (const { hash, bytes } of [...photos].sort((a, b) => (a.hash < b.hash ? -1 : 1))) parts[`photos/${hash}`] = [bytes, { level: 0, mtime }];
  return zipSync(parts);
};

/** Whether bytes begin as a ZIP archive does. */
export const isArchive = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5) && (bytes[3] === 4 || bytes[3] === 6);

const refusal = (code: string, path: string, expected: string, received: string, sentence: string): Refusal => ({ code, path, expected, received, sentence });

/** Control characters and endless names stay out of sentences. */
const shown = (name: string): string =>
  [...name]
    .map((c) => (c < ' ' ? '·' : c))
    .join('')
    .slice(0, 80);

/** Reads an archive. Refuses it as a whole only when it is no archive, asks for absurd room, or has no logbook. */
export const readArchive = (bytes: Uint8Array): Result<Archive> => {
  const refused: Refusal[] = [];
  const seen = new Set<string>();
  let [parts, whole] = [0, 0];
  let absurd: Refusal | undefined;

  const wanted = ({ name, originalSize, size }: UnzipFileInfo): boolean => {
    parts += 1;
    if (absurd) return false;
    if (parts > MOST_PARTS) absurd = refusal('too-many-parts', '', `at most ${MOST_PARTS} parts`, 'more', 'This archive has more parts than any logbook. It was not opened.');
    if (name.endsWith('/') && originalSize === 0) return false;
    const limit = name === LOGBOOK ? LARGEST_LOGBOOK : PHOTO.test(name) ? LARGEST_PHOTO : -1;
    if (limit < 0) {
      refused.push(refusal('odd-name', shown(name), `${LOGBOOK} or photos/ and a hash`, shown(name), `“${shown(name)}” is no part of a logbook and was left out.`));
      return false;
    }
    if (seen.has(name)) {
      refused.push(refusal('twice', name, 'each part once', 'twice', `“${name}” is there twice. The first was taken.`));
      return false;
    }
    seen.add(name);
    // Stored parts say their true size; packed ones could say anything, and are unpacked into exactly what they say.
    if (originalSize > limit || size > limit) {
      const over = refusal(
        'too-large',
        name,
        `at most ${limit / 1_000_000} MB`,
        `${Math.round(Math.max(originalSize, size) / 1_000_000)} MB`,
        `“${name}” is larger than any honest part and was left out.`,
      );
      if (name === LOGBOOK) absurd = over;
      refused.push(over);
      return false;
    }
    whole += originalSize;
    if (whole > LARGEST_WHOLE)
      absurd = refusal(
        'too-large',
        '',
        `at most ${LARGEST_WHOLE / 1_000_000} MB in all`,
        'more',
        'This archive would unpack to more than this device can hold. It was not opened.',
      );
    return absurd === undefined;
  };

  let unpacked: Record<string, Uint8Array>;
  try {
    unpacked = unzipSync(bytes, { filter: wanted });
  } catch {
    return refuse(
      refusal('not-an-archive', '', 'a whole archive', 'a damaged one', 'This archive is cut off or damaged and cannot be opened. Export it again where it came from.'),
    );
  }
  if (absurd) return refuse(absurd);
  const logbook = Object.hasOwn(unpacked, LOGBOOK) ? unpacked[LOGBOOK] : undefined;
  if (logbook === undefined) return refuse(refusal('no-logbook', LOGBOOK, LOGBOOK, 'nothing', 'There is no logbook in this archive.'));
  const photos: PhotoPart[] = [];
  for (const [name, photo] of Object.entries(unpacked)) {
    const hash = PHOTO.exec(name)?.[1];
    if (hash === undefined) continue;
    const form = photoForm(photo);
    if (hashOfBytes(photo) !== hash)
      refused.push(refusal('changed', name, 'bytes that fit the name', 'other bytes', `The photograph ${hash.slice(0, 8)} is damaged and was left out.`));
    else if (form === undefined)
      refused.push(refusal('not-a-photo', name, 'JPEG, PNG, WebP or HEIC', 'something else', `The file ${hash.slice(0, 8)} is no photograph and was left out.`));
    else photos.push({ hash, bytes: photo, media_type: form });
  }
  return accept({ logbook: strFromU8(logbook), photos, refused });
};
