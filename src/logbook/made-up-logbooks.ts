import fc from 'fast-check';
import type { AnyKind, Entry, Hash, Head, Place } from '../terms';
import { defineKind } from '../terms';
import { civilDay, dayOf, isoDay } from '../units';
import { lineOf } from './line';
import type { Line } from './state';

/**
 * Logbooks for checks: a few small kinds, and devices that write, exchange lines, correct, withdraw and disagree.
 * Nothing in the product uses this file.
 */
export type Toy = { readonly said: readonly string[] };
export const BLANK: Toy = { said: [] };

const kind = defineKind<Toy>();
const common = { places: ['rig', 'station'], sides: ['outside', 'inside'], repeatable: false, line: () => '', meaning: '' } as const;

export const TOY_KINDS: readonly AnyKind<Toy>[] = [
  kind({ ...common, id: 'grade', group: 'observation', version: 1, title: 'Grade', fields: { grade: { type: 'text', label: 'Grade' } }, fold: { mode: 'latest' } }),
  kind({
    ...common,
    id: 'gap',
    group: 'observation',
    version: 3,
    title: 'Gap, third version',
    fields: { gap_m: { type: 'text', label: 'Gap' } },
    fold: { mode: 'series' },
    upcasts: { 1: (b: { gap_mm: number }) => ({ gap_cm: b.gap_mm / 10 }), 2: (b: { gap_cm: number }) => ({ gap_m: b.gap_cm / 100 }) },
  }),
  kind({
    ...common,
    id: 'describe',
    group: 'description',
    version: 1,
    title: 'Describe',
    fields: { says: { type: 'text', label: 'Says' } },
    fold: { mode: 'describes', apply: (toy, body) => ({ said: [...toy.said, body.says] }) },
  }),
  kind({ ...common, id: 'correction', group: 'decision', version: 1, title: 'Correction', fields: {}, fold: { mode: 'amends', amendment: 'correction' } }),
  kind({ ...common, id: 'withdrawal', group: 'decision', version: 1, title: 'Withdrawal', fields: {}, fold: { mode: 'amends', amendment: 'withdrawal' } }),
];

/** One thing a device does. Numbers choose among what there is, by remainder. */
export type Deed = {
  readonly device: number;
  readonly does: 'grade' | 'gap' | 'describe' | 'correct' | 'withdraw' | 'unknown' | 'hear';
  readonly what: number;
  readonly value: number;
  readonly hours: number;
};

export const deeds = (most = 40): fc.Arbitrary<readonly Deed[]> =>
  fc.array(
    fc.record({
      device: fc.nat(3),
      does: fc.constantFrom('grade', 'gap', 'describe', 'correct', 'correct', 'withdraw', 'withdraw', 'unknown', 'hear', 'hear'),
      what: fc.nat(1000),
      value: fc.nat(5),
      hours: fc.integer({ min: -200, max: 200 }),
    }),
    { maxLength: most },
  );

export const RIG = 'rig-1';
/** Ids in no order of time, so that an order that leans on them shows. */
const uuid = (n: number): string => `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
export const time = (hour: number): string => `${isoDay(civilDay(dayOf(2027, 1, 1) + Math.floor(hour / 24)))}T${String(((hour % 24) + 24) % 24).padStart(2, '0')}:00:00Z`;
const places: readonly Place[] = [
  { at: 'rig' },
  { at: 'station', station: 'window', side: 'outside' },
  { at: 'station', station: 'window', side: 'inside' },
  { at: 'station', station: 'wind', side: 'outside' },
];

type Device = { readonly id: string; readonly held: Line[]; counter: number; hash: Hash | null };

/** What a deed puts into an entry, given an earlier entry that the device holds and a place that may be named. */
export type Says = (deed: Deed, target: Entry | undefined, place: Place) => Pick<Entry, 'kind' | 'version' | 'body'> & Partial<Pick<Entry, 'concerns' | 'place'>>;

/** The lines that come of deeds, in the order in which they were written. */
export const play = (all: readonly Deed[], says: Says = said): readonly Line[] => playOut(all, says).map((w) => w.line);

/** The same, each with what its device held when it wrote it. */
export const playOut = (all: readonly Deed[], says: Says = said): readonly { readonly line: Line; readonly held: readonly Line[] }[] => {
  const devices: readonly Device[] = ['device-a', 'device-b', 'device-c', 'device-ab'].map((id) => ({ id, held: [], counter: 0, hash: null }));
  const written: { readonly line: Line; readonly held: readonly Line[] }[] = [];
  all.forEach((deed, n) => {
    const device = devices[deed.device % devices.length] as Device;
    if (deed.does === 'hear') {
      const other = devices[deed.what % devices.length] as Device;
      for (const line of other.held) if (!device.held.includes(line)) device.held.push(line);
      return;
    }
    const target = device.held[deed.what % Math.max(1, device.held.length)]?.entry;
    const last = new Map<string, Head>();
    for (const { entry, hash } of device.held)
      if (entry.device !== device.id && entry.counter > (last.get(entry.device)?.counter ?? 0)) last.set(entry.device, { device: entry.device, counter: entry.counter, hash });
    const place = places[deed.what % places.length] as Place;
    const entry: Entry = {
      id: uuid((n * 611_953) % 1_000_003),
      rig: RIG,
      observed_at: deed.value === 5 ? '2025-03-01/2025-05-31' : time(deed.hours),
      recorded_at: time(n),
      by: 'someone',
      device: device.id,
      counter: device.counter + 1,
      previous: device.hash,
      heads: [...last.values()],
      place,
      ...says(deed, target, place),
    };
    const line = lineOf(entry);
    device.counter += 1;
    device.hash = line.hash;
    const count = device.held.length;
    written.push({
      line,
      get held() {
        return device.held.slice(0, count);
      },
    });
    device.held.push(line);
  });
  return written;
};

const said: Says = (deed, target, place) => {
  const { value } = deed;
  switch (deed.does) {
    case 'gap':
      return value < 2
        ? { kind: 'gap', version: 1, body: { gap_mm: value } }
        : value < 4
          ? { kind: 'gap', version: 2, body: { gap_cm: value } }
          : { kind: 'gap', version: 3, body: { gap_m: value } };
    case 'describe':
      return { kind: 'describe', version: 1, body: { says: `${value}` } };
    case 'unknown':
      return { kind: value < 3 ? 'from-later' : 'grade', version: value < 3 ? 1 : 9, body: { grade: `S${value}` } };
    case 'correct':
      if (target)
        return {
          kind: 'correction',
          version: 1,
          concerns: [target.id],
          body: { changed: { body: value === 0 ? { grade: null } : { grade: `S${value}` }, ...(value === 1 && { place }), ...(value === 2 && { observed_at: time(deed.hours) }) } },
        };
      return { kind: 'grade', version: 1, body: { grade: `S${value}` } };
    case 'withdraw':
      if (target) return { kind: 'withdrawal', version: 1, concerns: [target.id], body: {} };
      return { kind: 'grade', version: 1, body: { grade: `S${value}` } };
    default:
      return { kind: 'grade', version: 1, body: { grade: `S${value}` } };
  }
};
