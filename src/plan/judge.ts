import { kinds } from '../entries';
import type { Standing, State } from '../logbook';
import type { Rig } from '../rig';
import { byUrgency, type Station, type StationId } from '../terms';
import type { CivilDay } from '../units';
import { withOpenSealFirst } from './belong-together';
import { dangerOf, looksAt } from './danger';
import { type Episode, episodesOf, type Naming, readName } from './episodes';
import { escalated } from './escalate';
import { type Finding, isOpen } from './finding';
import { findingOf, isDecision } from './life';
import { byWhen, inOrder } from './order';
import { sceneOf, sceneOfName } from './places';
import type { Rule, Scene } from './rule';
import { rules } from './rules';
import { waterRules } from './rules/water-rules';
import { withLooseSkin } from './water/loose-skin';
import { judgeWater, type WaterJudged } from './water/water';
import { waterEpisodes } from './water/water-rule';

/**
 * Judgement, scene by scene. A scene is judged from its own entries, from the care and decisions that name something in it,
 * and, where a rule says so, from what concerns the whole rig. What was judged before is kept as long as none of these changed:
 * the kept answer is the same object that a full judgement would give.
 *
 * Water is judged for the whole rig, since one leak shows at many places; what its rules raise is then put into the scene where it first
 * showed, and lives on there like everything else.
 */
export type JudgedScene = {
  readonly id: string;
  readonly station: Station | undefined;
  readonly lists: readonly (readonly Standing[])[];
  readonly namings: readonly Naming[];
  readonly rigLists: readonly (readonly Standing[])[];
  /** Everything that was ever raised here. */
  readonly episodes: readonly Episode[];
  /** What is open, and what was mended and proved. */
  readonly findings: readonly Finding[];
  /** The latest look from outside that some rule judged, and the latest time it could not be seen. */
  readonly looked?: Standing;
  readonly unseen?: Standing;
  /** What the rules of water raised here, and what was done and decided about it, wherever it showed. */
  readonly water?: { readonly episodes: readonly Episode[]; readonly namings: readonly Naming[] };
};

export type Judged = {
  readonly rig: Rig;
  readonly on: CivilDay;
  readonly scenes: ReadonlyMap<string, JudgedScene>;
  /** The scenes by what they show themselves, before the water of the whole rig is put in. */
  readonly own: ReadonlyMap<string, JudgedScene>;
  readonly water: WaterJudged;
  readonly findings: readonly Finding[];
};

const PROOF = 'proof-seen';
const GROUPS: ReadonlyMap<string, Naming['group']> = new Map(
  kinds.flatMap((k): readonly [string, Naming['group']][] =>
    k.id === PROOF ? [[k.id, 'proof']] : k.group === 'care' ? [[k.id, 'care']] : isDecision(k.id) ? [[k.id, 'decision']] : [],
  ),
);
const rulesOf: ReadonlyMap<string, readonly Rule[]> = new Map(kinds.map((k) => [k.id, rules.filter((r) => r.reads.includes(k.id))]));
const NONE: readonly Standing[] = [];

type Gathered = { readonly byKind: Map<string, (readonly Standing[])[]>; readonly lists: (readonly Standing[])[] };

/** The logbook's lists, put together scene by scene. */
const gather = (state: State<Rig>): Map<string, Gathered> => {
  const scenes = new Map<string, Gathered>();
  for (const byKind of state.through.values()) {
    for (const [kind, list] of byKind) {
      const first = list[0];
      if (!first) continue;
      const id = sceneOf(first.place);
      let scene = scenes.get(id);
      if (!scene) {
        scene = { byKind: new Map(), lists: [] };
        scenes.set(id, scene);
      }
      scene.lists.push(list);
      const same = scene.byKind.get(kind);
      if (same) same.push(list);
      else scene.byKind.set(kind, [list]);
    }
  }
  return scenes;
};

/** Care and decisions by the scene of what they name, in order. */
const gatherNamings = (state: State<Rig>): Map<string, Naming[]> => {
  const found = new Map<string, Naming[]>();
  for (const byKind of state.through.values()) {
    for (const [kind, list] of byKind) {
      const group = GROUPS.get(kind);
      if (group === undefined) continue;
      for (const standing of list) for (const [scene, naming] of namingsOf(standing, group, state)) found.set(scene, [...(found.get(scene) ?? []), naming]);
    }
  }
  for (const [scene, list] of found)
    if (list.length > 1)
      found.set(
        scene,
        list.sort((a, b) => byWhen(a.standing, b.standing)),
      );
  return found;
};

const namingsOf = (standing: Standing, group: Naming['group'], state: State<Rig>): ReadonlyMap<string, Naming> => {
  const scenes = new Map<string, Naming>();
  for (const concern of concernsOf(standing, state)) {
    const name = readName(concern);
    const stands = state.standing.get(name.entry);
    const scene = name.place === undefined ? stands && sceneOf(stands.place) : sceneOfName(name.place);
    if (scene === undefined) continue;
    scenes.set(scene, { standing, group, names: [...(scenes.get(scene)?.names ?? []), stands ? name : { ...name, gone: true }] });
  }
  return scenes;
};

