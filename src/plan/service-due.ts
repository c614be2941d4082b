import type { State } from '../logbook';
import type { Rig } from '../rig';
import { type EntryId, placeKey, type StationId } from '../terms';
import { addMonths, type CivilDay, showDay } from '../units';
import type { ServiceDue } from './plan-types';
import { firstSource, isA, type ServiceItem, service } from './trade';

/** Kinds of care or look that answer an item; items that no kind answers stay words in the trade data. */
const ANSWERED_BY: Readonly<Record<string, readonly string[]>> = {
  'wash-epdm': ['cleaned'],
  'wash-tpo-pvc': ['cleaned'],
  'wash-frp-roof': ['cleaned'],
  'slide-seal-care': ['lubricated', 'cleaned'],
  'door-seal-care': ['lubricated', 'cleaned'],
  'slide-mech-care': ['lubricated'],
  'step-care': ['lubricated'],
  'lock-care': ['lubricated'],
  'hinge-care': ['lubricated'],
  'vent-gear': ['lubricated'],
  'gutter-care': ['cleaned'],
  'awning-wash': ['cleaned'],
  'fridge-vent-clean': ['cleaned'],
  'leg-service': ['lubricated'],
  'lp-test': ['professional-work'],
  'bearing-service': ['professional-work'],
};

/** The table's interval, where it is a plain number of months, or months in use. */
const monthsOf = (item: ServiceItem): number | undefined => {
  const m = /^(\d+)( in use)?$/.exec(item.months ?? '');
  return m ? Number(m[1]) : undefined;
};

/**
 * Recurring care that is due by the table's interval, counted from the last time it was recorded at each station.
 * Care that was never recorded is due without a day: the logbook cannot know when it was last done.
 */
export const serviceDue = (rig: Rig, state: State<Rig>, on: CivilDay): readonly ServiceDue[] =>
  service.flatMap((item): readonly ServiceDue[] => {
    const [kinds, months] = [ANSWERED_BY[item.id], monthsOf(item)];
    const stations = kinds === undefined || months === undefined ? [] : rig.stations.filter((s) => !s.retired && item.kinds.some((k) => isA(s.looks, k)));
    if (kinds === undefined || months === undefined || stations.length === 0) return [];
    const never: StationId[] = [];
    const late: StationId[] = [];
    const entries: EntryId[] = [];
    let first: CivilDay | undefined;
    for (const station of stations) {
      const through = state.through.get(placeKey({ at: 'station', station: station.id, side: 'outside' }));
      const last = kinds
        .flatMap((k) => through?.get(k)?.at(-1) ?? [])
        .sort((a, b) => a.day - b.day)
        .at(-1);
      if (!last) never.push(station.id);
      else if (addMonths(last.day, months) <= on) {
        late.push(station.id);
        entries.push(last.entry.id);
        const due = addMonths(last.day, months);
        if (first === undefined || due < first) first = due;
      }
    }
    const every = `every ${months} ${months === 1 ? 'month' : 'months'}${item.months?.endsWith('in use') ? ' in use' : ''}`;
    const line = (words: string, ids: readonly EntryId[]): ServiceDue['because'] => ({ text: `${item.item} ${every}: ${words}.`, entries: ids, source: firstSource(item.sources) });
    const due: ServiceDue[] = [];
    if (late.length > 0 && first !== undefined)
      due.push({ item: item.id, words: item.item, stations: late, due: first, who: item.who, because: line(`due since ${showDay(first)}`, entries) });
    if (never.length > 0) due.push({ item: item.id, words: item.item, stations: never, who: item.who, because: line('not recorded so far', []) });
    return due;
  });
