import type { airAndSkin } from '../../entries';
import type { Standing } from '../../logbook';
import { pointOf, type Rig } from '../../rig';
import { condensation, type Sweating as Skin } from '../../science';
import type { BodyOf } from '../../terms';
import { fromSi, kelvin, parseWhen, relativeHumidity, showDay, showIn, sortInstant } from '../../units';
import type { Because } from '../finding';
import { DEW_POINT } from './sources';
import type { Comparable } from './water-types';

type Body = BodyOf<(typeof airAndSkin)['fields']>;

/** Air and skin tell of a reading taken this near in time and place (ours). [ms], [m] */
const NEAR_TIME = 12 * 3_600_000;
const NEAR_PLACE = 1;

export type Sweating = { readonly skin: Skin; readonly because: Because };

const SAYS: Readonly<Record<Skin, string>> = {
  sweats: 'it was wet without a leak',
  'too-close': 'too close to say whether it sweats',
  dry: 'it did not sweat',
};

const both = (k: number): string => `${showIn(k, 'temperature', 'f')} (${showIn(k, 'temperature', 'c')})`;

const momentOf = (text: string): number | undefined => {
  const when = parseWhen(text);
  return when && sortInstant(when);
};

/**
 * Whether the surface was colder than the dew point of its air when a place was read: then it is wet with no leak.
 *
 * @param measured  entries of air and skin, oldest first
 * @returns         undefined where none was taken near enough
 */
export const sweatingAt = (measured: readonly Standing[], reading: Pick<Comparable, 'face' | 'side' | 'point_m' | 'observed_at'>, rig: Rig): Sweating | undefined => {
  const at = momentOf(reading.observed_at);
  const near = measured.flatMap((s) => {
    const place = pointOf(rig, s.place);
    const then = momentOf(s.observed_at);
    if (!place || s.place.at === 'rig' || place.face !== reading.face || s.place.side !== reading.side || at === undefined || then === undefined) return [];
    const [away, ago] = [Math.hypot(place.point[0] - reading.point_m[0], place.point[1] - reading.point_m[1]), Math.abs(then - at)];
    return away <= NEAR_PLACE && ago <= NEAR_TIME ? [{ s, ago }] : [];
  });
  const [nearest] = near.toSorted((a, b) => a.ago - b.ago);
  if (!nearest) return undefined;
  const { s } = nearest;
  const body = s.body as Body;
  const found = condensation(kelvin(body.air_temperature.si), relativeHumidity(body.relative_humidity.si), kelvin(body.skin_temperature.si));
  if (!found.ok) return undefined;
  const [skin, dew] = [both(body.skin_temperature.si), both(found.value.dew_point)];
  return {
    skin: found.value.skin,
    because: {
      text: `On ${showDay(s.day)} the surface was at ${skin}, and its air wets anything below ${dew}: ${SAYS[found.value.skin]}.`,
      entries: [s.entry.id],
      source: DEW_POINT,
      worksheet: {
        id: 'condensation',
        inputs: {
          air_temperature_c: fromSi(body.air_temperature.si, 'temperature', 'c'),
          relative_humidity_percent: fromSi(body.relative_humidity.si, 'relative-humidity', 'percent'),
          skin_temperature_c: fromSi(body.skin_temperature.si, 'temperature', 'c'),
        },
      },
    },
  };
};
