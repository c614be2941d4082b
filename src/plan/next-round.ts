import type { stay } from '../entries';
import type { State } from '../logbook';
import type { Rig } from '../rig';
import { type BodyOf, ours, placeKey, WHOLE_RIG } from '../terms';
import { addMonths, type CivilDay, parseWhen, showDay } from '../units';
import type { NextRound } from './plan-types';
import { lastFullRound } from './rounds';
import { sourceOf } from './trade';

/** In use or in the sun the trade asks for a look at every seal after 90 days, under a roof after six months. */
const IN_THE_OPEN_MONTHS = 3;
const UNDER_A_ROOF_MONTHS = 6;
const IN_THE_OPEN = sourceOf('SEAL90');
const UNDER_A_ROOF = sourceOf('SEAL6');
const WARRANTY = ours("the owner's own warranty wording, as entered");

/** Whether the rig stands under a roof on that day, by its latest stay. */
const isRoofed = (state: State<Rig>, on: CivilDay): boolean => {
  const latest = (state.through.get(placeKey(WHOLE_RIG))?.get('stay') ?? []).at(-1);
  if (!latest) return false;
  const when = parseWhen(latest.observed_at);
  const { cover } = latest.body as BodyOf<(typeof stay)['fields']>;
  return (cover === 'roofed' || cover === 'indoors') && !(when?.form === 'span' && when.to < on);
};

/** When the next full round is due: the earlier of the warranty's interval and the seasonal rule. */
export const nextRound = (rig: Rig, state: State<Rig>, on: CivilDay): NextRound | undefined => {
  if (rig.stations.length === 0) return undefined;
  const last = lastFullRound(state);
  if (!last) return { on, because: 'No full round is in the logbook yet.', source: ours('A first full round tells what the rig is like') };
  const day = last.ended?.day ?? last.begun.day;
  const roofed = isRoofed(state, on);
  const seasonal: NextRound = {
    on: addMonths(day, roofed ? UNDER_A_ROOF_MONTHS : IN_THE_OPEN_MONTHS),
    because: `The last full round was on ${showDay(day)}; ${roofed ? 'under a roof the trade looks at the seals every six months' : 'in use or in the open the trade looks at the seals every three months'}.`,
    source: roofed ? UNDER_A_ROOF : IN_THE_OPEN,
  };
  const { warranty_months } = rig;
  if (warranty_months === undefined) return seasonal;
  const warranty: NextRound = {
    on: addMonths(day, warranty_months),
    because: `The last full round was on ${showDay(day)}; the warranty asks for an inspection every ${warranty_months} ${warranty_months === 1 ? 'month' : 'months'}.`,
    source: WARRANTY,
  };
  return warranty.on <= seasonal.on ? warranty : seasonal;
};
