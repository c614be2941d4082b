import { drawMark, svgText } from '../../drawing';
import { kindById } from '../../entries';
import type { Standing, State } from '../../logbook';
import type { Rig } from '../../rig';
import { MARK_WORD, type Mark, placeKey, type Side, type StationId } from '../../terms';
import { type CivilDay, type Preferences, show } from '../../units';
import { e, type Paper } from './sheet-page';

export type PrintOptions = {
  readonly paper: Paper;
  readonly on: CivilDay;
  readonly preferences: Preferences;
  /** Who prints it; a line to write on when left out. */
  readonly by?: string;
  readonly digest?: string;
};

const KIND_WORDS: Readonly<Record<Rig['kind'], string>> = {
  'travel-trailer': 'travel trailer',
  'fifth-wheel': 'fifth wheel',
  'class-a': 'motorhome, Class A',
  'class-b': 'motorhome, Class B',
  'class-c': 'motorhome, Class C',
  'truck-camper': 'truck camper',
  'folding-camper': 'folding camper',
  teardrop: 'teardrop trailer',
};

/** `26 ft 3 in travel trailer, 2014`. */
export const rigLine = (rig: Rig, preferences: Preferences): string => {
  const year = rig.year === 'unknown' ? '' : `, ${rig.year}`;
  return `${show(rig.overall.body_length_m, 'length', preferences)} ${KIND_WORDS[rig.kind]}${year}`;
};

/** A mark as it stands in a line of text. */
export const markHtml = (mark: Mark, px: number, professional = false): string => {
  const side = px * 1.36;
  const drawing = {
    width: side + (professional ? px * 0.3 : 0),
    height: side,
    title: MARK_WORD[mark],
    px: 1,
    primitives: drawMark(mark, side / 2, side / 2 + (professional ? px * 0.06 : 0), px * 0.98, { heavy: true, professional }),
  };
  return `<span class="mk">${svgText(drawing, { theme: 'paper', inline: true })}</span>`;
};

/** Latest observation at a station on one side; care and decisions are told elsewhere. */
export const latestLook = (state: State<Rig>, station: StationId, side: Side): Standing | undefined => {
  const at = state.latest.get(placeKey({ at: 'station', station, side }));
  const looks = [...(at?.values() ?? [])].filter((s) => kindById(s.entry.kind)?.group === 'observation');
  return looks.reduce<Standing | undefined>((best, s) => (best === undefined || s.day > best.day ? s : best), undefined);
};

/** An entry in its own words, in the person's units. */
export const entryWords = (standing: Standing, preferences: Preferences): string => {
  const kind = kindById(standing.entry.kind);
  return kind ? kind.line(standing.body as never, preferences) : standing.entry.kind;
};

/** Lines to write on, with what goes there. */
export const blank = (label: string, mm: number): string => `<span style="margin-right:4mm">${e(label)} <span class="line" style="width:${mm}mm"></span></span>`;
