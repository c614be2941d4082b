import { type Finding, isOpen, type Plan, shownAs } from '../plan';
import type { Rig } from '../rig';
import { byUrgency, MARK_WORD, type Mark, type Place, type StationId, stationOf } from '../terms';
import type { CivilDay } from '../units';
import type { Known } from './spoken';
import { faceWords, stationWords } from './spoken';

/** One numbered mark: the number on the drawing is its place in the list. */
export type SheetMark = {
  readonly id: string;
  readonly mark: Mark;
  readonly number: number;
  readonly professional: boolean;
  readonly place: Place;
  readonly station?: StationId;
  /** Where, in words: `Road side, window 1`. */
  readonly where: string;
  /** What: `Seal open`. */
  readonly what: string;
};

/** Findings that still stand, in order of urgency as they are shown, then as the plan has them. */
export const standing = (plan: Plan): readonly Finding[] =>
  plan.findings
    .filter(isOpen)
    .map((f, i) => ({ f, i }))
    .sort((a, b) => byUrgency(shownAs(a.f), shownAs(b.f)) || a.i - b.i)
    .map(({ f }) => f);

/** `Road side, window 1`; a point is told by its face alone. */
export const whereWords = (rig: Rig, place: Place): string => {
  const id = stationOf(place);
  const station = id === undefined ? undefined : rig.stations.find((s) => s.id === id);
  if (station) {
    const name = stationWords(rig, station);
    return 'side' in place && place.side === 'inside' ? `${name}, inside` : name;
  }
  if (place.at === 'point' || place.at === 'outline') return faceWords(rig, place.face, place.side);
  return id ?? 'Whole rig';
};

/**
 * The numbered list of a plan: standing findings by urgency, then what nobody has seen.
 * Lists, drawings and paper all number by it.
 */
export const numberedMarks = (rig: Rig, plan: Plan): readonly SheetMark[] => {
  const findings = standing(plan).map((f): Omit<SheetMark, 'number'> => {
    const station = f.station ?? stationOf(f.place);
    return {
      id: f.id,
      mark: shownAs(f),
      professional: f.who === 'professional',
      place: f.place,
      ...(station === undefined ? {} : { station }),
      where: whereWords(rig, f.place),
      what: f.life === 'proof-due' ? `${f.title}: mended, to be proved` : f.title,
    };
  });
  const unseen = plan.not_seen.map((n): Omit<SheetMark, 'number'> => {
    const place: Place = { at: 'station', station: n.station, side: 'outside' };
    return { id: `not-seen/${n.station}`, mark: 'not-seen', professional: false, place, station: n.station, where: whereWords(rig, place), what: n.because.text };
  });
  return [...findings, ...unseen].map((m, i) => ({ ...m, number: i + 1 }));
};

/** What is said of a numbered mark: `3, before rain: road side, window 1, seal open`. */
export const markLabel = (m: SheetMark): string =>
  `${m.number}, ${MARK_WORD[m.mark].toLowerCase()}: ${m.where}, ${m.what.charAt(0).toLowerCase()}${m.what.slice(1)}${m.professional ? ', for a professional' : ''}`;

/** Each station's most urgent standing, with its words, from a plan, the session's marks and the days stations were last seen. */
export const knownFrom = (plan: Plan, marks: Readonly<Record<StationId, Mark>>, seen: Readonly<Record<StationId, CivilDay>> = {}): Readonly<Record<StationId, Known>> => {
  const known: Record<StationId, Known> = {};
  const day = (id: StationId): { readonly last_seen?: CivilDay } => (seen[id] === undefined ? {} : { last_seen: seen[id] });
  for (const [id, mark] of Object.entries(marks)) known[id] = { mark, ...day(id) };
  for (const f of [...standing(plan)].reverse()) {
    const id = f.station ?? stationOf(f.place);
    if (id !== undefined) known[id] = { mark: shownAs(f), words: f.title, professional: f.who === 'professional', last_seen: f.last_seen };
  }
  for (const n of plan.not_seen) known[n.station] = known[n.station] ?? { mark: 'not-seen', ...day(n.station) };
  return known;
};
