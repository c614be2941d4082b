import { ascii, photoForm } from './sniff';

/**
 * When and which way up a photograph was taken, by the camera's own note in the file (Exif 2.32, CIPA DC-008: tags 0x0112 Orientation,
 * 0x9003 DateTimeOriginal, 0x9011 OffsetTimeOriginal; from memory, unconfirmed, checked against what another program reads).
 * Every offset in the file is checked before it is followed: a file may claim anything. Nothing else is read, above all no location.
 */
export type Capture = {
  /** 1 to 8, as Exif counts the ways a picture can lie. */
  readonly orientation?: number;
  /** `2026-05-03T10:12:00`, as the camera's clock showed it. */
  readonly taken_at?: string;
  /** `+02:00`; most cameras leave it out, and then the time is the camera's local time. */
  readonly taken_offset?: string;
};

type Tiff = { readonly view: DataView; readonly little: boolean };

const EXIF_HEADER = 'Exif\0\0';
/** Notes sit near the start of a file; a HEIC file is looked through no further than this. [bytes] */
const LOOK_INTO = 1 << 20;

/** Where the TIFF block with the camera's note begins, or -1. */
const tiffStart = (bytes: Uint8Array): number => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  switch (photoForm(bytes)) {
    case 'image/jpeg':
      for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff; ) {
        const marker = bytes[at + 1];
        const length = view.getUint16(at + 2);
        if (marker === 0xe1 && ascii(bytes, at + 4, 6) === EXIF_HEADER) return at + 10;
        if (marker === 0xda || length < 2) return -1;
        at += 2 + length;
      }
      return -1;
    case 'image/png':
      return chunk(bytes, 8, (at) => ({ name: ascii(bytes, at + 4, 4), length: view.getUint32(at), body: at + 8, next: at + 12 + view.getUint32(at) }), 'eXIf', 12);
    case 'image/webp':
      return chunk(
        bytes,
        12,
        (at) => ({
          name: ascii(bytes, at, 4),
          length: view.getUint32(at + 4, true),
          body: at + 8,
          next: at + 8 + view.getUint32(at + 4, true) + (view.getUint32(at + 4, true) & 1),
        }),
        'EXIF',
        8,
      );
    case 'image/heic':
      for (let at = 0; at + 14 < Math.min(bytes.length, LOOK_INTO); at += 1) if (bytes[at] === 0x45 && ascii(bytes, at, 6) === EXIF_HEADER && isTiff(bytes, at + 6)) return at + 6;
      return -1;
    default:
      return -1;
  }
};

type Chunk = { readonly name: string; readonly length: number; readonly body: number; readonly next: number };

const chunk = (bytes: Uint8Array, first: number, read: (at: number) => Chunk, name: string, least: number): number => {
  for (let at = first; at + least <= bytes.length; ) {
    const found = read(at);
    // Some writers put the JPEG header in front here as well.
    if (found.name === name) return ascii(bytes, found.body, 6) === EXIF_HEADER ? found.body + 6 : found.body;
    at = found.next;
  }
  return -1;
};

const isTiff = (bytes: Uint8Array, at: number): boolean => ['II*\0', 'MM\0*'].includes(ascii(bytes, at, 4));

const uint16 = ({ view, little }: Tiff, at: number): number | undefined => (at >= 0 && at + 2 <= view.byteLength ? view.getUint16(at, little) : undefined);
const uint32 = ({ view, little }: Tiff, at: number): number | undefined => (at >= 0 && at + 4 <= view.byteLength ? view.getUint32(at, little) : undefined);

/** Where each wanted tag's record stands in a directory. */
const directory = (tiff: Tiff, at: number): ReadonlyMap<number, number> => {
  const records = new Map<number, number>();
  const count = Math.min(uint16(tiff, at) ?? 0, 500);
  for (let i = 0; i < count; i += 1) {
    const record = at + 2 + i * 12;
    const tag = uint16(tiff, record);
    if (tag !== undefined && record + 12 <= tiff.view.byteLength) records.set(tag, record);
  }
  return records;
};

const textAt = (tiff: Tiff, record: number | undefined): string | undefined => {
  if (record === undefined || uint16(tiff, record + 2) !== 2) return undefined;
  const count = uint32(tiff, record + 4) ?? 0;
  const at = count <= 4 ? record + 8 : (uint32(tiff, record + 8) ?? -1);
  if (count > 64 || at < 0 || at + count > tiff.view.byteLength) return undefined;
  const bytes = new Uint8Array(tiff.view.buffer, tiff.view.byteOffset + at, count);
  return ascii(bytes, 0, count).replace(/\0.*$/s, '');
};

export const captureOf = (bytes: Uint8Array): Capture => {
  const start = tiffStart(bytes);
  if (start < 0 || start + 8 > bytes.length || !isTiff(bytes, start)) return {};
  const tiff: Tiff = { view: new DataView(bytes.buffer, bytes.byteOffset + start, bytes.byteLength - start), little: bytes[start] === 0x49 };
  const first = directory(tiff, uint32(tiff, 4) ?? -1);
  const turned = first.get(0x0112);
  const orientation = turned === undefined ? undefined : uint16(tiff, turned + 8);
  const pointer = first.get(0x8769);
  const exif = pointer === undefined ? undefined : directory(tiff, uint32(tiff, pointer + 8) ?? -1);
  const taken = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2}:\d{2})$/.exec(textAt(tiff, exif?.get(0x9003)) ?? '');
  const offset = textAt(tiff, exif?.get(0x9011))?.trim();
  return {
    ...(orientation !== undefined && orientation >= 1 && orientation <= 8 && { orientation }),
    ...(taken && taken[1] !== '0000' && { taken_at: `${taken[1]}-${taken[2]}-${taken[3]}T${taken[4]}` }),
    ...(taken && offset && /^[+-]\d{2}:\d{2}$/.test(offset) && { taken_offset: offset }),
  };
};
