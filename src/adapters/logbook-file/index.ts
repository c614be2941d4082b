import { createHash, randomBytes } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open, rename, unlink } from 'node:fs/promises';
import { dirname } from 'node:path';
import { type Line, logbookLines, type ReadLogbook, type Verification, type VerifyOptions, verifier } from '../../logbook';
import type { Hash } from '../../terms';
import { LINE_BREAK, textOf } from '../logbook-bytes';

/**
 * Logbooks as files on a disk, read a line at a time. Lines are cut at the byte, before they are read as text,
 * so that one damaged character spoils one line and not the file.
 */
/** Longer than any line that could be an entry, in bytes: such a line is passed over without being held. */
const LONGEST_BYTES = 16_000_000;

/** The same SHA-256 as the logbook's own, from the machine's library: about five times as fast. */
const quickHash = (text: string): Hash => createHash('sha256').update(text, 'utf8').digest('hex');

type Heard = { readonly text: (text: string) => void; readonly unreadable: (why: 'no-text' | 'too-long') => void };

/** Cuts a file into lines. Resolves to whether the last line lacked its line break. */
const eachLine = async (path: string, heard: Heard): Promise<boolean> => {
  const say = (bytes: Uint8Array): void => {
    const text = textOf(bytes);
    if (text === undefined) heard.unreadable('no-text');
    else heard.text(text);
  };
  let rest: Buffer[] = [];
  let restBytes = 0;
  let tooLong = false;
  const end = (last: Buffer): void => {
    if (tooLong || restBytes + last.length > LONGEST_BYTES) heard.unreadable('too-long');
    else say(restBytes === 0 ? last : Buffer.concat([...rest, last]));
    rest = [];
    restBytes = 0;
    tooLong = false;
  };
  for await (const chunk of createReadStream(path, { highWaterMark: 1 << 18 }) as AsyncIterable<Buffer>) {
    let from = 0;
    for (let to = chunk.indexOf(LINE_BREAK); to >= 0; to = chunk.indexOf(LINE_BREAK, from)) {
      end(chunk.subarray(from, to));
      from = to + 1;
    }
    if (from < chunk.length && !tooLong) {
      rest.push(chunk.subarray(from));
      restBytes += chunk.length - from;
      if (restBytes > LONGEST_BYTES) {
        tooLong = true;
        rest = [];
      }
    }
  }
  const broken = restBytes > 0;
  if (broken) end(Buffer.alloc(0));
  return broken;
};

/** Verifies a logbook file without holding it. Rejects only when the file cannot be opened or read. */
export const verifyFile = async (path: string, options: VerifyOptions = {}): Promise<Verification> => {
  const verify = verifier({ hash: quickHash, ...options });
  return verify.end(await eachLine(path, { text: (text) => void verify.line(text), unreadable: verify.unreadable }));
};

/** Reads a logbook file: what can be read of it, and what is wrong with the rest. */
export const readLogbookFile = async (path: string, options: VerifyOptions = {}): Promise<ReadLogbook> => {
  const verify = verifier({ hash: quickHash, ...options });
  const lines = new Map<Hash, Line>();
  const broken = await eachLine(path, {
    text: (text) => {
      const line = verify.line(text);
      if (line) lines.set(line.hash, line);
    },
    unreadable: verify.unreadable,
  });
  return { lines: [...lines.values()], verification: verify.end(broken) };
};

/** Writes one rig's logbook beside its final place, flushes it to the disk, then moves it there: a file of that name is always whole. */
export const writeLogbookFile = async (path: string, lines: readonly Line[]): Promise<void> => {
  const beside = `${path}.${randomBytes(6).toString('hex')}.part`;
  try {
    const file = await open(beside, 'wx');
    try {
      let part = '';
      for (const line of logbookLines(lines)) {
        part += `${line}\n`;
        if (part.length > 1 << 20) {
          await file.writeFile(part);
          part = '';
        }
      }
      await file.writeFile(part);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(beside, path);
  } catch (error) {
    await unlink(beside).catch(() => undefined);
    throw error;
  }
  const folder = await open(dirname(path) || '.').catch(() => undefined);
  await folder?.sync().catch(() => undefined); // Some systems cannot flush a folder.
  await folder?.close();
};
