import type { AnyKind, Draft, EntryId, Field, PhotoRef, RigId, Side, StationId } from '../../../../src/terms';
import { type CivilDay, lastDay, type Preferences, parseWhen } from '../../../../src/units';
import { type Answers, type Change, changed, type Ready, ready, saysSound, shownFields } from './form';

/**
 * One stop at one station: what is asked there, what was answered so far, and what of it is in the logbook already.
 * It is saved as a draft at every touch, so that it survives the camera, a call or an empty battery.
 */
export type Visit = {
  readonly station: StationId;
  readonly side: Side;
  readonly round: EntryId | undefined;
  /** When the person came here; time spent stands in the entry. [ms] */
  readonly began: number;
  readonly forms: Readonly<Record<string, Answers>>;
  /** The entry that holds a kind's answer, and exactly what it holds. */
  readonly kept: Readonly<Record<string, { readonly entry: EntryId; readonly holds: string }>>;
  readonly note: string;
  readonly photos: readonly PhotoRef[];
  /** Bodies whose doubts the person has answered with yes. */
  readonly agreed: readonly string[];
  /** The kind that is being answered. */
  readonly active: string;
  /** The number that the keys write to. */
  readonly live: string | undefined;
  /** A choice that was opened again after it had folded. */
  readonly opened: string | undefined;
};

/** Numbers and date codes are typed on the keys. */
export const isTyped = (field: Field): boolean => field.type === 'number' || (field.type === 'code' && field.code === 'tyre-date');

const firstNumber = (kind: AnyKind, answers: Answers): string | undefined => {
  const [first] = shownFields(kind, answers);
  return first && isTyped(first[1]) && answers[first[0]] === undefined ? first[0] : undefined;
};

export const startVisit = (
  at: Pick<Visit, 'station' | 'side' | 'round' | 'began'>,
  asks: readonly AnyKind[],
  already: Pick<Visit, 'forms' | 'kept' | 'note' | 'photos'> = NOTHING,
): Visit => {
  const active = asks.find((k) => already.kept[k.id] === undefined) ?? asks[0];
  return { ...at, ...already, agreed: [], active: active?.id ?? '', live: active ? firstNumber(active, already.forms[active.id] ?? {}) : undefined, opened: undefined };
};

const NOTHING: Pick<Visit, 'forms' | 'kept' | 'note' | 'photos'> = { forms: {}, kept: {}, note: '', photos: [] };

export const answersOf = (visit: Visit, kind: string): Answers => visit.forms[kind] ?? {};

export const answer = (visit: Visit, kind: AnyKind, change: Change, preferences: Preferences): Visit => ({
  ...visit,
  active: kind.id,
  opened: undefined,
  forms: { ...visit.forms, [kind.id]: changed(kind, answersOf(visit, kind.id), change, preferences) },
});

/** Puts a whole earlier answer in, as "same as last round" does. */
export const repeat = (visit: Visit, kind: AnyKind, answers: Answers): Visit => ({ ...visit, active: kind.id, forms: { ...visit.forms, [kind.id]: answers } });

export const turnTo = (visit: Visit, kind: AnyKind): Visit => ({ ...visit, active: kind.id, live: firstNumber(kind, answersOf(visit, kind.id)), opened: undefined });

export const nextKind = (visit: Visit, asks: readonly AnyKind[]): AnyKind | undefined => {
  const from = asks.findIndex((k) => k.id === visit.active);
  const after = [...asks.slice(from + 1), ...asks.slice(0, from)];
  return after.find((k) => ready(k, answersOf(visit, k.id)).state === 'empty' && visit.kept[k.id] === undefined);
};

/** Note and photos go with the first answer of the visit. */
const carrierOf = (visit: Visit, asks: readonly AnyKind[], today: CivilDay | undefined): string | undefined =>
  asks.find((k) => visit.kept[k.id] !== undefined)?.id ?? asks.find((k) => ready(k, answersOf(visit, k.id), today).state === 'complete')?.id;

export const agreedTo = (visit: Visit, kind: AnyKind): boolean => {
  const state = ready(kind, answersOf(visit, kind.id));
  return state.state === 'complete' && (state.doubts.length === 0 || visit.agreed.includes(JSON.stringify(state.body)));
};