/** What an entry names; a proof that names a piece of care speaks of what that care named. */
const concernsOf = (standing: Standing, state: State<Rig>): readonly string[] =>
  (standing.entry.concerns ?? []).flatMap((concern) => {
    const care = standing.entry.kind === PROOF ? state.standing.get(concern) : undefined;
    return care && GROUPS.get(care.entry.kind) === 'care' ? (care.entry.concerns ?? []) : [concern];
  });

/** What is open, and what was mended and proved; what a later look found sound is history. */
const onPlan = (episodes: readonly Episode[], namings: readonly Naming[], on: CivilDay): readonly Finding[] =>
  episodes.filter((e) => e.closed?.life !== 'seen-sound').map((e) => findingOf(e, namings, on));

const judgeScene = (
  id: string,
  gathered: Gathered | undefined,
  namings: readonly Naming[],
  rigLists: readonly (readonly Standing[])[],
  rig: Rig,
  station: Station | undefined,
  on: CivilDay,
  ofRig: Scene['ofRig'],
): JudgedScene => {
  const merged = new Map<string, readonly Standing[]>();
  const through = (kind: string): readonly Standing[] => {
    let list = merged.get(kind);
    if (!list) {
      list = inOrder(gathered?.byKind.get(kind) ?? []);
      merged.set(kind, list);
    }
    return list;
  };
  const scene: Scene = { rig, on, station, through, ofRig };
  const concerned = new Set<Rule>();
  for (const kind of gathered?.byKind.keys() ?? []) for (const rule of rulesOf.get(kind) ?? []) concerned.add(rule);
  const episodes: Episode[] = [];
  for (const rule of concerned)
    episodes.push(
      ...episodesOf(rule, inOrder([...new Set([...rule.reads, ...(rule.provedBy ?? []), ...(rule.endedBy ?? [])])].map(through).filter((l) => l.length > 0)), scene, namings),
    );
  const open = escalated(episodes, scene);
  const findings = withOpenSealFirst(onPlan(open, namings, on));
  const looks = inOrder(
    [...concerned]
      .flatMap((r) => r.reads)
      .filter((k, i, all) => all.indexOf(k) === i)
      .map(through),
  ).filter((s) => !('side' in s.place) || s.place.side === 'outside');
  const [looked, unseen] = [
    looks.at(-1),
    through('could-not-see')
      .filter((s) => !('side' in s.place) || s.place.side === 'outside')
      .at(-1),
  ];
  return { id, station, lists: gathered?.lists ?? [], namings, rigLists, episodes: open, findings, ...(looked ? { looked } : {}), ...(unseen ? { unseen } : {}) };
};

const sameStandings = (a: readonly Standing[], b: readonly Standing[]): boolean => a === b || (a.length === b.length && a.every((s, i) => s === b[i]));
const sameLists = (a: readonly (readonly Standing[])[], b: readonly (readonly Standing[])[]): boolean =>
  a.length === b.length && a.every((list, i) => sameStandings(list, b[i] ?? NONE));
const sameNamings = (a: readonly Naming[], b: readonly Naming[]): boolean =>
  a.length === b.length &&
  a.every((n, i) => {
    const m = b[i];
    return (
      m !== undefined &&
      n.standing === m.standing &&
      n.names.length === m.names.length &&
      n.names.every((x, j) => x.entry === m.names[j]?.entry && x.rule === m.names[j]?.rule && x.gone === m.names[j]?.gone)
    );
  });

const NO_NAMINGS: readonly Naming[] = [];

/**
 * Judges the whole logbook.
 *
 * @param before  what was judged earlier, for the same rig: scenes in which nothing changed are taken over
 */
export const judgeAll = (rig: Rig, state: State<Rig>, on: CivilDay, before?: Judged): Judged => {
  const gathered = gather(state);
  const namings = gatherNamings(state);
  const stations = new Map<StationId, Station>(rig.stations.map((s) => [s.id, s]));
  const rigKinds = gathered.get('rig')?.byKind;
  const ofRig = (kind: string): readonly Standing[] => inOrder(rigKinds?.get(kind) ?? []);
  const usable = before && before.on === on && before.rig === rig ? before : undefined;
  const own = new Map<string, JudgedScene>();
  for (const [id, scene] of gathered) {
    const named = namings.get(id) ?? NO_NAMINGS;
    const wanted = new Set<string>();
    for (const kind of scene.byKind.keys()) for (const rule of rulesOf.get(kind) ?? []) for (const also of rule.alsoReads ?? []) wanted.add(also);
    const rigLists = [...wanted].map(ofRig);
    const kept = usable?.own.get(id);
    const same = kept && sameLists(kept.lists, scene.lists) && sameNamings(kept.namings, named) && sameLists(kept.rigLists, rigLists);
    own.set(id, same ? kept : judgeScene(id, scene, named, rigLists, rig, stations.get(id), on, ofRig));
  }
  const water = judgeWater(rig, state, on, usable?.water);
  const scenes = withWater(own, water, namings, on, usable);
  return {
    rig,
    on,
    scenes,
    own,
    water,
    findings: inUrgency(
      [...scenes.values()].flatMap((s) => s.findings),
      rig,
    ),
  };
};

