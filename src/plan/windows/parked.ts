import type { stay } from '../../entries';
import type { State } from '../../logbook';
import type { Rig } from '../../rig';
import { type BodyOf, placeKey, WHOLE_RIG } from '../../terms';
import { type CivilDay, parseWhen, radians } from '../../units';
import type { Parked } from './windows-types';

/** How the rig stands on a day, by its latest stay; a stay that has ended says nothing of today. */
export const parkedOn = (state: State<Rig>, on: CivilDay): Parked => {
  const stays = state.through.get(placeKey(WHOLE_RIG))?.get('stay') ?? [];
  const latest = stays.findLast((s) => {
    const when = parseWhen(s.observed_at);
    return when?.form === 'span' ? when.from <= on : s.day <= on;
  });
  const when = latest && parseWhen(latest.observed_at);
  if (!latest || (when?.form === 'span' && when.to < on)) return { cover: 'unknown' };
  const { heading, cover } = latest.body as BodyOf<(typeof stay)['fields']>;
  return { ...(heading ? { heading: radians(heading.si) } : {}), cover: cover ?? 'unknown' };
};
