import type { Rig } from '../../../src/rig';
import type { Side, Station, StationId } from '../../../src/terms';

/** Words for where something is on the rig. */
export const stationById = (rig: Rig, id: StationId | undefined): Station | undefined => (id === undefined ? undefined : rig.stations.find((s) => s.id === id));

export const lowerFirst = (text: string): string => (/^[A-Z][a-z' ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);
export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const REACH: Readonly<Record<Station['reach'], string>> = { ground: '', ladder: 'from the ladder', roof: 'on the roof', under: 'from below', inside: '' };

/** `Roof, from the ladder`; `Curb side, inside`. */
export const whereWords = (rig: Rig, station: Station, side: Side): string => {
  const face = rig.faces.find((f) => f.id === station.face);
  if (side === 'inside') return `${face?.inside_name ? upperFirst(face.inside_name) : 'Inside'}, inside the rig`;
  const name = face?.name ?? station.face;
  const said = station.name.toLowerCase().includes(name.toLowerCase());
  const words = [said ? '' : name, REACH[station.reach]].filter((w) => w !== '').join(', ');
  return words === '' ? 'From the ground' : upperFirst(words);
};
