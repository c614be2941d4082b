/**
 * What a photograph is, by its first bytes; the file's name and what the browser says of it are not asked.
 * JPEG: ISO/IEC 10918-1, SOI and a marker. PNG: ISO/IEC 15948, 5.2. WebP: RFC 9649, 2.4 and 2.7. HEIC: ISO/IEC 23008-12, brands in `ftyp`.
 * From memory, unconfirmed; checked against files that another program made.
 */
export type PhotoForm = 'image/jpeg' | 'image/png' | 'image/webp' | 'image/heic';

const HEIC_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1']);
const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

export const ascii = (bytes: Uint8Array, from: number, length: number): string => String.fromCharCode(...bytes.subarray(from, from + length));

export const photoForm = (bytes: Uint8Array): PhotoForm | undefined => {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (PNG_SIGNATURE.every((b, i) => bytes[i] === b)) return 'image/png';
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 4) === 'WEBP') return 'image/webp';
  if (ascii(bytes, 4, 4) === 'ftyp') {
    const end = Math.min(((bytes[2] ?? 0) << 8) | (bytes[3] ?? 0), 256, bytes.length);
    if (ascii(bytes, 8, 4) === 'avif' || ascii(bytes, 8, 4) === 'avis') return undefined;
    for (let at = 8; at + 4 <= end; at += 4) if (at !== 12 && HEIC_BRANDS.has(ascii(bytes, at, 4))) return 'image/heic';
  }
  return undefined;
};
