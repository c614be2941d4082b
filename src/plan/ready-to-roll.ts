import { asksAt, type stowed, type tyrePressure } from '../entries';
import type { Standing, State } from '../logbook';
import { isBeforeATrip, type Rig } from '../rig';
import { type AnyKind, type BodyOf, placeKey, type Station, type Urgency, WHOLE_RIG } from '../terms';
import { showDay } from '../units';
import { type Finding, isWork, takenAs } from './finding';
import type { Judged } from './judge';
import type { ReadyToRoll } from './plan-types';
import { setPressure } from './rules/tyre-pressure';

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
  judged.findings.filter(stops).map((f) => ({
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
const open = (station: Station, kind: AnyKind, latest: Standing | undefined, judged: Judged): Reason | undefined => {
  const { on, rig } = judged;
  const what = `${station.name}: ${kind.title.charAt(0).toLowerCase()}${kind.title.slice(1)}`;
  const limit = AGES[kind.id] ?? EVENING_BEFORE;
  if (!latest) return { text: `${what} not recorded.`, station: station.id, entries: [] };
  if (age(latest, on) > limit) return { text: `${what} last recorded on ${showDay(latest.day)}.`, station: station.id, entries: [latest.entry.id] };
  if (kind.id !== 'tyre-pressure') return undefined;
  if (setPressure(rig, station) === undefined) return { text: `${what} read, but the pressure to set is not known.`, station: station.id, entries: [latest.entry.id] };
  const { rested } = latest.body as BodyOf<(typeof tyrePressure)['fields']>;
  return rested === 'cold' ? undefined : { text: `${what} was ${rested === 'warm' ? 'read warm' : 'not said to be cold'}.`, station: station.id, entries: [latest.entry.id] };
};

const stowedReasons = (state: State<Rig>, on: number): { readonly no: readonly Reason[]; readonly unknown: readonly Reason[] } => {
  const latest = state.latest.get(placeKey(WHOLE_RIG))?.get('stowed');
  if (!latest || age(latest, on) > TODAY)
    return {
      no: [],
      unknown: [
        { text: latest ? `Chocks, cords and jacks last recorded on ${showDay(latest.day)}.` : 'Chocks, cords and jacks not recorded.', entries: latest ? [latest.entry.id] : [] },
      ],
    };
  const body = latest.body as BodyOf<(typeof stowed)['fields']>;
  const entries = [latest.entry.id];
  const no: Reason[] = [];
  if (body.chocks !== 'away') no.push({ text: 'Wheel chocks are still in place.', entries });
  if (body.cords !== 'stowed') no.push({ text: 'A cord or hose is still connected.', entries });
  if (body.jacks === 'down') no.push({ text: 'A jack or leg is still down.', entries });
  return { no, unknown: [] };
};

/**
 * Whether the wheels may turn. No, when a finding or something not stowed stands against it; not known, when a question of the
 * round before a trip has no answer young enough; yes only when neither is so. An empty logbook is not known.
 */
export const readyToRoll = (judged: Judged, state: State<Rig>): ReadyToRoll => {
  const { on, rig } = judged;
  const stowing = stowedReasons(state, on);
  const no = [...against(judged), ...openDoors(rig, state, on), ...stowing.no];
  const unknown: Reason[] = [];
  for (const station of rig.stations) {
    const questions = asksBeforeTrip(station);
    if (questions.length === 0) continue;
    const latest = state.latest.get(placeKey({ at: 'station', station: station.id, side: 'outside' }));
    const unseen = latest?.get('could-not-see');
    for (const kind of questions) {
      const looked = latest?.get(kind.id);
      const reason = open(station, kind, looked, judged);
      if (reason)
        unknown.push(
          unseen && (!looked || unseen.day >= looked.day)
            ? { text: `${station.name} could not be seen on ${showDay(unseen.day)}.`, station: station.id, entries: [unseen.entry.id] }
            : reason,
        );
    }
  }
  unknown.push(...stowing.unknown);
  if (rig.stations.length === 0) unknown.push({ text: 'The rig is not described yet.', entries: [] });
  if (no.length > 0) return { answer: 'no', because: no };
  return unknown.length > 0 ? { answer: 'not-known', because: unknown } : { answer: 'yes', because: [] };
};

/** Doors and hatches that were recorded today as open. */
const openDoors = (rig: Rig, state: State<Rig>, on: number): readonly Reason[] =>
  rig.stations.flatMap((station) => {
    const now = state.latest.get(placeKey({ at: 'station', station: station.id, side: 'outside' }))?.get('opened-state');
    if (station.retired || !now || age(now, on) > TODAY || (now.body as { readonly state?: string }).state !== 'open') return [];
    return [{ text: `${station.name} stands open.`, station: station.id, entries: [now.entry.id] }];
  });
