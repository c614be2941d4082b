import { crc32, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { strToU8, type Zippable, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { hashOfBytes, readLogbook, writeLogbook } from '../../logbook';
import { memoryStore } from '../memory-store';
import { draft, steadyStamp } from '../store-acceptance';
import { isArchive, photosNamed, readArchive, writeArchive } from './index';

/**
 * The archive: comes back with the same digest and the same photographs, opens with another library, and a made-up one
 * cannot fill the memory, write elsewhere or stop the reading.
 */
const jpeg = (n: number): Uint8Array => Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, n, ...Array.from({ length: 50 }, (_, i) => (i * n) & 255)]);
const pictures = [1, 2].map(jpeg).map((bytes) => ({ hash: hashOfBytes(bytes), bytes }));
const refs = pictures.map(({ hash, bytes }) => ({ hash, media_type: 'image/jpeg', size_bytes: bytes.length }));

const made = async () => {
  const store = memoryStore({ stamp: steadyStamp() });
  await store.append([draft('rig-1', 1, { photos: refs }), draft('rig-1', 2)]);
  const lines = await store.lines('rig-1');
  return { lines, bytes: writeArchive(lines, pictures) };
};

/** Changes what the central directory says of a part's unpacked size: 24 bytes after its signature. */
const claim = (bytes: Uint8Array, was: number, now: number): void => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; at + 46 < bytes.length; at += 1) if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) === was) view.setUint32(at + 24, now, true);
};

describe('an archive', () => {
  it('comes back with the same logbook and the same photographs', async () => {
    const { lines, bytes } = await made();
    expect(isArchive(bytes)).toBe(true);
    const read = readArchive(bytes);
    if (!read.ok) throw new Error(read.refusals[0]?.sentence);
    expect(read.value.logbook).toBe(writeLogbook(lines));
    expect(readLogbook(read.value.logbook).verification.whole).toBe(true);
    expect(read.value.photos.map((p) => [p.hash, p.media_type]).sort()).toEqual(pictures.map((p) => [p.hash, 'image/jpeg']).sort());
    for (const photo of read.value.photos) expect(hashOfBytes(photo.bytes)).toBe(photo.hash);
    expect(read.value.refused).toEqual([]);
    expect(photosNamed(lines)).toEqual(pictures.map((p) => p.hash).sort());
    expect(writeArchive([...lines].reverse(), [...pictures].reverse())).toEqual(bytes);
  });

  it('is a plain ZIP file: Node’s own library unpacks its first part, and its check sum fits', async () => {
    const { lines, bytes } = await made();
    // PKWARE's application note on .ZIP files, 4.3.7: the local header; from memory, unconfirmed.
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    expect(view.getUint32(0, true)).toBe(0x04034b50);
    const [method, crc, packed, unpacked, name, extra] = [
      view.getUint16(8, true),
      view.getUint32(14, true),
      view.getUint32(18, true),
      view.getUint32(22, true),
      view.getUint16(26, true),
      view.getUint16(28, true),
    ];
    expect([method, Buffer.from(bytes.subarray(30, 30 + name)).toString()]).toEqual([8, 'logbook.jsonl']);
    const text = inflateRawSync(bytes.subarray(30 + name + extra, 30 + name + extra + packed));
    expect([text.length, crc32(text)]).toEqual([unpacked, crc]);
    expect(text.toString()).toBe(writeLogbook(lines));
  });

  it('takes no odd names, no changed photographs and nothing that is no photograph', async () => {
    const { lines } = await made();
    const [one] = pictures;
    const text = strToU8('#!/bin/sh');
    const parts: Zippable = {
      'logbook.jsonl': strToU8(writeLogbook(lines)),
      '../../etc/passwd': text,
      'photos/../x': text,
      [`photos/${one?.hash}`]: jpeg(9),
      [`photos/${hashOfBytes(text)}`]: text,
      'photos/': new Uint8Array(),
      '/absolute': text,
      'C:\\x': text,
      __proto__x: text,
    };
    const read = readArchive(zipSync(parts));
    expect(read.ok && read.value.photos).toEqual([]);
    expect(read.ok && read.value.refused.map((r) => r.code).sort()).toEqual(['changed', 'not-a-photo', 'odd-name', 'odd-name', 'odd-name', 'odd-name', 'odd-name']);
  });

  it('that asks for absurd room is not opened', async () => {
    const bomb = zipSync({ 'logbook.jsonl': [new Uint8Array(1000), { level: 9 }] });
    claim(bomb, 1000, 201_000_000);
    const read = readArchive(bomb);
    expect(!read.ok && read.refusals.map((r) => r.code)).toEqual(['too-large']);
  });

  it('that lies about a part’s size gets no more room than it claimed', async () => {
    const { lines } = await made();
    const bytes = zipSync({ 'logbook.jsonl': [strToU8(writeLogbook(lines)), { level: 9 }], [`photos/${'a'.repeat(64)}`]: [new Uint8Array(5_000_000), { level: 9 }] });
    claim(bytes, 5_000_000, 10);
    const read = readArchive(bytes);
    expect(read.ok && read.value.refused.map((r) => r.code)).toEqual(['changed']);
  });

  it('with too many parts, without a logbook, cut off or made of anything is refused in a sentence', async () => {
    const many: Record<string, Uint8Array> = {};
    for (let i = 0; i < 20_001; i += 1) many[`x${i}`] = new Uint8Array();
    expect(readArchive(zipSync(many))).toMatchObject({ ok: false, refusals: [{ code: 'too-many-parts' }] });
    expect(readArchive(zipSync({ a: new Uint8Array(1) }))).toMatchObject({ ok: false, refusals: [{ code: 'no-logbook' }] });
    const { bytes } = await made();
    expect(readArchive(bytes.subarray(0, bytes.length - 30))).toMatchObject({ ok: false, refusals: [{ code: 'not-an-archive' }] });
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(bytes.length - 1), fc.nat(255)), { minLength: 1, maxLength: 8 }), fc.nat(bytes.length), (changes, length) => {
        const mangled = bytes.slice(0, Math.max(length, bytes.length >> 1));
        for (const [at, byte] of changes) if (at < mangled.length) mangled[at] = byte;
        const read = readArchive(mangled);
        if (read.ok) for (const photo of read.value.photos) expect(hashOfBytes(photo.bytes)).toBe(photo.hash);
        else expect(read.refusals[0]?.sentence.length).toBeGreaterThan(10);
      }),
      { numRuns: 500 },
    );
  });
});
