import type { Leak } from '../../../../src/plan';
import { type AnyKind, type Place, placeKey, type Side, WHOLE_RIG } from '../../../../src/terms';
import type { Preferences } from '../../../../src/units';
import type { Overview } from '../../session/session';
import { stationById, whereWords } from '../../shared/rig-words';
import { spotWords } from './wall-name';

export type PlaceChoice = { readonly key: string; readonly words: string; readonly place: Place };

/**
 * Where an entry of this kind may belong, the likeliest first: the place that was asked for, the wet places of the leak, the other
 * metered places, the whole rig, and last every opening.
 */
export const placesFor = ({ rig, plan }: Overview, kind: AnyKind, leak: Leak | undefined, station: string | undefined, preferences: Preferences): readonly PlaceChoice[] => {
  const allows = (form: Place['at']): boolean => kind.places.includes(form);
  const side: Side = kind.sides.includes('inside') && kind.group !== 'care' ? 'inside' : (kind.sides[0] ?? 'outside');
  const choice = (place: Place, words: string): PlaceChoice => ({ key: placeKey(place), words, place });
  const asked = stationById(rig, station);
  const spots = [...(leak?.spots ?? []), ...plan.water.panels.flatMap((p) => p.spots)];
  const all = [
    ...(asked && allows('station') ? [choice({ at: 'station', station: asked.id, side }, asked.name)] : []),
    ...spots.filter((s) => allows(s.place.at) && s.place.at !== 'rig' && kind.sides.includes(s.side)).map((s) => choice(s.place, spotWords(rig, s, preferences))),
    ...(allows('rig') ? [choice(WHOLE_RIG, 'The whole rig')] : []),
    ...(allows('station')
      ? rig.stations
          .filter((s) => !s.retired && s.cut_through && (kind.adds === undefined || kind.adds(s, side)))
          .map((s) => choice({ at: 'station', station: s.id, side }, `${s.name}: ${whereWords(rig, s, side).toLowerCase()}`))
      : []),
  ];
  return all.filter((p, i) => all.findIndex((q) => q.key === p.key) === i);
};
