import { dewMargin } from '../../science';
import type { ForecastHour } from '../forecast/forecast-types';
import { HOUR_MS } from '../forecast/forecast-types';
import type { FaceHour } from './face-hours';
import type { Rain } from './rain';
import type { Conditions, Gate, Need, Parked } from './windows-types';

/** Everything that the gates of one job look at. */
export type Scene = {
  readonly need: Need;
  readonly hours: readonly ForecastHour[];
  readonly faces: readonly (FaceHour | undefined)[];
  readonly light: readonly boolean[];
  readonly rain: Rain;
  readonly conditions: Conditions;
  readonly parked: Parked;
  readonly now: number;
  /** Midnight before the day the wheels turn. */
  readonly departs: number | undefined;
};

const lays = ({ need }: Scene): boolean => need.for === 'laying';

/** What the forecast does not say of an hour that this job needs to know. */
export const lacking = ({ need, conditions }: Pick<Scene, 'need' | 'conditions'>, hour: ForecastHour): readonly string[] => {
  const laying = need.for === 'laying';
  const asked: readonly (readonly [boolean, unknown, string])[] = [
    [laying, hour.air, 'air temperature'],
    [laying, hour.dew_point, 'dew point'],
    [laying || need.climbs, hour.wind, 'wind'],
    [laying, hour.cover, 'cloud'],
    [true, hour.rain_chance, 'chance of rain'],
    [conditions.rain_amount !== undefined, hour.rain, 'amount of rain'],
  ];
  return asked.flatMap(([needed, value, words]) => (needed && value === undefined ? [words] : []));
};

type Judge = (scene: Scene, i: number, hour: ForecastHour, face: FaceHour | undefined) => boolean;

/** Where the surface stands against the product’s limits and the dew point; `too-close` where what is open in it leaves doubt. */
const surfaceGate =
  (gate: 'too-cold' | 'too-warm' | 'dew' | 'too-close'): Judge =>
  (scene, _, hour, face) => {
    const { need, conditions } = scene;
    if (!lays(scene) || !face || hour.dew_point === undefined) return false;
    const { coldest, cold_open, warmest, warm_open } = face;
    const dew = dewMargin(coldest, hour.dew_point, conditions.dew_margin, cold_open).standing;
    const cold = need.least === undefined ? 0 : need.least - coldest;
    const warm = need.most === undefined ? -Infinity : warmest - need.most;
    if (gate === 'too-cold') return cold > 0;
    if (gate === 'too-warm') return warm > 0;
    if (gate === 'dew') return dew === 'wet' || dew === 'too-near';
    return dew === 'too-close' || (cold <= 0 && cold > -cold_open) || (warm <= 0 && warm > -warm_open);
  };

const before = (scene: Scene, i: number) => scene.rain.over(i - scene.need.dry_before_h, i);
const after = (scene: Scene, i: number) => scene.rain.over(i + 1, i + 1 + scene.need.rain_free_h);

/** Each reason by itself: what closes an hour. */
export const JUDGES: Readonly<Record<Gate, Judge>> = {
  past: (s, _, hour) => hour.at < s.now,
  missing: (s, _, hour, face) => lacking(s, hour).length > 0 || (lays(s) && !face),
  indoors: (s) => s.parked.cover === 'indoors' && lays(s),
  dark: (s, i) => !s.light[i],
  rain: (s, i) => s.rain.at(i) === 'rain',
  'too-cold': surfaceGate('too-cold'),
  dew: surfaceGate('dew'),
  'too-warm': surfaceGate('too-warm'),
  'too-close': surfaceGate('too-close'),
  wind: (s, _, hour) => s.need.climbs && ((hour.wind ?? 0) > s.conditions.wind || (hour.gust ?? 0) > s.conditions.gust),
  'not-dry-before': (s, i) => before(s, i) === 'rain',
  'before-unknown': (s, i) => before(s, i) === 'unknown',
  'rain-after': (s, i) => after(s, i) === 'rain',
  'after-unknown': (s, i) => after(s, i) === 'unknown',
  departure: (s, _, hour) => s.departs !== undefined && s.need.cure_h > 0 && hour.at + HOUR_MS * (1 + s.need.cure_h) > s.departs,
};

/** What must hold while the old is stripped, cleaned and primed. */
export const PREPARING: readonly Gate[] = ['past', 'dark', 'rain', 'wind'];
