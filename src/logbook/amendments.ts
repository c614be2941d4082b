import type { DeviceId, EntryId, Place } from '../terms';
import { parseWhen, type When } from '../units';
import { type AsWritten, changeOf, type Reader } from './as-written';
import { isPlace } from './envelope';
import { byKnown, type Known } from './known-order';
import type { Fork } from './state';

/** An entry after all its amendments. */
export type Settled = {
  readonly withdrawn: boolean;
  readonly body: unknown;
  readonly place: Place;
  readonly observed_at: string;
  readonly when: When;
  readonly corrected_by?: EntryId;
  /** Somebody has said when it was so, after it was written. */
  readonly dated: boolean;
  readonly fork?: Fork;
  /** Corrections that could not be put in, because the result would not fit the kind. */
  readonly misfits: readonly EntryId[];
};

/** An amendment that counts: not itself withdrawn, and with its own corrections put in. */
export type Amendment = { readonly known: Known; readonly form: 'correction' | 'withdrawal'; readonly body: unknown };

/** Those of which no other one knew: the last word, if there is one; a fork, if there are several. */
const lastWords = (amendments: readonly Amendment[]): readonly Amendment[] => {
  const knownTo = new Map<DeviceId, number>();
  const raise = (device: DeviceId, counter: number): void => {
    if (counter > (knownTo.get(device) ?? 0)) knownTo.set(device, counter);
  };
  for (const { known } of amendments) {
    const { device, counter, heads } = known.line.entry;
    raise(device, counter - 1);
    for (const head of heads) if (head.device !== device) raise(head.device, head.counter);
  }
  return amendments.filter(({ known: { line } }) => (knownTo.get(line.entry.device) ?? 0) < line.entry.counter);
};

/** Two people who say the same thing do not disagree. */
const agree = (words: readonly Amendment[]): boolean => {
  const say = ({ form, body }: Amendment): string => (form === 'withdrawal' ? form : JSON.stringify(changeOf(body)));
  const first = words[0] && say(words[0]);
  return words.every((w) => say(w) === first);
};

/**
 * What an entry says after its amendments, in the order of what was known when.
 *
 * Corrections add up: each changes the fields it names. An entry is withdrawn when the last word on it is a withdrawal;
 * where last words differ (a fork) it stands as long as one of them is a correction, so that no defect is lost to a disagreement.
 *
 * @param as  the entry as its kind reads it; undefined for one this version cannot read, which can be withdrawn but not corrected here
 */
export const settle = (known: Known, as: AsWritten | undefined, amendments: readonly Amendment[], reader: Reader): Settled => {
  const { entry } = known.line;
  const plain: Settled = { withdrawn: false, body: as?.body ?? entry.body, place: entry.place, observed_at: entry.observed_at, when: known.when, dated: false, misfits: [] };
  if (amendments.length === 0) return plain;
  const inOrder = [...amendments].sort((a, b) => byKnown(a.known, b.known));
  let now = plain;
  for (const { known: by, form, body } of inOrder) if (form === 'correction') now = put(now, by.line.entry.id, body);
  const words = lastWords(inOrder);
  const fork: Fork | undefined = words.length > 1 && !agree(words) ? { concerns: entry.id, amendments: words.map((w) => w.known.line.entry.id) } : undefined;
  return { ...now, withdrawn: words.every((w) => w.form === 'withdrawal'), ...(fork && { fork }) };

  function put(before: Settled, by: EntryId, correction: unknown): Settled {
    if (as === undefined) return before;
    const change = changeOf(correction);
    const misfit = { ...before, misfits: [...before.misfits, by] };
    if (change === undefined) return misfit;
    if (change.place !== undefined && !isPlace(change.place)) return misfit;
    const observed_at = change.observed_at ?? before.observed_at;
    const when = change.observed_at === undefined ? before.when : typeof observed_at === 'string' ? parseWhen(observed_at) : undefined;
    if (when === undefined || typeof observed_at !== 'string') return misfit;
    const body = reader.corrected(entry, { kind: as.kind, body: before.body }, change);
    if (body === undefined) return misfit;
    return {
      ...before,
      body,
      place: (change.place as Place | undefined) ?? before.place,
      observed_at,
      when,
      dated: before.dated || change.observed_at !== undefined,
      corrected_by: by,
    };
  }
};
