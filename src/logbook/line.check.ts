import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../terms';
import { hashOf, lineOf, readLine, uuidV7, writeLine } from './index';

/**
 * One line. The hash against the published examples of SHA-256 (FIPS 180-4 example computations: “abc” and the two-block message; from memory,
 * and against `sha256sum` of GNU coreutils for a line with letters beyond ASCII); the id against the example of RFC 9562, appendix A.6
 * (seen as quoted by several libraries' own checks). All must agree exactly.
 */
const entry: Entry = {
  id: '017f22e2-79b0-7cc3-98c4-dc0c0c07398f',
  rig: 'rig-1',
  kind: 'seal-grade',
  version: 1,
  observed_at: '2022-03-01/2022-05-31',
  recorded_at: '2026-05-03T10:12:00.123-04:00',
  by: 'the owner',
  device: 'phone',
  counter: 1,
  previous: null,
  heads: [],
  place: { at: 'rig' },
  body: { grade: 'S1' },
};

describe('a line', () => {
  it('is hashed as the standard says', () => {
    expect(hashOf('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(hashOf('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe('248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1');
    // printf '{"note":"¼ in, löst sich 🚐"}' | sha256sum
    expect(hashOf('{"note":"¼ in, löst sich 🚐"}')).toBe('bb683e4a5028a8e1a6fc8f9641b5cf019007c210cd4656ded83cece32e581435');
  });

  it('gets an id that carries its time, version and variant', () => {
    const random = Uint8Array.from([0xcc, 0x31, 0x8c, 0x4d, 0xc0, 0xc0, 0xc0, 0x73, 0x98, 0xf0]);
    expect(uuidV7(1_645_557_742_000, random)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
    expect(uuidV7(-5, random).startsWith('00000000-0000-7')).toBe(true);
    fc.assert(
      fc.property(fc.nat(2 ** 31), fc.uint8Array({ minLength: 10, maxLength: 10 }), (seconds, chance) => {
        expect(uuidV7(seconds * 1000, chance)).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
        expect(uuidV7(seconds * 1000, chance) < uuidV7(seconds * 1000 + 1, new Uint8Array(10))).toBe(true);
      }),
    );
  });

  it('is written in one order of parts, whatever order they were given in', () => {
    const turned = Object.fromEntries(Object.entries(entry).reverse()) as Entry;
    expect(writeLine(turned)).toBe(writeLine(entry));
    expect(writeLine(entry)).toBe(
      '{"id":"017f22e2-79b0-7cc3-98c4-dc0c0c07398f","rig":"rig-1","kind":"seal-grade","version":1,"observed_at":"2022-03-01/2022-05-31","recorded_at":"2026-05-03T10:12:00.123-04:00","by":"the owner","device":"phone","counter":1,"previous":null,"heads":[],"place":{"at":"rig"},"body":{"grade":"S1"}}',
    );
  });

  it('stays one line whatever is in it, and reads back the same', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.string({ unit: 'binary' }), (value, note) => {
        const line = lineOf({ ...entry, body: { value }, note: `${note}\u2028\n\r` });
        expect(line.text).not.toMatch(/[\n\r\u2028\u2029]/);
        const back = readLine(line.text);
        expect(back.ok && back.value).toEqual(line);
        expect(line.hash).toBe(hashOf(line.text));
      }),
    );
  });

  it('with a number that cannot be written is our own mistake', () => {
    expect(() => lineOf({ ...entry, body: { x: Number.NaN } })).toThrow('must be refused before');
    expect(() => lineOf({ ...entry, counter: 0 })).toThrow('counter');
  });

  it('is refused with everything that is wrong with it at once', () => {
    const bad = { ...entry, id: 'x', observed_at: '2026-02-30', counter: 2, place: { at: 'station', station: 'w' }, photos: [{ hash: 'zz' }] };
    const read = readLine(JSON.stringify(bad));
    expect(!read.ok && read.refusals.map((r) => r.path)).toEqual(['id', 'observed_at', 'place', 'photos']);
    const second = readLine(JSON.stringify({ ...entry, counter: 2 }));
    expect(!second.ok && second.refusals.map((r) => r.code)).toEqual(['chain-start']);
    for (const when of ['2026-13-01', '2026-05-03T25:00:00Z', '2026-05-03T10:00:00', '2022-05-31/2022-03-01', '', 5])
      expect(readLine(JSON.stringify({ ...entry, observed_at: when })).ok).toBe(false);
  });
});
