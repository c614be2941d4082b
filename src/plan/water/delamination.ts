import type { Standing } from '../../logbook';
import { box, pointOf, type Rig } from '../../rig';
import { convexHull } from '../../science';
import type { EntryId, FaceId, FacePoint, Place, Side } from '../../terms';
import { type CivilDay, showDay, showTyped, type Typed } from '../../units';
import { builtAs } from '../built-as';
import type { Because } from '../finding';
import { threads } from '../places';
import { DELAMINATION, PRACTICE } from '../rules/sources';
import { coreAt, sourceAt } from './core';
import { type Advice, adviceOn } from './delamination-advice';
import { distanceTo, loadsNear, nearestOpening } from './load-points';
import type { Growth, LooseSkin, NearBy, Outlined, SkinAway, TapMap } from './loose-skin-types';
import { areaWords, growthOf, lengthWords, outlinedIn } from './outlines';
import type { Metered } from './spots';
import { hollowPatches, type Tap, tapMapOf, tapsOf } from './tap-map';
import type { Leak } from './water-types';

/** A place where the skin of a bonded wall has let go, with the looks that showed it and what comes of it. */
export type Delamination = SkinAway & {
  /** Looks that showed it, oldest first; of a patch that was only tapped, its hollow taps. */
  readonly seen: readonly Standing[];
  /** Its size, growth, sound and neighbours, for the person. */
  readonly measured: readonly Because[];
  readonly advice: Advice;
};

/** What it is judged from. */
export type Grounds = {
  readonly rig: Rig;
  readonly on: CivilDay;
  /** Looks at the skin, and taps; each oldest first. */
  readonly looks: readonly Standing[];
  readonly taps: readonly Standing[];
  readonly places: readonly Metered[];
  readonly leaks: readonly Leak[];
};

const LOOSE: ReadonlySet<string> = new Set(['bubble', 'ripple', 'moves-under-hand']);
/** Taps within this of an outline belong to it: the grid runs past the edge, or the edge would not be found; ours. [m] */
const TAPS_BESIDE_M = 0.3;
/** Hollow taps, hanging together, from which a patch that nobody drew is one; ours. */
const LEAST_HOLLOW = 3;
/** 16 in on centre where nobody has measured: common practice, no published source for rigs. [m] */
const USUAL_SPACING_M = 0.4064;

type Body = { readonly verdict?: string; readonly signs?: readonly string[]; readonly across?: Typed };

/** Looks at one place without a break: a look that finds it sound ends it. */
const standing = (looks: readonly Standing[]): readonly (readonly Standing[])[] => {
  const threadOf = threads();
  const open = new Map<string, Standing[]>();
  for (const look of looks) {
    const { verdict, signs = [] } = look.body as Body;
    const thread = threadOf(look.place);
    if (verdict === 'sound') open.delete(thread);
    else if (signs.some((s) => LOOSE.has(s)) || (verdict === 'something-wrong' && open.has(thread))) open.set(thread, [...(open.get(thread) ?? []), look]);
  }
  return [...open.values()];
};

const hung = (rig: Rig, place: Place): boolean => builtAs('station' in place ? rig.stations.find((s) => s.id === place.station) : undefined, rig) === 'hung';

/** What is drawn of it; a point, or the outline of its station, where nothing is. */
const extentOf = (rig: Rig, place: Place, outlines: readonly Outlined[]): readonly FacePoint[] => {
  const drawn = outlines.at(-1);
  if (drawn) return drawn.outline_m;
  const at = pointOf(rig, place);
  return at ? [at.point] : [];
};

const tapWords = (taps: TapMap): Because => ({
  text: `${taps.hollow} of ${taps.solid + taps.dull + taps.hollow} taps in and beside it sound hollow${
    taps.hull_area_m2 === undefined ? '' : `; the outline round them holds ${areaWords(taps.hull_area_m2)}`
  }.`,
  entries: taps.entries.slice(0, 12),
  source: DELAMINATION,
});

