import type { AnyKind, Side, Station } from '../terms';

export type RoundForm = 'full' | 'partial' | 'pre-trip';

export type Asks = {
  /** Asked one after the other; nearly always one. */
  readonly asks: readonly AnyKind[];
  /** What a person may add there. */
  readonly also: readonly AnyKind[];
};

/** What may be asked or added at a place: an observation that its side allows. */
const fits = (kind: AnyKind, side: Side): boolean => kind.group === 'observation' && kind.sides.includes(side) && kind.places.includes('station');

/**
 * What a round asks at a station, and what may be added there. A full or partial round asks something at every station
 * outside; a round before a trip asks nothing where nothing bears on the road, and such a station is no stop of it.
 *
 * @param kinds      in the order in which they are asked
 * @param otherwise  the kind that is asked where no other suits
 * @param answered   ids of kinds that already have an answer at this place: facts asked once are not asked again
 */
export const asksOf =
  (kinds: readonly AnyKind[], otherwise: AnyKind) =>
  (station: Station, side: Side, form: RoundForm = 'full', answered: ReadonlySet<string> = new Set()): Asks => {
    const wanted = (kind: AnyKind): boolean => (form === 'pre-trip' ? kind.before_trip : kind.suits)?.(station, side) === true && !(kind.once && answered.has(kind.id));
    const possible = kinds.filter((kind) => fits(kind, side));
    const suited = possible.filter(wanted);
    const asks = suited.length > 0 || side === 'inside' || form === 'pre-trip' ? suited : [otherwise];
    const also = possible.filter((kind) => !asks.includes(kind) && (kind.adds?.(station, side) === true || kind.suits?.(station, side) === true));
    return { asks, also };
  };
