import { describe, expect, it } from 'vitest';
import { type BodyCheck, digestOf, hashOf, type Line, type LogbookStore, type PhotoStore, readLogbook, type Stamp, writeLogbook } from '../logbook';
import type { Draft } from '../terms';

/**
 * What every store of logbooks promises, as checks that each adapter runs against itself.
 * `again` opens the same data a second time, as another window or another start of the program would.
 */
export type Opened = { readonly store: LogbookStore; readonly again: () => Promise<LogbookStore> };
export type OpenStore = (stamp: Stamp, check?: BodyCheck) => Promise<Opened>;

/** A clock that goes on a second at a look, and chance that repeats from run to run. */
export const steadyStamp = (seed = 1): Stamp => {
  let looks = 0;
  let state = Math.imul(seed, 0x9e3779b1) >>> 0;
  return {
    now: () => new Date(Date.UTC(2026, 4, 3, 9) + 1000 * looks++).toISOString(),
    random: (bytes) =>
      Uint8Array.from({ length: bytes }, () => {
        state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
        return state >>> 24;
      }),
  };
};

export const draft = (rig: string, n = 0, more: Partial<Draft> = {}): Draft => ({
  rig,
  kind: 'seal-grade',
  version: 1,
  observed_at: '2026-05-03T09:00:00Z',
  by: 'the owner',
  place: { at: 'station', station: `window-${n}`, side: 'outside' },
  body: { grade: 'S1', n },
  ...more,
});

/** Ids that a careless key would confuse. */
const NEAR_MISSES = ['rig', 'rig-1', 'rig-10', 'rig-1/', 'rig-1\u0000', 'rig-1\uffff', 'Rig-1', 'rig‑1', '1', '01', 'rig,1', '__proto__', 'constructor', 'é', 'e\u0301', '🚐'];

const chainHolds = (lines: readonly Line[]): void => {
  const { verification } = readLogbook(writeLogbook(lines));
  expect(verification.whole, verification.sentences.join(' ')).toBe(true);
};

