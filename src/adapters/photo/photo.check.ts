import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hashOfBytes } from '../../logbook';
import { captureOf, LARGEST_PHOTO, photoForm, photoQuestion, photoRefusals, preparePhoto, reducedSize } from './index';

/**
 * The camera's notes against what ImageMagick and `file` read from the same pictures (pictures.source.md): every column must agree exactly.
 * Notes inside HEIC have no such witness. Then: whatever bytes come, reading them ends and touches nothing beyond them.
 */
const pictures = readFileSync(new URL('./pictures.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((row) => {
    const [name = '', media_type = '', orientation = '', taken_at = '', taken_offset = '', base64 = ''] = row.split(',');
    return { name, media_type, orientation, taken_at, taken_offset, bytes: new Uint8Array(Buffer.from(base64, 'base64')) };
  });
const picture = (name: string): Uint8Array => pictures.find((p) => p.name === name)?.bytes ?? new Uint8Array();

describe('a photograph', () => {
  it('is known by its first bytes', () => {
    expect(pictures).toHaveLength(8);
    for (const p of pictures) expect(photoForm(p.bytes) ?? '', p.name).toBe(p.media_type);
    for (const text of ['', '<svg xmlns="http://www.w3.org/2000/svg"/>', 'GIF89a', '%PDF-1.7', 'RIFF0000WAVE']) expect(photoForm(new TextEncoder().encode(text))).toBeUndefined();
  });

  it('tells when and which way up it was taken, as other programs read it', () => {
    for (const p of pictures) {
      const { orientation, taken_at = '', taken_offset = '' } = captureOf(p.bytes);
      expect([orientation?.toString() ?? '', taken_at, taken_offset], p.name).toEqual([p.orientation, p.taken_at, p.taken_offset]);
    }
  });

  it('tells it in HEIC too, from the same block', () => {
    const jpeg = picture('little-endian.jpg');
    const block = jpeg.subarray(6, 6 + 101);
    expect(captureOf(Uint8Array.from([...picture('plain.heic'), ...block]))).toEqual(captureOf(jpeg));
  });

  it('is read without stumbling, whatever was done to it', () => {
    fc.assert(
      fc.property(fc.constantFrom(...pictures), fc.array(fc.tuple(fc.nat(600), fc.nat(255)), { maxLength: 12 }), fc.nat(600), (p, changes, length) => {
        const bytes = p.bytes.slice(0, length);
        for (const [at, byte] of changes) if (at < bytes.length) bytes[at] = byte;
        // In the middle of a larger buffer, so that reading beyond the end would find something.
        const wider = new Uint8Array(bytes.length + 200).fill(0x41);
        wider.set(bytes, 100);
        const inside = wider.subarray(100, 100 + bytes.length);
        expect(captureOf(inside)).toEqual(captureOf(bytes));
        const { orientation } = captureOf(bytes);
        if (orientation !== undefined) expect(orientation).toBeGreaterThanOrEqual(1);
      }),
      { numRuns: 2000 },
    );
  });

  it('that is too large, empty or something else is refused in a sentence, and large ones are asked about', () => {
    const large = new Uint8Array(LARGEST_PHOTO);
    large.set(picture('plain.jpg'));
    expect(photoRefusals(large).map((r) => r.code)).toEqual(['too-large']);
    expect(photoRefusals(large)[0]?.sentence).toContain('40 MB');
    expect(photoRefusals(large.subarray(0, LARGEST_PHOTO - 1))).toEqual([]);
    expect(photoQuestion(large.subarray(0, 20_000_000))).toBe('This photograph has 20 MB. Keep it as it is, or keep a reduced copy?');
    expect(photoQuestion(picture('plain.jpg'))).toBeUndefined();
    expect(photoRefusals(new Uint8Array()).map((r) => r.code)).toEqual(['empty']);
    expect(photoRefusals(new TextEncoder().encode('<svg/>')).map((r) => r.code)).toEqual(['not-a-photo']);
  });

  it('is kept as it is unless a smaller copy was chosen, and then the original’s hash and time stay', async () => {
    const bytes = picture('little-endian.jpg');
    const whole = await preparePhoto(bytes, false);
    expect(whole).toMatchObject({
      ok: true,
      value: { ref: { hash: hashOfBytes(bytes), media_type: 'image/jpeg', size_bytes: 409, taken_at: '2026-05-03T10:12:45', taken_offset: '-04:00' } },
    });
    expect(whole.ok && whole.value.bytes).toBe(bytes);
    const copy = picture('plain.jpg');
    const smaller = await preparePhoto(bytes, true, async () => ({ bytes: copy, media_type: 'image/jpeg', width_px: 6, height_px: 4 }));
    expect(smaller.ok && smaller.value.ref).toEqual({
      hash: hashOfBytes(copy),
      media_type: 'image/jpeg',
      size_bytes: 304,
      taken_at: '2026-05-03T10:12:45',
      taken_offset: '-04:00',
      original_hash: hashOfBytes(bytes),
    });
  });

  it('that the browser cannot decode is kept whole, and said so', async () => {
    const bytes = picture('plain.heic');
    const kept = await preparePhoto(bytes, true, async () => undefined);
    expect(kept.ok && kept.value.ref).toEqual({ hash: hashOfBytes(bytes), media_type: 'image/heic', size_bytes: bytes.length });
    expect(kept.ok && kept.value.remark).toContain('original was kept');
  });

  it('never grows when reduced', () => {
    expect(reducedSize(4000, 3000)).toEqual({ width: 2000, height: 1500 });
    expect(reducedSize(1200, 900)).toEqual({ width: 1200, height: 900 });
    expect(reducedSize(30_000, 1)).toEqual({ width: 2000, height: 1 });
  });
});
