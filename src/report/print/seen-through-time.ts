import { type Drawing, type GradeLook, gradePlot, timePlot } from '../../drawing';
import { kindById } from '../../entries';
import type { Standing, State } from '../../logbook';
import type { Rig } from '../../rig';
import { placeKey, type Side, type StationId } from '../../terms';
import { fromSi, type Preferences, usualUnit } from '../../units';

/** What was seen at a station through the years, as plots and as lines. */
const through = (state: State<Rig>, station: StationId, side: Side): ReadonlyMap<string, readonly Standing[]> =>
  state.through.get(placeKey({ at: 'station', station, side })) ?? new Map();

const gradeIn = (body: unknown): number | undefined => {
  const grade = (body as { readonly grade?: unknown }).grade;
  const m = typeof grade === 'string' ? /^S([0-5])$/.exec(grade) : null;
  return m ? Number(m[1]) : undefined;
};

/** Care that makes a seal anew. */
const SEALS_ANEW: readonly string[] = ['resealed', 'rebedded', 'replaced', 'professional-work'];

/** The seal's grade through the years; undefined with fewer than two looks. */
export const sealThroughTime = (state: State<Rig>, station: StationId, title: string, size: { readonly width: number; readonly height: number }): Drawing | undefined => {
  const all = through(state, station, 'outside');
  const looks: GradeLook[] = (all.get('seal-grade') ?? []).flatMap((s) => {
    const grade = gradeIn(s.body);
    return grade === undefined ? [] : [{ day: s.day, grade }];
  });
  if (looks.length < 2) return undefined;
  const unseen: GradeLook[] = (all.get('could-not-see') ?? []).map((s) => ({ day: s.day, grade: 'not-seen' }));
  const care = SEALS_ANEW.flatMap((kind) => (all.get(kind) ?? []).map((s) => ({ day: s.day, words: kind === 'professional-work' ? 'by a professional' : kind })));
  return gradePlot({ title, looks: [...looks, ...unseen], care, ...size });
};

const pressureIn = (body: unknown): number | undefined => {
  const si = (body as { readonly pressure?: { readonly si?: unknown } }).pressure?.si;
  return typeof si === 'number' ? si : undefined;
};

/** Cold pressures as read, this wheel heavy, the others thin: not corrected for temperature, which is said beside it. */
export const pressureThroughTime = (
  rig: Rig,
  state: State<Rig>,
  station: StationId,
  title: string,
  preferences: Preferences,
  size: { readonly width: number; readonly height: number },
): Drawing | undefined => {
  const unit = usualUnit('gauge-pressure', preferences);
  const wheels = rig.stations.filter((s) => s.part === 'tyre' && !s.retired);
  const series = wheels.flatMap((w) => {
    const points = (through(state, w.id, 'outside').get('tyre-pressure') ?? []).flatMap((s) => {
      const si = pressureIn(s.body);
      return si === undefined ? [] : [{ day: s.day, value: fromSi(si, 'gauge-pressure', unit) }];
    });
    return points.length === 0 ? [] : [{ words: w.id === station ? 'this one' : '', points, ...(w.id === station ? { one: true } : {}) }];
  });
  if (!series.some((s) => s.one === true && s.points.length > 1)) return undefined;
  const axle = wheels.find((w) => w.id === station)?.axle;
  const set = axle === undefined ? undefined : rig.set_pressure_pa[axle];
  const levels = set === undefined ? [] : [{ value: fromSi(set, 'gauge-pressure', unit), words: 'set' }];
  return timePlot({ title, series: [...series].sort((a, b) => Number(a.one === true) - Number(b.one === true)), levels, show: (v) => v.toFixed(0), ...size });
};

/** Everything observed and done at a station on one side, the newest first. */
export const recordedAt = (state: State<Rig>, station: StationId, side: Side): readonly Standing[] =>
  [...through(state, station, side).values()]
    .flat()
    .filter((s) => ['observation', 'care', 'decision'].includes(kindById(s.entry.kind)?.group ?? ''))
    .sort((a, b) => b.day - a.day);
