import type { RigId, StationId } from '../../../src/terms';
import { href, withQuery } from '../shared/route';

/** The desk's addresses, in one place. */
export const desk = {
  sheet: (rig: RigId) => href('rig', rig, 'sheet'),
  underside: (rig: RigId) => href('rig', rig, 'underside'),
  inside: (rig: RigId, face: string) => href('rig', rig, 'inside', face),
  place: (rig: RigId, station: StationId) => href('rig', rig, 'place', station),
  finding: (rig: RigId, finding: string) => href('rig', rig, 'finding', finding),
  plan: (rig: RigId) => href('rig', rig, 'plan'),
  describe: (rig: RigId, station?: StationId) => (station === undefined ? href('rig', rig, 'describe') : href('rig', rig, 'describe', station)),
  slides: (rig: RigId) => href('rig', rig, 'slides'),
  logbook: (rig: RigId, station?: StationId) => withQuery(href('rig', rig, 'logbook'), station === undefined ? {} : { place: station }),
  /** The form for a new entry; with a kind and a place it opens filled in as far as it can be. */
  add: (rig: RigId, query: { readonly kind?: string; readonly station?: StationId; readonly side?: string; readonly finding?: string } = {}) =>
    withQuery(href('rig', rig, 'add'), Object.fromEntries(Object.entries(query).filter((e): e is [string, string] => e[1] !== undefined))),
  correct: (rig: RigId, entry: string) => href('rig', rig, 'correct', entry),
  copies: (rig: RigId) => href('rig', rig, 'copies'),
  print: (rig: RigId, what?: string) => (what === undefined ? href('rig', rig, 'print') : href('rig', rig, 'print', what)),
  settings: () => href('settings'),
  worksheets: (id?: string) => (id === undefined ? href('worksheets') : href('worksheets', id)),
  rigs: () => href('rigs'),
} as const;
