import type { Rig } from '../rig';
import { MARK_WORD, type Mark, type Side, type Station } from '../terms';
import { type CivilDay, showDay } from '../units';

/** What is known about a station, for its mark and for what is said of it. */
export type Known = {
  readonly mark: Mark;
  /** The finding in its own words: `seal open`. */
  readonly words?: string;
  readonly last_seen?: CivilDay;
  readonly professional?: boolean;
};

const lower = (text: string): string => (/^[A-Z][a-z ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);

/** `Curb side`, `Roof, inside: ceiling`: the face a station is on, as a person says it. */
export const faceWords = (rig: Rig, face: string, side: Side = 'outside'): string => {
  const f = rig.faces.find((x) => x.id === face);
  if (!f) return face;
  return side === 'outside' ? f.name : `${f.name}, inside: ${lower(f.inside_name)}`;
};

/**
 * A station as the walk meets it: its face first, then its name without the face.
 * `Curb side, window 2`; `Road side, tyre, front axle`; `Roof, skylight`.
 */
export const stationWords = (rig: Rig, station: Station): string => {
  const face = faceWords(rig, station.face);
  const own = lower(station.name);
  const at = `, ${face.toLowerCase()}`;
  const i = own.toLowerCase().indexOf(at);
  const rest = i < 0 ? own : `${own.slice(0, i)}${own.slice(i + at.length)}`;
  return rest.toLowerCase().startsWith(face.toLowerCase()) ? `${rest.charAt(0).toUpperCase()}${rest.slice(1)}` : `${face}, ${rest}`;
};

/**
 * What is said of a station: face, name, what is known, when it was last seen.
 * `Curb side, window 2, seal open, last seen 3 May 2026`.
 */
export const stationLabel = (rig: Rig, station: Station, known?: Known): string => {
  const said = known ? [lower(known.words ?? MARK_WORD[known.mark]), ...(known.professional ? ['for a professional'] : [])] : ['nothing recorded'];
  const seen = known?.last_seen === undefined ? [] : [`last seen ${showDay(known.last_seen)}`];
  return [stationWords(rig, station), ...said, ...seen].join(', ');
};
