import type { AnyKind, Entry } from '../terms';
import { accept, type CivilDay, lastDay, parseInstant, parseWhen, type Refusal, type Result, refuse } from '../units';
import { envelopeSchema } from './envelope-schema';
import { readBody } from './read-body';
import { received, refusalsOf } from './refusals';

/** An entry that was understood: `kind` is undefined where this version does not know it, and `body` then stands as it came. */
export type ReadEntry = { readonly entry: Entry; readonly kind: AnyKind | undefined; readonly body: unknown };

/** Brings an older body to the kind's newest version. A step that is missing is our own mistake. */
export const upcast = (kind: AnyKind, version: number, body: unknown): unknown => {
  let to = body;
  for (let v = version; v < kind.version; v++) {
    const step = kind.upcasts?.[v] as ((body: unknown) => unknown) | undefined;
    if (!step) throw new Error(`${kind.id} has no upcast from version ${v}`);
    to = step(to);
  }
  return to;
};

/** Where it may be said, and of what. */
const aboutPlace = (kind: AnyKind, entry: Entry): readonly Refusal[] => {
  const { place } = entry;
  const found: Refusal[] = [];
  if (!kind.places.includes(place.at))
    found.push({
      code: 'place-not-fitting',
      path: 'place.at',
      expected: kind.places.join(' or '),
      received: place.at,
      sentence: `${kind.title} cannot be recorded for ${WHERE[place.at]}; it belongs to ${kind.places.map((p) => WHERE[p]).join(' or ')}.`,
    });
  if ('side' in place && !kind.sides.includes(place.side))
    found.push({
      code: 'side-not-fitting',
      path: 'place.side',
      expected: kind.sides.join(' or '),
      received: place.side,
      sentence: `${kind.title} is recorded ${kind.sides.join(' or ')}, not ${place.side}.`,
    });
  if (place.at === 'stretch' && place.to_m <= place.from_m)
    found.push({
      code: 'empty-stretch',
      path: 'place.to_m',
      expected: `more than ${place.from_m}`,
      received: String(place.to_m),
      sentence: 'This stretch of a seam ends before it begins.',
    });
  const named = entry.concerns?.length ?? 0;
  if (kind.concerns !== undefined && (named === 0 || (kind.concerns === 'one' && named > 1)))
    found.push({
      code: 'concerns-not-fitting',
      path: 'concerns',
      expected: kind.concerns === 'one' ? 'the id of one entry' : 'the id of at least one finding or entry',
      received: `${named}`,
      sentence: `${kind.title} must name ${kind.concerns === 'one' ? 'the one entry' : 'what'} it is about.`,
    });
  return found;
};

const WHERE = { rig: 'the rig as a whole', station: 'a station', point: 'a point on a face', outline: 'an outline on a face', stretch: 'a stretch of a seam' } as const;

/** The day by which a tyre cannot be younger: the later of the two days that the entry claims. */
const dayOfEntry = (entry: Entry): CivilDay | undefined => {
  const days = [parseWhen(entry.observed_at), parseWhen(entry.recorded_at)].flatMap((when) => (when ? [lastDay(when)] : []));
  return days.length > 0 ? (Math.max(...days) as CivilDay) : undefined;
};

/**
 * What is wrong with an entry whose envelope has been read already: its place, what it concerns, its body.
 * Kinds and versions that are not known here are passed over: they are kept, not judged.
 */
export const refuseEntry = (kinds: (id: string) => AnyKind | undefined, entry: Entry): readonly Refusal[] => {
  const kind = kinds(entry.kind);
  if (!kind || entry.version > kind.version) return [];
  const body = readBody(kind, upcast(kind, entry.version, entry.body), 'body', dayOfEntry(entry));
  return [...aboutPlace(kind, entry), ...(body.ok ? [] : body.refusals)];
};

const impossible = (path: string, text: string): Refusal => ({
  code: 'no-such-time',
  path,
  expected: 'a time that exists, such as 2026-09-19T10:12:00-04:00',
  received: received(text),
  sentence: `There is no such time as ${text}.`,
});

/** Reads a whole entry from a file: its envelope, its place, its body. Everything that is wrong is said at once. */
export const readEntry = (kinds: readonly AnyKind[], value: unknown): Result<ReadEntry> => {
  const shape = envelopeSchema.safeParse(value);
  if (!shape.success) return refuse(...refusalsOf(shape.error.issues, value, '', () => undefined));
  const entry = value as Entry;
  const times = [
    ...(parseWhen(entry.observed_at) ? [] : [impossible('observed_at', entry.observed_at)]),
    ...(parseInstant(entry.recorded_at) === undefined ? [impossible('recorded_at', entry.recorded_at)] : []),
  ];
  const find = (id: string): AnyKind | undefined => kinds.find((k) => k.id === id);
  const refusals = [...times, ...refuseEntry(find, entry)];
  if (refusals.length > 0) return refuse(...refusals);
  const kind = find(entry.kind);
  const known = kind && entry.version <= kind.version ? kind : undefined;
  return accept({ entry, kind: known, body: known ? upcast(known, entry.version, entry.body) : entry.body });
};
