import type { DeviceId } from '../terms';
import type { Breach } from './chain-ledger';
import type { Verification } from './verification';

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

const entriesOf = (device: DeviceId, from: number, to: number): string =>
  from === to ? `Entry ${from} of device ${short(device)} is` : `Entries ${from} to ${to} of device ${short(device)} are`;

/** Enough of a device's id to tell it from the others. */
const short = (device: DeviceId): string => (device.length > 13 ? device.slice(-8) : device);

const MOST_SAID = 20;

/** What is wrong with a logbook file and what is safe, in sentences. The first one sums up. */
export const inWords = (v: Omit<Verification, 'sentences'>, lastLine: number, unlisted: number): readonly string[] => {
  const sentences: string[] = [];
  const entries = count(v.entries, 'entry', 'entries');
  if (v.whole) sentences.push(`${entries}, whole: every line can be read, every chain holds, and the closing line agrees.`);
  else if (v.entries === 0) sentences.push('No entry could be read from this file.');
  else sentences.push(`${entries} can be read and ${v.entries === 1 ? 'is' : 'are'} safe to take in. This file is not whole.`);
  if (v.closing === 'cut') sentences.push(`The file ends in the middle of line ${lastLine}. What followed is not in this file. Export it again where it came from.`);
  if (v.closing === 'missing')
    sentences.push(
      v.entries === 0 && v.set_aside === 0
        ? 'There is nothing in it.'
        : 'The closing line is missing: the file was cut off at a line end, or it is not a whole export. Later entries may be missing. Export it again where it came from.',
    );
  if (v.closing === 'wrong') sentences.push(closingWords(v));
  const said: string[] = [];
  for (const q of v.quarantined) if (!(v.closing === 'cut' && q.line === lastLine)) said.push(`Line ${q.line} was set aside. ${q.refusals[0]?.sentence ?? ''}`);
  said.push(...v.breaches.filter((b) => b.code !== 'repeated' && b.code !== 'broken-link').map(breachWords), ...linkWords(v));
  sentences.push(...said.slice(0, MOST_SAID));
  const more = said.length - MOST_SAID + (v.set_aside - v.quarantined.length) + unlisted;
  if (said.length > MOST_SAID) sentences.push(`${count(more, 'more fault')} of these kinds.`);
  if (v.rigs.length > 1) sentences.push(`It holds entries of ${v.rigs.length} rigs.`);
  if (v.repeated > 0) sentences.push(`${count(v.repeated, 'line is', 'lines are')} there more than once. That does no harm.`);
  return sentences;
};

const closingWords = ({ trailer, entries }: Omit<Verification, 'sentences'>): string => {
  const missing = (trailer?.count ?? entries) - entries;
  if (missing > 0) return `The closing line counts ${trailer?.count} entries; ${count(missing, 'is', 'are')} missing or cannot be read.`;
  if (missing < 0) return `The closing line counts ${trailer?.count} entries; ${-missing} came in after the file was closed.`;
  return 'The closing line does not agree with the entries: at least one line was changed after the file was closed.';
};

const breachWords = (b: Breach): string => {
  switch (b.code) {
    case 'gap':
      return `${entriesOf(b.device, b.from, b.to)} not in this file.`;
    case 'same-counter':
      return `Line ${b.line} is a second, different entry ${b.counter} of device ${short(b.device)}. Either a line was changed, or the device’s data was copied to a second device. Both are kept.`;
    case 'seen-otherwise':
      return `Line ${b.line} was changed: another device saw entry ${b.counter} of device ${short(b.device)} as a different line.`;
    default:
      return `Line ${b.line} does not follow from line ${'previous_line' in b ? b.previous_line : '?'}.`;
  }
};

/**
 * Which line was changed, as far as the chain can tell. A line whose follower does not fit it, while that follower is vouched for by
 * its own follower, was itself changed. Where both links of a line are broken, or it has no follower, one of two is meant.
 */
const linkWords = (v: Omit<Verification, 'sentences'>): readonly string[] => {
  const links = v.breaches.filter((b) => b.code === 'broken-link');
  const broken = new Set(links.map((l) => JSON.stringify([l.rig, l.device, l.counter])));
  const last = new Map(v.chains.map((c) => [JSON.stringify([c.rig, c.device]), c.head.counter]));
  return links.map((l) => {
    const followed = (last.get(JSON.stringify([l.rig, l.device])) ?? 0) > l.counter;
    return followed && !broken.has(JSON.stringify([l.rig, l.device, l.counter + 1]))
      ? `Line ${l.previous_line} was changed after it was written: line ${l.line} was written after a different one.`
      : `Line ${l.previous_line} or line ${l.line} was changed after it was written: the second does not follow from the first.`;
  });
};
