import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byRig, digestOf, fold, merge, readLogbook, verifyLines, writeLogbook } from './index';
import { BLANK, type Deed, deeds, play, TOY_KINDS } from './made-up-logbooks';

/**
 * The logbook as a file: export and import give the same digest, two people's files merge to the same text whoever merges,
 * and a file that was cut, changed, doubled or made up is never taken for whole and never stops the reading of the rest.
 */
const runs = { numRuns: 200 };

const busyDeeds: readonly Deed[] = Array.from({ length: 60 }, (_, i) => ({
  device: i % 3,
  does: (['grade', 'gap', 'hear', 'correct', 'describe', 'withdraw'] as const)[i % 6] ?? 'grade',
  what: i * 13,
  value: i % 5,
  hours: i,
}));
const busy = play(busyDeeds);
const file = writeLogbook(busy);

describe('a logbook file', () => {
  it('comes back with the same lines, byte for byte, the same digest and the same state', () => {
    fc.assert(
      fc.property(deeds(), (all) => {
        const lines = play(all);
        const text = writeLogbook(lines);
        const { lines: back, verification } = readLogbook(text);
        expect(verification.sentences).toHaveLength(1);
        expect(verification.whole).toBe(true);
        expect(verification.digest).toBe(digestOf(lines.map((l) => l.hash)));
        expect(new Set(back.map((l) => l.text))).toEqual(new Set(lines.map((l) => l.text)));
        expect(writeLogbook(back)).toBe(text);
        expect(fold(TOY_KINDS, BLANK, back)).toEqual(fold(TOY_KINDS, BLANK, lines));
        expect(verifyLines(text.split('\n'))).toEqual(verification);
      }),
      runs,
    );
  });

  it('split between two people and merged again, by either, is the same text', () => {
    fc.assert(
      fc.property(deeds(), fc.array(fc.constantFrom(1, 2, 3), { minLength: 1 }), (all, whose) => {
        const lines = play(all);
        const has = (one: number) => lines.filter((_, i) => ((whose[i % whose.length] ?? 3) & one) > 0);
        const [owner, technician] = [has(1), has(2)];
        expect(writeLogbook(merge(owner, technician))).toBe(writeLogbook(lines));
        expect(writeLogbook(merge(technician, owner))).toBe(writeLogbook(lines));
      }),
      runs,
    );
  });

  it('cut in half, says so and keeps what is whole', () => {
    const half = file.slice(0, Math.floor(file.length / 2));
    const { lines, verification } = readLogbook(half);
    expect(verification.closing).toBe('cut');
    expect(verification.whole).toBe(false);
    expect(lines).toHaveLength(half.split('\n').length - 1);
    expect(verification.sentences[0]).toMatch(/^\d+ entries can be read and are safe to take in\. This file is not whole\.$/);
    expect(verification.sentences[1]).toMatch(/^The file ends in the middle of line \d+\./);
  });

  it('cut at a line end, at any line, is not taken for whole', () => {
    const rows = file.split('\n');
    for (let n = 0; n < rows.length - 1; n += 1) {
      const { verification, lines } = readLogbook(
        rows
          .slice(0, n)
          .map((r) => `${r}\n`)
          .join(''),
      );
      expect(verification.closing).toBe('missing');
      expect(verification.whole).toBe(false);
      expect(lines).toHaveLength(n);
    }
  });

  it('is only whole when nothing was changed: every single character, replaced, is noticed', () => {
    const small = writeLogbook(play(busyDeeds.slice(0, 9)));
    for (let at = 0; at < small.length; at += 1) {
      const other = small[at] === '0' ? '1' : '0';
      const { verification } = readLogbook(small.slice(0, at) + other + small.slice(at + 1));
      expect(verification.whole, `${at}: ${small.slice(at - 20, at)}[${small[at]}→${other}]`).toBe(false);
      expect(verification.sentences.length).toBeGreaterThan(1);
    }
  });

  it('names the line that was changed', () => {
    const rows = file.split('\n');
    const at = rows.findIndex((r, i) => i > 5 && r.includes('"kind":"grade"'));
    rows[at] = (rows[at] ?? '').replace(/"grade":"S\d"/, '"grade":"S9"');
    const { verification, lines } = readLogbook(rows.join('\n'));
    expect(lines).toHaveLength(busy.length);
    expect(verification.closing).toBe('wrong');
    expect(verification.sentences.join(' ')).toContain(`Line ${at + 1} was changed`);
  });

  it('with a line taken out names what is missing', () => {
    const rows = file.split('\n');
    const [gone] = rows.splice(8, 1);
    const { verification } = readLogbook(rows.join('\n'));
    const entry = JSON.parse(gone ?? '') as { counter: number; device: string };
    expect(verification.breaches.filter((b) => b.code === 'gap')).toMatchObject([{ device: entry.device, from: entry.counter, to: entry.counter }]);
    expect(verification.sentences.join(' ')).toContain(`Entry ${entry.counter} of device ${entry.device} is not in this file.`);
  });

  it('twice in one file does no harm, and two files that disagree are both kept and told', () => {
    const twice = readLogbook(file + file);
    expect(twice.verification.whole).toBe(true);
    expect(twice.verification.repeated).toBe(busy.length);
    expect(twice.lines).toHaveLength(busy.length);

    const changed = busy.map((l) => l.text.replace('"grade":"S1"', '"grade":"S4"'));
    const { verification, lines } = readLogbook(`${file}${changed.join('\n')}\n`);
    expect(verification.whole).toBe(false);
    expect(verification.breaches.some((b) => b.code === 'same-counter')).toBe(true);
    expect(lines.length).toBeGreaterThan(busy.length);
  });

  it('with carriage returns and a byte order mark is the same logbook', () => {
    expect(readLogbook(`\ufeff${file.replaceAll('\n', '\r\n')}`).verification).toEqual(readLogbook(file).verification);
  });

  it('made up or mangled never stops the reading', () => {
    const hostile = [
      '{"__proto__":{"polluted":1}}',
      file.split('\n')[0]?.replace('"body":{', '"body":{"__proto__":{"polluted":1},') ?? '',
      '['.repeat(200_000),
      `{"id":${'['.repeat(5000)}${']'.repeat(5000)}}`,
      '{"trailer":{"count":1e999,"heads":[],"digest":""}}',
      '{"trailer":null}',
      'null',
      '1e999',
      '"\\ud800"',
      file.split('\n')[0]?.replace('"counter":1,"previous":null', `"counter":9007199254740991,"previous":"${'a'.repeat(64)}"`) ?? '',
      '{"id":"00000000-0000-7000-8000-000000000001","rig":7}',
      '\u0000\u0001',
    ];
    const { lines, verification } = readLogbook(`${hostile.join('\n')}\n${file}`);
    expect(lines.length).toBeGreaterThanOrEqual(busy.length);
    expect(verification.quarantined.map((q) => q.line)).toEqual([1, 3, 4, 5, 6, 7, 8, 9, 11, 12]);
    expect(verification.quarantined.every((q) => (q.refusals[0]?.sentence.length ?? 0) > 10)).toBe(true);
    for (const rig of byRig(lines).values()) expect(() => fold(TOY_KINDS, BLANK, rig)).not.toThrow();
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(file.length - 1), fc.string({ maxLength: 3 }), fc.nat(40)), { minLength: 1, maxLength: 6 }), (cuts) => {
        let text = file;
        for (const [at, put, out] of cuts) text = text.slice(0, at) + put + text.slice(at + out);
        const read = readLogbook(text);
        expect(read.verification.whole && text !== file && read.verification.digest !== digestOf(busy.map((l) => l.hash))).toBe(false);
        for (const rig of byRig(read.lines).values()) expect(fold(TOY_KINDS, BLANK, rig).count).toBe(rig.length);
      }),
      runs,
    );
  });
});