/** Care and decisions that may speak of an episode of water: those that name something at any of the places where it showed. */
const namingsAt = (episodes: readonly Episode[], namings: ReadonlyMap<string, readonly Naming[]>): readonly Naming[] => {
  const scenes = new Set(episodes.flatMap((e) => [e.place, ...e.seen.map((s) => s.place)]).map(sceneOf));
  const found = [...scenes].flatMap((id) => namings.get(id) ?? []);
  return scenes.size < 2 ? found : found.toSorted((a, b) => byWhen(a.standing, b.standing));
};

/** A scene with what the whole rig tells of its loose skins: the meter on the other side of the wall, leaks beside it. */
const withSkins = (scene: JudgedScene, water: WaterJudged, on: CivilDay): JudgedScene => {
  const { open } = water.loose;
  const episodes = scene.episodes.map((e) => withLooseSkin(e, open));
  if (episodes.every((e, i) => e === scene.episodes[i])) return scene;
  return { ...scene, episodes, findings: withOpenSealFirst(onPlan(episodes, scene.namings, on)) };
};

/** The scenes with what the rules of water raised in them. A scene in which neither changed stays the same object. */
const withWater = (
  own: ReadonlyMap<string, JudgedScene>,
  water: WaterJudged,
  namings: ReadonlyMap<string, readonly Naming[]>,
  on: CivilDay,
  before: Judged | undefined,
): ReadonlyMap<string, JudgedScene> => {
  const raised = new Map<string, Episode[]>();
  for (const episode of waterEpisodes(waterRules, water)) {
    const id = sceneOf(episode.place);
    raised.set(id, [...(raised.get(id) ?? []), episode]);
  }
  const skins = water.loose.open.flatMap((d) => d.seen.map((s) => sceneOf(s.place)));
  if (raised.size === 0 && skins.length === 0) return own;
  const scenes = new Map(own);
  for (const id of new Set([...raised.keys(), ...skins])) {
    const alone = own.get(id);
    if (!alone) continue;
    const episodes = raised.get(id) ?? [];
    const mine = namingsAt(episodes, namings);
    const kept = before?.scenes.get(id);
    if (before && kept?.water && before.own.get(id) === alone && before.water === water && sameNamings(kept.water.namings, mine)) {
      scenes.set(id, kept);
      continue;
    }
    const scene = withSkins(alone, water, on);
    const findings = [...onPlan(scene.episodes, scene.namings, on), ...onPlan(episodes, mine, on)];
    scenes.set(id, { ...scene, findings: withOpenSealFirst(findings), water: { episodes, namings: mine } });
  }
  return scenes;
};

/** Open before settled, the most urgent first, of these the most dangerous, then those that have waited longest. */
export const inUrgency = (findings: readonly Finding[], rig: Rig): readonly Finding[] => {
  const looks = looksAt(rig);
  const danger = new Map(findings.map((f) => [f, dangerOf(f, f.station === undefined ? undefined : looks.get(f.station))]));
  const level = (f: Finding): number => danger.get(f) ?? 0;
  return [...findings].sort(
    (a, b) => Number(isOpen(b)) - Number(isOpen(a)) || byUrgency(a.urgency, b.urgency) || level(a) - level(b) || a.since - b.since || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  );
};

/** Every finding that was ever raised, with its life on that day. */
export const judge = (rig: Rig, state: State<Rig>, on: CivilDay): readonly Finding[] =>
  inUrgency(
    [...judgeAll(rig, state, on).scenes.values()].flatMap((scene) => historyOf(scene, on)),
    rig,
  );

/** Every finding of one scene, those that a later look found sound included. */
export const historyOf = (scene: JudgedScene, on: CivilDay): readonly Finding[] => {
  const { water } = scene;
  return withOpenSealFirst([...scene.episodes.map((e) => findingOf(e, scene.namings, on)), ...(water?.episodes.map((e) => findingOf(e, water.namings, on)) ?? [])]);
};

/** The findings of one scene, judged for itself: a station, or one side of one face (`face:curb@outside`), or the rig. */
export const judgePlace = (rig: Rig, state: State<Rig>, on: CivilDay, scene: string): readonly Finding[] => {
  const gathered = gather(state);
  const namings = gatherNamings(state);
  const rigKinds = gathered.get('rig')?.byKind;
  const ofRig = (kind: string): readonly Standing[] => inOrder(rigKinds?.get(kind) ?? []);
  const station = rig.stations.find((s) => s.id === scene);
  const own = judgeScene(scene, gathered.get(scene), namings.get(scene) ?? NO_NAMINGS, [], rig, station, on, ofRig);
  const judged = withWater(new Map([[scene, own]]), judgeWater(rig, state, on), namings, on, undefined).get(scene) ?? own;
  return inUrgency(historyOf(judged, on), rig);
};
