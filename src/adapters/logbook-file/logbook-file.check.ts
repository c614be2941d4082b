import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readLogbook, writeLogbook } from '../../logbook';
import { readLogbookBytes } from '../logbook-bytes';
import { memoryStore } from '../memory-store';
import { draft, steadyStamp } from '../store-acceptance';
import { readLogbookFile, verifyFile, writeLogbookFile } from './index';

/** A logbook on a disk against the same logbook as text: both readers must say the same, to the last sentence, of whole and of damaged files. */
const folder = mkdtempSync(join(tmpdir(), 'logbook-'));
afterAll(() => rmSync(folder, { recursive: true }));
const path = join(folder, 'rig.jsonl');

const made = async (count = 40) => {
  const store = memoryStore({ stamp: steadyStamp() });
  await store.append(Array.from({ length: count }, (_, i) => draft('rig-1', i, { note: i % 3 === 0 ? 'Dichtung löst sich — ¼ in,\u2028密封 🚐' : 'dry' })));
  return store.lines('rig-1');
};

describe('a logbook on a disk', () => {
  it('is written whole, or not at all', async () => {
    const lines = await made();
    await writeLogbookFile(path, lines);
    expect(readFileSync(path, 'utf8')).toBe(writeLogbook(lines));
    expect(readdirSync(folder)).toEqual(['rig.jsonl']);
    const { lines: back, verification } = await readLogbookFile(path);
    expect(verification).toEqual(readLogbook(writeLogbook(lines)).verification);
    expect(back).toEqual(readLogbook(writeLogbook(lines)).lines);
    expect(await verifyFile(path)).toEqual(verification);
    await expect(writeLogbookFile(join(folder, 'no-such-folder', 'x'), lines)).rejects.toThrow();
    expect(readdirSync(folder)).toEqual(['rig.jsonl']);
  });

  it('is judged as its text is, wherever it is cut', async () => {
    const bytes = Buffer.from(writeLogbook(await made(6)));
    for (let length = 0; length <= bytes.length; length += 13) {
      const part = bytes.subarray(0, length);
      const text = part.toString('utf8');
      if (text.includes('\ufffd')) continue;
      writeFileSync(path, part);
      expect(await verifyFile(path)).toEqual(readLogbook(text).verification);
      expect(readLogbookBytes(part)).toEqual(readLogbook(text));
    }
  });

  it('with bytes that are not text sets that line aside and no other', async () => {
    const bytes = Buffer.from(writeLogbook(await made(6)));
    bytes[bytes.indexOf('löst') + 1] = 0xff;
    writeFileSync(path, bytes);
    const { lines, verification } = await readLogbookFile(path);
    expect(lines).toHaveLength(5);
    expect(readLogbookBytes(bytes)).toEqual({ lines, verification });
    expect(verification.quarantined.map((q) => [q.line, q.refusals[0]?.code])).toEqual([[1, 'not-text']]);
    expect(verification.whole).toBe(false);
  });

  it('with a line that never ends is not held in memory', async () => {
    const text = writeLogbook(await made(3));
    writeFileSync(path, `${'x'.repeat(17_000_000)}\n${text}`);
    const { lines, verification } = await readLogbookFile(path);
    expect(lines).toHaveLength(3);
    expect(verification.quarantined.map((q) => [q.line, q.refusals[0]?.code])).toEqual([[1, 'too-long']]);
  });
});