export const acceptLogbookStore = (name: string, open: OpenStore): void => {
  describe(`${name} keeps logbooks`, () => {
    it('starts empty', async () => {
      const { store } = await open(steadyStamp());
      expect(await store.rigs()).toEqual([]);
      expect(await store.lines('rig-1')).toEqual([]);
    });

    it('numbers a device’s entries from 1 and chains each to the line before', async () => {
      const { store, again } = await open(steadyStamp());
      const first = await store.append([draft('rig-1', 1), draft('rig-1', 2)]);
      const later = await (await again()).append([draft('rig-1', 3)]);
      const lines = [...first, ...later];
      expect(lines.map((l) => l.entry.counter)).toEqual([1, 2, 3]);
      expect(lines.map((l) => l.entry.previous)).toEqual([null, lines[0]?.hash, lines[1]?.hash]);
      for (const line of lines) {
        expect(line.hash).toBe(hashOf(line.text));
        expect(JSON.parse(line.text)).toEqual(line.entry);
      }
      expect(new Set((await store.lines('rig-1')).map((l) => l.text))).toEqual(new Set(lines.map((l) => l.text)));
      chainHolds(await store.lines('rig-1'));
    });

    it('keeps rigs apart whose ids are nearly the same', async () => {
      const { store } = await open(steadyStamp());
      for (const [n, rig] of NEAR_MISSES.entries()) await store.append(Array.from({ length: n + 1 }, (_, i) => draft(rig, i)));
      expect([...(await store.rigs())].sort()).toEqual([...NEAR_MISSES].sort());
      for (const [n, rig] of NEAR_MISSES.entries()) {
        const lines = await store.lines(rig);
        expect(lines.map((l) => l.entry.counter).sort((a, b) => a - b)).toEqual(Array.from({ length: n + 1 }, (_, i) => i + 1));
        expect(lines.every((l) => l.entry.rig === rig)).toBe(true);
        chainHolds(lines);
      }
    });

    it('gives the lines back in the order of the drafts, also across rigs', async () => {
      const { store } = await open(steadyStamp());
      const lines = await store.append([draft('b', 1), draft('a', 2), draft('b', 3)]);
      expect(lines.map((l) => [l.entry.rig, l.entry.counter])).toEqual([
        ['b', 1],
        ['a', 1],
        ['b', 2],
      ]);
    });

    it('never uses a counter twice, whoever writes at the same time', async () => {
      const { store, again } = await open(steadyStamp());
      const windows = [store, await again(), await again()];
      await Promise.all(Array.from({ length: 30 }, (_, i) => (windows[i % 3] ?? store).append([draft('rig-1', i), draft('rig-1', i + 100)])));
      const lines = await store.lines('rig-1');
      expect(lines).toHaveLength(60);
      expect(new Set(lines.map((l) => l.entry.device)).size).toBe(1);
      expect(lines.map((l) => l.entry.counter).sort((a, b) => a - b)).toEqual(Array.from({ length: 60 }, (_, i) => i + 1));
      chainHolds(lines);
    });

    it('writes all of a batch or none', async () => {
      const { store } = await open(steadyStamp());
      await store.append([draft('rig-1', 1)]);
      await expect(store.append([draft('rig-1', 2), draft('rig-1', 3, { body: { pressure: Number.NaN } })])).rejects.toThrow();
      await expect(store.append([draft('rig-1', 2), draft('rig-2', 3, { observed_at: 'yesterday' })])).rejects.toThrow();
      expect(await store.lines('rig-1')).toHaveLength(1);
      expect(await store.rigs()).toEqual(['rig-1']);
      const [next] = await store.append([draft('rig-1', 4)]);
      expect(next?.entry.counter).toBe(2);
    });

    it('takes lines from elsewhere byte for byte, once, and names those it refuses', async () => {
      const one = (await open(steadyStamp(1))).store;
      const two = (await open(steadyStamp(2))).store;
      const lines = await one.append([draft('rig-1', 1), draft('rig-1', 2, { kind: 'from-a-later-version', version: 7, body: { what: [1, { x: null }] } })]);
      const { by, ...rest } = JSON.parse(lines[0]?.text ?? '') as Record<string, unknown>;
      const odd = JSON.stringify({ extra: 1, ...rest, by }, null, 1).replaceAll('\n', ' ');
      const texts = [...lines.map((l) => l.text), '{"id":1}', 'not even JSON', odd, '', writeLogbook(lines).trimEnd().split('\n').at(-1) ?? ''];
      const first = await two.take(texts);
      expect(first.taken.map((l) => l.text)).toEqual([lines[0]?.text, lines[1]?.text, odd]);
      expect(first.refused.map((r) => r.line)).toEqual([3, 4]);
      expect(first.refused.every((r) => r.refusals.length > 0)).toBe(true);
      const second = await two.take(texts);
      expect(second.taken).toEqual([]);
      expect(second.known).toBe(3);
      expect(new Set((await two.lines('rig-1')).map((l) => l.text))).toEqual(new Set([lines[0]?.text, lines[1]?.text, odd]));
    });

    it('asks whoever knows the kinds about what comes from elsewhere', async () => {
      const one = (await open(steadyStamp(1))).store;
      const check: BodyCheck = (entry) => (entry.kind === 'bad' ? [{ code: 'bad', path: 'body', expected: 'good', received: 'bad', sentence: 'This is bad.' }] : []);
      const two = (await open(steadyStamp(2), check)).store;
      const lines = await one.append([draft('rig-1', 1), draft('rig-1', 2, { kind: 'bad' }), draft('rig-1', 3)]);
      const { taken, refused } = await two.take(lines.map((l) => l.text));
      expect(taken.map((l) => l.entry.counter)).toEqual([1, 3]);
      expect(refused.map((r) => [r.line, r.refusals[0]?.code])).toEqual([[2, 'bad']]);
    });

    it('names in each entry what it holds from other devices', async () => {
      const one = (await open(steadyStamp(1))).store;
      const two = (await open(steadyStamp(2))).store;
      const [a] = await one.append([draft('rig-1', 1)]);
      const [b] = await two.append([draft('rig-1', 2)]);
      expect(b?.entry.heads).toEqual([]);
      await two.take([a?.text ?? '']);
      const [c] = await two.append([draft('rig-1', 3)]);
      expect(c?.entry.heads).toEqual([{ device: a?.entry.device, counter: 1, hash: a?.hash }]);
      expect(c?.entry.previous).toBe(b?.hash);
      const [elsewhere] = await two.append([draft('rig-2', 3)]);
      expect(elsewhere?.entry.heads).toEqual([]);
    });

    it('exchanged both ways gives the same digest on both sides', async () => {
      const one = (await open(steadyStamp(1))).store;
      const two = (await open(steadyStamp(2))).store;
      for (let i = 0; i < 4; i += 1) {
        await one.append([draft('rig-1', i)]);
        await two.append([draft('rig-1', i), draft('rig-1', i + 10)]);
        if (i % 2 === 0) await two.take((await one.lines('rig-1')).map((l) => l.text));
      }
      await one.take((await two.lines('rig-1')).map((l) => l.text));
      await two.take((await one.lines('rig-1')).map((l) => l.text));
      const [a, b] = [await one.lines('rig-1'), await two.lines('rig-1')];
      expect(digestOf(a.map((l) => l.hash))).toBe(digestOf(b.map((l) => l.hash)));
      expect(writeLogbook(a)).toBe(writeLogbook(b));
      expect(a).toHaveLength(12);
      chainHolds(a);
    });

    it('keeps both of two different lines with one id', async () => {
      const one = (await open(steadyStamp(1))).store;
      const two = (await open(steadyStamp(2))).store;
      const [line] = await one.append([draft('rig-1', 1)]);
      const changed = (line?.text ?? '').replace('"S1"', '"S4"');
      const { taken } = await two.take([line?.text ?? '', changed]);
      expect(taken).toHaveLength(2);
      expect(await two.lines('rig-1')).toHaveLength(2);
    });

    it('forgets one rig and no other, and never uses its counters again', async () => {
      const { store } = await open(steadyStamp());
      for (const rig of NEAR_MISSES) await store.append([draft(rig, 1)]);
      const before = await store.append([draft('rig-1', 2)]);
      const exported = (await store.lines('rig-1')).map((l) => l.text);
      await store.forget('rig-1');
      expect(await store.lines('rig-1')).toEqual([]);
      expect([...(await store.rigs())].sort()).toEqual(NEAR_MISSES.filter((r) => r !== 'rig-1').sort());
      for (const rig of NEAR_MISSES) if (rig !== 'rig-1') expect(await store.lines(rig)).toHaveLength(1);
      const [anew] = await store.append([draft('rig-1', 3)]);
      await store.take(exported);
      await store.append([draft('rig-1', 4)]);
      const lines = await store.lines('rig-1');
      expect(lines).toHaveLength(4);
      expect(anew?.entry.device).not.toBe(before[0]?.entry.device);
      chainHolds(lines);
    });

    it('goes on from its own lines when they come back from a file', async () => {
      const { store, again } = await open(steadyStamp());
      const lines = await store.append([draft('rig-1', 1), draft('rig-1', 2)]);
      expect((await store.take(lines.map((l) => l.text))).known).toBe(2);
      const [next] = await (await again()).append([draft('rig-1', 3)]);
      expect(next?.entry.counter).toBe(3);
      expect(next?.entry.previous).toBe(lines[1]?.hash);
    });
  });
};

export const acceptPhotoStore = (name: string, open: () => Promise<PhotoStore>): void => {
  describe(`${name} keeps photographs`, () => {
    it('under the hash of their bytes, each once, byte for byte', async () => {
      const store = await open();
      const bytes = Uint8Array.from({ length: 1000 }, (_, i) => i & 255);
      const hash = await store.put(bytes, 'image/jpeg');
      // SHA-256 of these thousand bytes, by `sha256sum` of GNU coreutils.
      expect(hash).toBe('a8af099bf2e878609558dbf69d8f88f4a31040a8cf84b549a0cfa912f12ffc3f');
      expect(await store.put(bytes.slice(), 'image/jpeg')).toBe(hash);
      expect(await store.hashes()).toEqual([hash]);
      const back = await store.get(hash);
      expect(back?.bytes).toEqual(bytes);
      expect(back?.media_type).toBe('image/jpeg');
      expect(await store.has(hash)).toBe(true);
      expect(await store.has('0'.repeat(64))).toBe(false);
      expect(await store.get('0'.repeat(64))).toBeUndefined();
    });
  });
};