const measuredOf = (
  outlines: readonly Outlined[],
  odd: readonly Because[],
  last: Standing,
  growth: Growth | undefined,
  taps: TapMap | undefined,
  near: NearBy | undefined,
): readonly Because[] => {
  const drawn = outlines.at(-1);
  const { across } = last.body as Body;
  const entries = [last.entry.id];
  return [
    ...(drawn
      ? [
          {
            text: `Outlined on ${showDay(drawn.day)}: ${areaWords(drawn.area_m2)}, ${lengthWords(drawn.longest_m)} at its longest.`,
            entries: [drawn.entry],
            source: DELAMINATION,
            worksheet: { id: drawn.worked.worksheet, inputs: drawn.worked.inputs },
          },
        ]
      : across
        ? [{ text: `${showTyped(across, 'length')} across; draw its outline to see whether it grows.`, entries, source: DELAMINATION }]
        : []),
    ...odd,
    ...(growth ? [growth.because] : []),
    ...(taps ? [tapWords(taps)] : []),
    ...(near
      ? [
          {
            text: `${near.distance_m < 0.01 ? 'It touches' : `${lengthWords(near.distance_m)} from`} ${near.words}, the nearest opening or seam of this face.`,
            entries,
            source: PRACTICE,
          },
        ]
      : []),
  ];
};

const crossesFrame = (rig: Rig, outline: readonly FacePoint[]): boolean => {
  if (outline.length < 3) return false;
  const b = box({ form: 'poly', points_m: outline });
  return b.x1 - b.x0 > (rig.stud_spacing_m ?? USUAL_SPACING_M);
};

type Found = {
  readonly seen: readonly Standing[];
  readonly face: FaceId;
  readonly side: Side;
  readonly outlines: readonly Outlined[];
  readonly odd: readonly Because[];
  readonly extent: readonly FacePoint[];
  readonly signs: readonly string[];
};

const judged = ({ rig, on, places, leaks }: Grounds, found: Found, near: readonly Tap[]): Delamination => {
  const { seen, face, side, outlines, odd, extent, signs } = found;
  const [first, last] = [seen[0] as Standing, seen.at(-1) as Standing];
  const growth = growthOf(outlines);
  const taps = tapMapOf(near);
  const nearest = nearestOpening(rig, face, extent);
  const loads = loadsNear(rig, face, extent);
  const core = coreAt(places, face, extent, on, last.entry.id);
  const source = sourceAt(leaks, face, extent);
  const known = { look: last.entry.id, outlines, signs, core, source, loads, crosses_frame: crossesFrame(rig, extent), ...(growth ? { growth } : {}), ...(taps ? { taps } : {}) };
  return {
    id: first.entry.id,
    place: first.place,
    face,
    side,
    seen,
    signs,
    outlines,
    loads,
    core,
    source,
    ...(growth ? { growth } : {}),
    ...(nearest ? { nearest } : {}),
    ...(taps ? { taps } : {}),
    measured: measuredOf(outlines, odd, last, growth, taps, nearest),
    advice: adviceOn(known),
  };
};

type Placed = { readonly found: Found; readonly near: readonly Tap[] };

const tapsBeside = (taps: readonly Tap[], face: FaceId, side: Side, extent: readonly FacePoint[]): readonly Tap[] =>
  taps.filter((t) => t.face === face && t.side === side && distanceTo(extent, { form: 'poly', points_m: [t.point_m] }) <= TAPS_BESIDE_M);

