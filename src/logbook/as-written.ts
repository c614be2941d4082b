import type { AnyKind, Entry } from '../terms';
import { isRecord } from './envelope';

/** Whether a body is one that its kind can be asked about; the caller knows the kinds' schemas. */
export type Fits = (kind: AnyKind, body: unknown) => boolean;

/** A kind with a body brought to its newest version. */
export type AsWritten = { readonly kind: AnyKind; readonly body: unknown };

export type Reader = {
  /** Undefined when this version cannot judge the entry: a kind it does not know, a newer version, a body that does not fit. */
  readonly read: (entry: Entry) => AsWritten | undefined;
  /** The body with a correction's fields put in; undefined when the result does not fit the kind. */
  readonly corrected: (entry: Entry, now: AsWritten, change: Change) => unknown;
};

/**
 * What a correction changes. `body`: a value puts a field, null takes it away. `of_version` is the version of the
 * concerned kind in whose terms the fields are; without it they are in the terms of the concerned entry itself.
 */
export type Change = { readonly body?: Readonly<Record<string, unknown>>; readonly place?: unknown; readonly observed_at?: unknown; readonly of_version?: unknown };

/** The change a correction's body carries; undefined when it carries none. */
export const changeOf = (body: unknown): Change | undefined => {
  const changed = isRecord(body) ? body['changed'] : undefined;
  if (!isRecord(changed)) return undefined;
  const fields = changed['body'];
  if (fields !== undefined && !isRecord(fields)) return undefined;
  const { place, observed_at, of_version } = changed;
  return {
    ...(fields && { body: fields }),
    ...(place !== undefined && { place }),
    ...(observed_at !== undefined && { observed_at }),
    ...(of_version !== undefined && { of_version }),
  };
};

const upcast = (kind: AnyKind, body: unknown, from: number, to = kind.version): unknown => {
  let now = body;
  for (let v = from; v < to; v += 1) {
    const step = kind.upcasts?.[v] as ((body: unknown) => unknown) | undefined;
    if (step === undefined) return undefined;
    try {
      now = step(now);
    } catch {
      return undefined; // A file may carry any body under an old version; an upcast that stumbles over it judges it unreadable.
    }
  }
  return now;
};

const put = (body: unknown, fields: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> => {
  const next: [string, unknown][] = [];
  const old = isRecord(body) ? body : {};
  for (const [k, v] of Object.entries(old))
    if (!Object.hasOwn(fields, k)) next.push([k, v]);
    else if (fields[k] !== null) next.push([k, fields[k]]);
  for (const [k, v] of Object.entries(fields)) if (!Object.hasOwn(old, k) && v !== null) next.push([k, v]);
  return Object.fromEntries(next);
};

/** What changed between two bodies, as a correction would put it. */
const difference = (before: unknown, after: unknown): Readonly<Record<string, unknown>> => {
  const [a, b] = [isRecord(before) ? before : {}, isRecord(after) ? after : {}];
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return Object.fromEntries([...keys].filter((k) => JSON.stringify(a[k]) !== JSON.stringify(b[k])).map((k) => [k, Object.hasOwn(b, k) ? b[k] : null]));
};

export const readerFor = (kinds: readonly AnyKind[], fits: Fits = () => true): Reader => {
  const byId = new Map(kinds.map((k) => [k.id, k]));
  return {
    read: (entry) => {
      const kind = byId.get(entry.kind);
      if (kind === undefined || entry.version > kind.version) return undefined;
      const body = entry.version === kind.version ? entry.body : upcast(kind, entry.body, entry.version);
      return isRecord(body) && fits(kind, body) ? { kind, body } : undefined;
    },
    corrected: (entry, { kind, body }, { body: fields, of_version }) => {
      if (fields === undefined) return body;
      const version = typeof of_version === 'number' && of_version >= entry.version && of_version <= kind.version ? of_version : entry.version;
      let now = fields;
      if (version < kind.version) {
        const then = upcast(kind, entry.body, entry.version, version);
        const after = upcast(kind, put(then, fields), version);
        if (!isRecord(then) || !isRecord(after)) return undefined;
        now = difference(upcast(kind, then, version), after);
      }
      const next = put(body, now);
      return fits(kind, next) ? next : undefined;
    },
  };
};