export const agree = (visit: Visit, kind: AnyKind): Visit => {
  const state = ready(kind, answersOf(visit, kind.id));
  return state.state === 'complete' ? { ...visit, agreed: [...visit.agreed, JSON.stringify(state.body)] } : visit;
};

export type ToKeep = { readonly kind: AnyKind; readonly holds: string; readonly drafts: readonly Draft[] };

type By = { readonly rig: RigId; readonly by: string; readonly now: string; readonly ms: number };

/** The answers of the visit as though none had been kept: what a verdict is asked about while the person still types. */
export const toJudge = (visit: Visit, asks: readonly AnyKind[], by: By): readonly Draft[] => {
  const held = Object.fromEntries(Object.entries(visit.kept).map(([kind, k]) => [kind, { ...k, holds: '' }]));
  return toKeep({ ...visit, kept: held }, asks, by).flatMap((k) => k.drafts);
};

/** Nothing can be younger than today; a code from next year is refused at the pen, not only on the screen. */
const dayOfNow = (now: string): CivilDay | undefined => {
  const when = parseWhen(now);
  return when && lastDay(when);
};

const holdsOf = (visit: Visit, carries: boolean, state: Extract<Ready, { state: 'complete' }>): string =>
  JSON.stringify([state.body, ...(carries ? [visit.note, visit.photos.map((p) => p.hash)] : ['', []])]);

/**
 * What is complete and not in the logbook as it now stands. An answer that was kept before and has gained something is
 * withdrawn and written anew in one step, so that every visit leaves one entry of a kind.
 */
export const toKeep = (visit: Visit, asks: readonly AnyKind[], by: By): readonly ToKeep[] =>
  asks.flatMap((kind) => {
    const today = dayOfNow(by.now);
    const state = ready(kind, answersOf(visit, kind.id), today);
    if (state.state !== 'complete' || !agreedTo(visit, kind)) return [];
    const carries = carrierOf(visit, asks, today) === kind.id;
    const holds = holdsOf(visit, carries, state);
    const before = visit.kept[kind.id];
    if (before?.holds === holds) return [];
    const place = { at: 'station', station: visit.station, side: visit.side } as const;
    const common = { rig: by.rig, by: by.by, observed_at: by.now, place, ...(visit.round === undefined ? {} : { round: visit.round }) };
    const entry: Draft = {
      ...common,
      kind: kind.id,
      version: kind.version,
      body: state.body,
      spent_s: Math.max(0, Math.round((by.ms - visit.began) / 1000)),
      ...(carries && visit.note !== '' ? { note: visit.note } : {}),
      ...(carries && visit.photos.length > 0 ? { photos: visit.photos } : {}),
    };
    const takenBack: readonly Draft[] = before ? [{ ...common, kind: 'withdrawal', version: 1, body: { why: 'more was added at the same visit' }, concerns: [before.entry] }] : [];
    return [{ kind, holds, drafts: [...takenBack, entry] }];
  });

export const wasKept = (visit: Visit, kind: string, entry: EntryId, holds: string): Visit => ({ ...visit, kept: { ...visit.kept, [kind]: { entry, holds } } });

export const wasUndone = (visit: Visit, kind: string): Visit => {
  const { [kind]: _, ...kept } = visit.kept;
  const { [kind]: __, ...forms } = visit.forms;
  return { ...visit, kept, forms, active: kind, live: undefined, opened: undefined };
};

/** One touch that says "nothing wrong here" is the whole visit to this kind: it is kept and the walk goes on. */
export const isOneTap = (visit: Visit, kind: AnyKind): boolean => saysSound(kind, answersOf(visit, kind.id));

/** A saved draft, if it is one and for this very stop. */
export const restored = (saved: unknown, at: Pick<Visit, 'station' | 'side' | 'round'>): Visit | undefined => {
  if (typeof saved !== 'object' || saved === null || !('forms' in saved)) return undefined;
  const visit = saved as Visit;
  return visit.station === at.station && visit.side === at.side && visit.round === at.round ? visit : undefined;
};