const drawnOf = ({ rig, looks }: Grounds, taps: readonly Tap[]): readonly Placed[] =>
  standing(looks).flatMap((seen): readonly Placed[] => {
    const [first, last] = [seen[0], seen.at(-1)];
    const at = first && pointOf(rig, first.place);
    if (!first || !last || !at || first.place.at === 'rig' || hung(rig, first.place)) return [];
    const { side } = first.place;
    const all = seen.map((s) => [s, outlinedIn(s)] as const);
    const outlines = all.flatMap(([, o]) => (o === undefined || typeof o === 'string' ? [] : [o]));
    const odd = all.flatMap(([s, o]): readonly Because[] => (typeof o === 'string' ? [{ text: o, entries: [s.entry.id], source: PRACTICE }] : []));
    const extent = extentOf(rig, last.place, outlines);
    const signs = (last.body as Body).signs ?? [];
    return [{ found: { seen, face: at.face, side, outlines, odd, extent, signs }, near: tapsBeside(taps, at.face, side, extent) }];
  });

/** Hollow once at three points or more: loose now, or sound again since its latest tap. */
const patchesOf = ({ rig }: Grounds, taps: readonly Tap[], taken: ReadonlySet<EntryId>): readonly (Placed & { readonly healed?: Standing })[] =>
  hollowPatches(taps.filter((t) => !taken.has(t.entry))).flatMap((patch): readonly (Placed & { readonly healed?: Standing })[] => {
    const now = patch.filter((t) => t.sound === 'hollow');
    const healed = now.length < LEAST_HOLLOW;
    const of = healed ? patch : now;
    const [first] = of;
    if (!first || of.length < LEAST_HOLLOW || hung(rig, first.standing.place)) return [];
    const points = of.map((t) => t.point_m);
    const hull = convexHull(points);
    const extent = hull.length > 2 ? hull : points;
    const { face, side } = first;
    const latest = patch.map((t) => t.standing).toSorted((a, b) => b.day - a.day || (a.entry.id < b.entry.id ? 1 : -1))[0];
    const found = { seen: of.flatMap((t) => t.hollow ?? []), face, side, outlines: [], odd: [], extent, signs: [] };
    return [{ found, near: tapsBeside(taps, face, side, extent), ...(healed && latest ? { healed: latest } : {}) }];
  });

/** A patch that was only tapped, and that a later tap found sound again. */
export type Healed = { readonly delamination: Delamination; readonly by: Standing };

/**
 * Every place where the skin of a bonded wall has let go: measured, compared through time where the skin was about as
 * warm, with what the meter and the handle say, and what comes next.
 *
 * @returns  open: in the order in which they first showed, those drawn first, then those that were only tapped; healed: only tapped, and sound since
 * @assumes  a wall whose construction nobody knows is bonded; on a hung wall a loose skin is how it is built
 * @source   repair-shop pages, read (tap, outline, date and temperature, growth, source first, dry core); distances ours
 */
export const delaminationsOf = (grounds: Grounds): LooseSkins => {
  const taps = tapsOf(grounds.taps);
  const drawn = drawnOf(grounds, taps);
  const patches = patchesOf(grounds, taps, new Set(drawn.flatMap((d) => d.near.map((t) => t.entry))));
  return {
    open: [...drawn, ...patches.filter((p) => p.healed === undefined)].map(({ found, near }) => judged(grounds, found, near)),
    healed: patches.flatMap(({ found, near, healed }) => (healed ? [{ delamination: judged(grounds, found, near), by: healed }] : [])),
  };
};

/** Everything that is said of it and what it comes to; nothing twice. */
export const reasonsOf = ({ measured, advice }: Delamination): readonly Because[] => {
  const all = [...measured, ...advice.because];
  return all.filter((b, i) => all.findIndex((x) => x.text === b.text) === i);
};

/** What is known of loose skins; healed: only ever tapped, and sound since. */
export type LooseSkins = { readonly open: readonly Delamination[]; readonly healed: readonly Healed[] };

/** As the plan tells it: the looks by their entries, and what is said of it once. */
export const looseSkinOf = (d: Delamination, words: string): LooseSkin => {
  const { seen, measured: _measured, advice, ...rest } = d;
  return { ...rest, words, entries: seen.map((s) => s.entry.id), because: reasonsOf(d), advice: advice.word, sentence: advice.sentence, steps: advice.steps };
};
