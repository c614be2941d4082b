import type { Rig } from '../../rig';
import { DEW_MARGIN, type FaceSpan, type Site } from '../../science';
import { accept, type CivilDay, instant, metres, metresPerSecond, type Result, share } from '../../units';
import { HOUR_MS } from '../forecast/forecast-types';
import type { Job } from '../plan-types';
import { bestDay, type Candidate } from './best-day';
import { faceHours, lieOf, skyHours } from './face-hours';
import { lacking, type Scene } from './gates';
import { dayAt, type Found, hoursFor, shutIn, windowsIn } from './job-windows';
import { needOf } from './needs';
import { rainOver } from './rain';
import type { Conditions, Need, Windows, WindowsAsked } from './windows-types';

/**
 * What counts where nobody said otherwise, ours but for the dew: one chance in five of the least rain that is measured, 0.01 in; on a ladder
 * or a roof a moderate breeze and gusts of half as much again. No safety rule that was read gives a number for wind.
 */
export const USUAL_CONDITIONS: Conditions = {
  rain_chance: share(0.2),
  rain_amount: metres(0.000254),
  wind: metresPerSecond(7),
  gust: metresPerSecond(10.5),
  dew_margin: DEW_MARGIN,
};

type Planned = { readonly job: Job; readonly need: Need; readonly face: string };

const assumptions = ({ parked, colour, conditions }: WindowsAsked): readonly string[] => [
  'The wind at the rig is taken as half of the wind ten metres up.',
  colour === undefined
    ? 'The colour of the skin is not recorded: a clean white one is taken for cold and dew, a dark one for heat. Naming the colour may open more hours.'
    : 'All faces are taken as of the colour named.',
  ...(parked.heading === undefined ? ['No heading is recorded: each wall is taken as if it might look at the sun or away from it.'] : []),
  ...(parked.cover === 'unknown' ? ['Whether it stands in the open is not recorded: the sun may reach it or may not. Recording the stay may open more hours.'] : []),
  ...(parked.cover === 'roofed' || parked.cover === 'covered' ? ['Under a roof or a cover the sun may reach a face or may not; rain counts as in the open.'] : []),
  ...(conditions.rain_amount === undefined ? ['The amount of rain is not asked for: the chance alone decides.'] : []),
  'An hour counts as open only where what is unsure in the surface’s temperature leaves no doubt. A thermometer on the surface says more.',
  'What was wet with dew or rain is wiped dry before anything is laid on it.',
  'The chance that a window fails is that of rain alone, as the forecast tells it.',
];

/** Midnight before a civil day, by the clock on the wall. */
export const midnightBefore = (day: CivilDay, clock: WindowsAsked['clock']): number => {
  let at = day * 24 * HOUR_MS;
  // Twice: the offset at the first guess may be that of the other side of a clock change.
  for (let i = 0; i < 2; i += 1) at = day * 24 * HOUR_MS - clock(instant(at)) * 60_000;
  return at;
};

/**
 * In which hours ahead each job can be done, why in the others not, and the best day.
 *
 * @param rig    with its faces and stations
 * @param asked  jobs, forecast, how the rig stands, what counts
 * @param site   where it stands
 * @returns      refused where there is no such place, or no sun for those years
 * @valid        as `sunOver`, `clearSkyOver` and `faceInWeather`; an hour outside what they cover is closed
 * @agrees       the dew rule and a product’s limits with the application-gate cases; two shapes of the same forecast give the same windows
 * @assumes      see `assumes` of the answer
 * @source       1. ISO 8502-4 practice: 3 K above the dew point. Other limits with each need
 */
export const weatherWindows = (rig: Rig, asked: WindowsAsked, site: Site): Result<Windows> => {
  const { hours, now, clock, parked, conditions, departure } = asked;
  const sky = skyHours(hours, site);
  if (!sky.ok) return sky;
  const rain = rainOver(hours, conditions, now, asked.dry_since);
  const days = hours.map((h) => dayAt(h.at, clock));
  const departs = departure === undefined ? undefined : midnightBefore(departure, clock);

  const stations = new Map(rig.stations.map((s) => [s.id, s]));
  const planned = asked.jobs.flatMap((job): readonly Planned[] => {
    const station = job.station === undefined ? undefined : stations.get(job.station);
    const need = needOf(job, station, rig);
    return need && station ? [{ job, need, face: station.face }] : [];
  });

  const byLie = new Map<string, readonly (FaceSpan | undefined)[]>();
  const facesFor = (face: string): readonly [key: string, hours: readonly (FaceSpan | undefined)[]] => {
    const lie = lieOf(face, rig);
    const key = `${lie.tilt} ${lie.side ?? ''}`;
    const known = byLie.get(key) ?? faceHours(sky.value, lie, parked, asked.colour);
    byLie.set(key, known);
    return [key, known];
  };
  // Jobs that ask the same of the same face are shut in the same hours.
  const shut = new Map<string, readonly number[]>();
  const told = new Map<string, Found>();
  const candidates = planned.map(({ job, need, face }): Candidate => {
    const [lie, faces] = facesFor(face);
    const limits = {
      ...(need.least === undefined ? {} : { least: need.least }),
      ...(need.most === undefined ? {} : { most: need.most }),
      dew_margin: need.for === 'laying' ? conditions.dew_margin : 0,
    };
    const scene: Scene = { need, limits, hours, faces, light: sky.value.light, rain, conditions, parked, now, departs };
    const key = [lie, need.for, need.least, need.most, need.dry_before_h, need.rain_free_h, need.cure_h, need.climbs, need.dry_surface, need.stands_on_it].join(' ');
    const bits = shut.get(key) ?? shutIn(scene);
    shut.set(key, bits);
    const least = hoursFor(job);
    const found = told.get(`${key} ${least}`) ?? windowsIn(scene, bits, days, least);
    told.set(`${key} ${least}`, found);
    return { job, bits, found: { job: job.id, title: job.title, ...(job.station === undefined ? {} : { station: job.station }), need, ...found } };
  });

  const last = hours.at(-1);
  const ends = instant((last?.at ?? 0) + HOUR_MS);
  const best = bestDay(candidates, hours[0]?.at);
  const everything = { need: { climbs: true, dry_surface: true } as Need, conditions };
  return accept({
    jobs: candidates.map((c) => c.found),
    ...(best ? { best } : {}),
    hours: hours.filter((h) => h.at >= now).length,
    hours_lacking: hours.filter((h) => h.at >= now && lacking(everything, h).length > 0).length,
    over: ends <= now,
    ends,
    not_weighed: asked.jobs.filter((j) => j.who === 'yourself' && j.remedy !== undefined && !planned.some((p) => p.job === j)).map((j) => j.id),
    assumes: assumptions(asked),
  });
};
