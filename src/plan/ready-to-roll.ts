import { asksAt, type tyrePressure } from '../entries';
import type { Standing, State } from '../logbook';
import { isBeforeATrip, type Rig } from '../rig';
import { type AnyKind, type BodyOf, byUrgency, placeKey, type Station, type Urgency } from '../terms';
import { type Finding, isWork, takenAs } from './finding';
import type { Judged } from './judge';
import { inGroups, type OpenQuestion } from './open-questions';
import type { ReadyToRoll } from './plan-types';
import { setPressure } from './rules/tyre-pressure';
import { stowedReasons } from './stowed-reasons';

type Reason = ReadyToRoll['because'][number];

/**
 * How old a look may be and still count before a trip. [d]
 * Pressure and what is stowed: today. Everything else that the round before a trip asks: today or the day before (our choice,
 * so that the round may be walked the evening before).
 */
const TODAY = 0;
const EVENING_BEFORE = 1;
const AGES: Readonly<Record<string, number>> = { 'tyre-pressure': TODAY };

const asked = new WeakMap<Station, readonly AnyKind[]>();

/** What the round before a trip asks at a station: nothing, where that round does not stop. */
const asksBeforeTrip = (station: Station): readonly AnyKind[] => {
  const known = asked.get(station);
  if (known) return known;
  const kinds = station.retired || !isBeforeATrip(station) ? [] : asksAt(station, 'outside', 'pre-trip').asks;
  asked.set(station, kinds);
  return kinds;
};

const STOPS: readonly Urgency[] = ['do-not-use', 'before-moving'];

/**
 * A finding that keeps the wheels from turning. Where a professional is needed, a judgement otherwise does not lift it:
 * a professional's work that names it does.
 */
const stops = (finding: Finding): boolean => heldByProfession(finding) || (isWork(finding) && STOPS.includes(takenAs(finding)));
const heldByProfession = (finding: Finding): boolean => finding.life === 'judged-otherwise' && finding.who === 'professional' && STOPS.includes(finding.urgency);

const against = (judged: Judged): readonly Reason[] =>
  judged.findings
    .filter(stops)
    .sort((a, b) => byUrgency(takenAs(a), takenAs(b)))
    .map((f) => ({
      text: reasonText(f, judged),
      finding: f.id,
      ...(f.station === undefined ? {} : { station: f.station }),
      entries: [...new Set(f.because.flatMap((b) => b.entries))],
    }));

const reasonText = (finding: Finding, judged: Judged): string => {
  const where = judged.rig.stations.find((s) => s.id === finding.station)?.name;
  const judgedNote = finding.judged ? ` (judged otherwise by ${finding.judged.by}; a professional's work settles it)` : '';
  return `${where === undefined ? '' : `${where}: `}${finding.title.charAt(0).toLowerCase()}${finding.title.slice(1)}${judgedNote}.`;
};

const age = (looked: Standing, on: number): number => on - looked.day;

/** What one question of the round before a trip leaves open at a station. */
const open = (kind: AnyKind, station: Station, latest: Standing | undefined, judged: Judged): Omit<OpenQuestion, 'station'> | undefined => {
  const { on, rig } = judged;
  const of = { order: kind.id, what: kind.id === 'look' ? 'Condition' : kind.title };
  const entries = latest ? [latest.entry.id] : [];
  if (!latest) return { ...of, left: 'not recorded', entries };
  if (age(latest, on) > (AGES[kind.id] ?? EVENING_BEFORE)) return { ...of, left: 'last recorded', day: latest.day, entries };
  if (kind.id !== 'tyre-pressure') return undefined;
  if (setPressure(rig, station) === undefined) return { ...of, left: 'read, but the pressure to set is not known', entries };
  const { rested } = latest.body as BodyOf<(typeof tyrePressure)['fields']>;
  return rested === 'cold' ? undefined : { ...of, left: rested === 'warm' ? 'was read warm' : 'was not said to be cold', entries };
};

/** Everything that the round before a trip asks at stations and that has no answer young enough. */
const openQuestions = (judged: Judged, state: State<Rig>): readonly OpenQuestion[] =>
  judged.rig.stations.flatMap((station) => {
    const latest = state.latest.get(placeKey({ at: 'station', station: station.id, side: 'outside' }));
    const unseen = latest?.get('could-not-see');
    const left = asksBeforeTrip(station).flatMap((kind): readonly OpenQuestion[] => {
      const looked = latest?.get(kind.id);
      const question = open(kind, station, looked, judged);
      if (!question) return [];
      if (!unseen || (looked && unseen.day < looked.day)) return [{ ...question, station }];
      return [{ order: kind.id, what: 'Could not be seen', left: '', day: unseen.day, station, entries: [unseen.entry.id] }];
    });
    const hidden = left.filter((q) => q.left === '');
    return [...hidden.slice(0, 1), ...left.filter((q) => q.left !== '')];
  });

/**
 * Whether the wheels may turn. No, when a finding or something not stowed or not hitched stands against it; not known, when a question
 * of the round before a trip has no answer young enough; yes only when neither is so. An empty logbook is not known.
 * All reasons are given, what stands against it before what is not known, each the most urgent and dangerous first.
 */
export const readyToRoll = (judged: Judged, state: State<Rig>): ReadyToRoll => {
  const { on, rig } = judged;
  const stowing = stowedReasons(rig, state, on);
  const no = [...against(judged), ...openDoors(rig, state, on), ...stowing.no];
  const unknown: readonly Reason[] = [
    ...(rig.stations.length === 0 ? [{ text: 'The rig is not described yet.', entries: [] }] : []),
    ...inGroups(openQuestions(judged, state), stowing.unknown),
  ].map((reason) => ({ ...reason, unknown: true }));
  if (no.length > 0) return { answer: 'no', because: [...no, ...unknown] };
  return unknown.length > 0 ? { answer: 'not-known', because: unknown } : { answer: 'yes', because: [] };
};

/** Doors and hatches that were recorded today as open. */
const openDoors = (rig: Rig, state: State<Rig>, on: number): readonly Reason[] =>
  rig.stations.flatMap((station) => {
    const now = state.latest.get(placeKey({ at: 'station', station: station.id, side: 'outside' }))?.get('opened-state');
    if (station.retired || !now || age(now, on) > TODAY || (now.body as { readonly state?: string }).state !== 'open') return [];
    return [{ text: `${station.name} stands open.`, station: station.id, entries: [now.entry.id] }];
  });
