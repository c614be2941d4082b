import { hashOfBytes } from '../../logbook';
import type { PhotoRef } from '../../terms';
import { accept, type Refusal, type Result, refuse } from '../../units';
import { captureOf } from './exif';
import { type Reduced, reducePhoto } from './reduce';
import { photoForm } from './sniff';

export { type Capture, captureOf } from './exif';
export { pictureForPaper, type Reduced, reducedSize } from './reduce';
export { type PhotoForm, photoForm } from './sniff';

/** A photograph as it will be kept, with its reference for the entry. */
export type Prepared = {
  readonly bytes: Uint8Array;
  readonly ref: PhotoRef;
  /** Something people should know: no preview, the original was kept after all. */
  readonly remark?: string;
};

/** From here on a photograph is refused. [bytes] */
export const LARGEST_PHOTO = 40_000_000;
/** From here on a reduced copy is offered before the photograph is kept. [bytes] */
const LARGE_PHOTO = 12_000_000;

const megabytes = (bytes: number): string => `${(bytes / 1_000_000).toFixed(bytes < 10_000_000 ? 1 : 0)} MB`;

/** Why a photograph cannot be kept; nothing when it can. The original stays where it is, and the entry is kept without it. */
export const photoRefusals = (bytes: Uint8Array): readonly Refusal[] => {
  if (bytes.length === 0)
    return [
      {
        code: 'empty',
        path: 'photo',
        expected: 'a photograph',
        received: 'an empty file',
        sentence: 'This file is empty. Take the photograph again; the entry can be kept without it.',
      },
    ];
  if (photoForm(bytes) === undefined)
    return [
      {
        code: 'not-a-photo',
        path: 'photo',
        expected: 'JPEG, PNG, WebP or HEIC',
        received: 'another kind of file',
        sentence: 'This is not a photograph that can be kept here: JPEG, PNG, WebP and HEIC can. The entry can be kept without it.',
      },
    ];
  if (bytes.length >= LARGEST_PHOTO)
    return [
      {
        code: 'too-large',
        path: 'photo',
        expected: `less than ${megabytes(LARGEST_PHOTO)}`,
        received: megabytes(bytes.length),
        sentence: `This photograph has ${megabytes(bytes.length)}; at most ${megabytes(LARGEST_PHOTO)} can be kept. Take it at a smaller size. Your original is untouched, and the entry can be kept without it.`,
      },
    ];
  return [];
};

/** A question worth asking before a photograph is kept whole; undefined when it is not large, or is refused either way. */
export const photoQuestion = (bytes: Uint8Array): string | undefined =>
  bytes.length >= LARGE_PHOTO && bytes.length < LARGEST_PHOTO ? `This photograph has ${megabytes(bytes.length)}. Keep it as it is, or keep a reduced copy?` : undefined;

/**
 * Makes a photograph ready to be kept: the original as it is, or a reduced copy when the person chose one, with the original's hash,
 * capture time and offset in its reference. When the browser cannot reduce it, the original is kept, and said so.
 *
 * @param reduce  how to make a smaller copy; the browser's own way unless a check brings another
 */
export const preparePhoto = async (
  bytes: Uint8Array,
  smaller: boolean,
  reduce: (bytes: Uint8Array, media_type: string) => Promise<Reduced | undefined> = reducePhoto,
): Promise<Result<Prepared>> => {
  const refusals = photoRefusals(bytes);
  const form = photoForm(bytes);
  if (refusals.length > 0 || form === undefined) return refuse(...refusals);
  const { taken_at, taken_offset } = captureOf(bytes);
  const taken = { ...(taken_at !== undefined && { taken_at }), ...(taken_offset !== undefined && { taken_offset }) };
  const hash = hashOfBytes(bytes);
  const whole: PhotoRef = { hash, media_type: form, size_bytes: bytes.length, ...taken };
  const copy = smaller ? await reduce(bytes, form) : undefined;
  if (copy && copy.bytes.length < bytes.length)
    return accept({ bytes: copy.bytes, ref: { hash: hashOfBytes(copy.bytes), media_type: copy.media_type, size_bytes: copy.bytes.length, ...taken, original_hash: hash } });
  if (smaller && copy === undefined)
    return accept({ bytes, ref: whole, remark: 'This browser cannot make a smaller copy of this photograph, so the original was kept. There may be no preview here.' });
  return accept({ bytes, ref: whole });
};
