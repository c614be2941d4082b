import { createContext, useContext } from 'react';
import type { Finding } from '../../../src/plan';
import type { Rig } from '../../../src/rig';
import type { Draft, EntryId, Place, RigId, Station, StationId } from '../../../src/terms';
import type { CivilDay, Preferences } from '../../../src/units';
import type { Overview, Session } from '../session/session';

/** What every desk page is given: the rig as it stands, the way to ask and to keep, and who is writing. */
export type Desk = {
  readonly id: RigId;
  readonly session: Session;
  readonly overview: Overview;
  readonly preferences: Preferences;
  /** Name that is written beside every entry. */
  readonly by: string;
  readonly today: CivilDay;
  readonly demo: boolean;
  /** Keeps entries and says so; resolves to the ids once they are durable, or to nothing when they could not be kept. */
  readonly keep: (drafts: readonly NewEntry[], said: string) => Promise<readonly EntryId[] | undefined>;
  readonly say: (notice: Notice) => void;
};

/** What a page writes down; the desk adds rig, person and time. */
export type NewEntry = Omit<Draft, 'rig' | 'by' | 'observed_at' | 'version'> & { readonly observed_at?: string; readonly version?: number };

/** A line at the foot of the page: what was kept, or what went wrong and what is safe. */
export type Notice =
  | { readonly form: 'kept'; readonly words: string; readonly undo?: () => void }
  | { readonly form: 'problem'; readonly happened: string; readonly safe: string; readonly todo: string };

const DeskContext = createContext<Desk | undefined>(undefined);

export const DeskProvider = DeskContext.Provider;

export const useDesk = (): Desk => {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error('A desk page stands outside its desk.');
  return desk;
};

export const stationById = (rig: Rig, id: StationId | undefined): Station | undefined => (id === undefined ? undefined : rig.stations.find((s) => s.id === id));

/** Long words of a face's name: `side`, `roof`, `slide`. */
const tellingWords = (name: string): readonly string[] => name.toLowerCase().match(/[a-z]{4,}/g) ?? [];

/** A station as it is said aloud: its name, with the face in front where the name does not tell it. */
export const stationWords = (rig: Rig, station: Station): string => {
  const face = rig.faces.find((f) => f.id === station.face);
  const name = station.name.toLowerCase();
  return face && !tellingWords(face.name).some((w) => name.includes(w)) ? `${face.name}, ${lowerFirst(station.name)}` : station.name;
};

export const lowerFirst = (text: string): string => (/^[A-Z][a-z ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);
export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Where an entry or finding belongs, in words. */
export const placeWords = (rig: Rig, place: Place): string => {
  const face = (id: string): string => rig.faces.find((f) => f.id === id)?.name ?? id;
  const side = (s: string): string => (s === 'inside' ? ', inside' : '');
  switch (place.at) {
    case 'rig':
      return 'The whole rig';
    case 'station': {
      const station = stationById(rig, place.station);
      return station ? `${stationWords(rig, station)}${side(place.side)}` : `A place not known here (${place.station})`;
    }
    case 'stretch': {
      const station = stationById(rig, place.station);
      return `${station ? stationWords(rig, station) : place.station}${side(place.side)}, a stretch of it`;
    }
    case 'point':
      return `A point on ${lowerFirst(face(place.face))}${side(place.side)}`;
    case 'outline':
      return `An outline on ${lowerFirst(face(place.face))}${side(place.side)}`;
  }
};

export const findingStation = (finding: Finding): StationId | undefined => finding.station ?? ('station' in finding.place ? finding.place.station : undefined);

/** "1 thing stands", "3 things stand". */
export const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;
