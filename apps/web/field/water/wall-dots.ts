import type { Panel, Spot, SpotState } from '../../../../src/plan';
import { type CivilDay, figure } from '../../../../src/units';
import { samePoint, type ToRead } from './series';
import type { Dot, DotForm } from './wall-picture';

export const STATE_WORD: Readonly<Record<SpotState, string>> = {
  wet: 'wet',
  damp: 'damp',
  dry: 'dry',
  weather: 'high, as its air is',
  condensation: 'sweats, no leak',
  'not-known': 'not comparable yet',
};

const FORM: Readonly<Record<SpotState, DotForm>> = { wet: 'wet', damp: 'damp', dry: 'dry', weather: 'read', condensation: 'read', 'not-known': 'read' };

/** The figure as it was read, without its unit: it stands beside a dot. */
export const figureOf = (spot: Spot): string => {
  const last = spot.readings.at(-1);
  return last ? figure(last.as_read * 100, Number.isInteger(Math.round(last.as_read * 1e6) / 1e4) ? 0 : 1) : '';
};

/** Everything that stands on the drawing of one wall: what was read today with its figure, what was read before, and what is to be read. */
export const dotsOf = (panel: Panel | undefined, today: CivilDay, toRead: readonly ToRead[]): readonly Dot[] => {
  const spots = (panel?.spots ?? []).map((spot) => ({ spot, last: spot.readings.at(-1) }));
  const isWanted = (spot: Spot): boolean => toRead.some((t) => samePoint(t.point_m, spot.point_m));
  return [
    ...toRead
      .filter((t) => !spots.some(({ spot, last }) => last?.day === today && samePoint(spot.point_m, t.point_m)))
      .map((t, i): Dot => ({ key: `to-read ${i}`, point_m: t.point_m, form: 'to-read', text: '' })),
    ...spots.flatMap(({ spot, last }): readonly Dot[] => {
      if (last?.day === today) return [{ key: spot.id, point_m: spot.point_m, form: last.dry_reference ? 'reference' : FORM[spot.state], text: figureOf(spot) }];
      return isWanted(spot) ? [] : [{ key: spot.id, point_m: spot.point_m, form: 'earlier', text: '' }];
    }),
  ];
};
