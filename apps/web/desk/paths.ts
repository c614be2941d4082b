import type { Place, RigId, StationId } from '../../../src/terms';
import { href, withQuery } from '../shared/route';

/** What a new entry opens with. `answers` are choices, by the names of the kind's fields. */
export type AddQuery = {
  readonly kind?: string;
  readonly station?: StationId;
  readonly side?: string;
  readonly finding?: string;
  readonly place?: Place;
  readonly answers?: Readonly<Record<string, string>>;
};

/** Before the name of a field in an address. */
const ANSWER = 'answer.';

/** A point is given by its face and its two figures in metres, so that the form opens on it. */
const placeQuery = (place: Place): Readonly<Record<string, string>> =>
  place.at === 'station' || place.at === 'stretch'
    ? { station: place.station, side: place.side }
    : place.at === 'point'
      ? { face: place.face, side: place.side, x_m: String(place.point_m[0]), y_m: String(place.point_m[1]) }
      : {};

/** The point that an address names, if it names one whole. */
export const pointIn = (query: Readonly<Record<string, string>>): Place | undefined => {
  const { face, side, x_m, y_m } = query;
  const [x, y] = [Number(x_m), Number(y_m)];
  return face !== undefined && (side === 'inside' || side === 'outside') && x_m !== undefined && y_m !== undefined && Number.isFinite(x) && Number.isFinite(y)
    ? { at: 'point', face, side, point_m: [x, y] }
    : undefined;
};

/** The answers that an address brings. */
export const answersIn = (query: Readonly<Record<string, string>>): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(query).flatMap(([k, v]) => (k.startsWith(ANSWER) ? [[k.slice(ANSWER.length), v]] : [])));

/** The desk's addresses, in one place. */
export const desk = {
  sheet: (rig: RigId) => href('rig', rig, 'sheet'),
  underside: (rig: RigId) => href('rig', rig, 'underside'),
  inside: (rig: RigId, face: string) => href('rig', rig, 'inside', face),
  place: (rig: RigId, station: StationId) => href('rig', rig, 'place', station),
  finding: (rig: RigId, finding: string) => href('rig', rig, 'finding', finding),
  plan: (rig: RigId) => href('rig', rig, 'plan'),
  /** One leak or one metered wall; the most pressing when left out. */
  water: (rig: RigId, leakOrPanel?: string) => (leakOrPanel === undefined ? href('rig', rig, 'water') : href('rig', rig, 'water', leakOrPanel)),
  describe: (rig: RigId, station?: StationId) => (station === undefined ? href('rig', rig, 'describe') : href('rig', rig, 'describe', station)),
  slides: (rig: RigId) => href('rig', rig, 'slides'),
  logbook: (rig: RigId, station?: StationId) => withQuery(href('rig', rig, 'logbook'), station === undefined ? {} : { place: station }),
  /** The form for a new entry; with a kind, a place and some answers it opens filled in as far as it can be. */
  add: (rig: RigId, query: AddQuery = {}) => {
    const { kind, station, side, finding, place, answers = {} } = query;
    const given = { kind, station, side, finding, ...(place ? placeQuery(place) : {}) };
    return withQuery(href('rig', rig, 'add'), {
      ...Object.fromEntries(Object.entries(given).filter((e): e is [string, string] => e[1] !== undefined)),
      ...Object.fromEntries(Object.entries(answers).map(([k, v]) => [`${ANSWER}${k}`, v])),
    });
  },
  correct: (rig: RigId, entry: string) => href('rig', rig, 'correct', entry),
  copies: (rig: RigId) => href('rig', rig, 'copies'),
  print: (rig: RigId, what?: string) => (what === undefined ? href('rig', rig, 'print') : href('rig', rig, 'print', what)),
  settings: () => href('settings'),
  worksheets: (id?: string) => (id === undefined ? href('worksheets') : href('worksheets', id)),
  rigs: () => href('rigs'),
} as const;
