import type { Ink } from './primitives';

/** Where a drawing is looked at. Field is for full sun, night for the dark, paper is black on white first. */
export type Theme = 'desk' | 'field' | 'night' | 'paper';

/** Widths and dashes in CSS px; on paper 96 px are 25.4 mm. */
export type InkStyle = {
  readonly stroke: string;
  readonly width: number;
  readonly fill: string;
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round';
  /** Text only. Its stroke, where it has one, is laid under its fill and keeps it legible over lines and tones. */
  readonly weight?: 400 | 700;
};

/** What a colour is for; each theme has its own value. */
type Tone =
  | 'ink'
  | 'mute'
  | 'line'
  | 'faint'
  | 'paper'
  | 'accent'
  | 'wash'
  | 'sealant'
  | 'here'
  | 'band'
  | 'stop'
  | 'moving'
  | 'rain'
  | 'season'
  | 'wet1'
  | 'wet2'
  | 'wet3'
  | 'wet4'
  | 'none';

/** Fills of the urgencies grow lighter from the most to the least urgent, so that grey paper keeps their order. */
const DESK: Record<Tone, string> = {
  ink: '#14181C',
  mute: '#4A5157',
  line: '#8D959C',
  faint: '#D5DADD',
  paper: '#FFFFFF',
  accent: '#8A1C5C',
  wash: '#F6E9F0',
  sealant: '#D9D8D2',
  here: '#8A1C5C',
  band: '#F1F2F3',
  stop: '#5E0F1E',
  moving: '#A3260B',
  rain: '#3B82C4',
  season: '#F2BE4A',
  wet1: '#DFEBF4',
  wet2: '#BAD4E8',
  wet3: '#8CB8DA',
  wet4: '#649FCC',
  none: 'none',
};
const FIELD: Record<Tone, string> = {
  ...DESK,
  ink: '#0B0B0C',
  mute: '#0B0B0C',
  line: '#0B0B0C',
  faint: '#6B7278',
  accent: '#0B0B0C',
  wash: '#FFE14A',
  here: '#FFE14A',
  stop: '#0B0B0C',
  moving: '#0B0B0C',
  rain: '#0B0B0C',
  season: '#0B0B0C',
};
const NIGHT: Record<Tone, string> = {
  ...FIELD,
  ink: '#F4F4F2',
  mute: '#F4F4F2',
  line: '#C9CDD0',
  faint: '#8A9096',
  paper: '#0B0B0C',
  accent: '#FFE14A',
  wash: '#3A340F',
  sealant: '#4B4A45',
  band: '#232427',
  stop: '#F4F4F2',
  moving: '#F4F4F2',
  rain: '#F4F4F2',
  season: '#F4F4F2',
  wet1: '#16283A',
  wet2: '#1D3B57',
  wet3: '#27527A',
  wet4: '#326B9E',
};
const PAPER: Record<Tone, string> = {
  ...DESK,
  ink: '#000000',
  mute: '#000000',
  line: '#555555',
  faint: '#BBBBBB',
  accent: '#000000',
  wash: '#E6E6E6',
  here: '#000000',
  stop: '#000000',
  moving: '#000000',
  rain: '#000000',
  season: '#000000',
  wet1: '#EEEEEE',
  wet2: '#D6D6D6',
  wet3: '#B8B8B8',
  wet4: '#999999',
};

export const TONES: Readonly<Record<Theme, Readonly<Record<Tone, string>>>> = { desk: DESK, field: FIELD, night: NIGHT, paper: PAPER };

type Rule = {
  readonly stroke: Tone;
  readonly fill: Tone;
  readonly desk: number;
  readonly field: number;
  readonly paper: number;
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round';
  readonly weight?: 400 | 700;
};

const lined = (stroke: Tone, fill: Tone, desk: number, field: number, paper: number, more: Partial<Rule> = {}): Rule => ({ stroke, fill, desk, field, paper, ...more });
const filled = (fill: Tone): Rule => lined('none', fill, 0, 0, 0);
const typed = (fill: Tone, weight: 400 | 700): Rule => lined('none', fill, 0, 0, 0, { weight });

/** Type that stands on lines and tones: cased in paper. */
const cased = (fill: Tone, weight: 400 | 700): Rule => lined('paper', fill, 2.6, 3, 2.4, { weight });

/** Seam, opening and fitting are told apart by line alone: stitched and heavy, plain and middle, plain and thin. */
const RULES: Readonly<Record<Ink, Rule>> = {
  face: lined('ink', 'paper', 1.75, 3, 1.9),
  'face-edge': lined('ink', 'none', 1.75, 3, 1.9),
  fold: lined('line', 'none', 0.75, 1, 0.6, { dash: [6, 4] }),
  seam: lined('ink', 'none', 3.2, 3.6, 3.2),
  stitch: lined('paper', 'none', 1.1, 1.2, 1.1, { dash: [3.2, 2.6] }),
  trim: lined('ink', 'none', 2.6, 3.4, 2.6),
  'trim-core': lined('paper', 'none', 1.3, 1.6, 1.3),
  gasket: lined('ink', 'none', 1.4, 2, 1.4, { dash: [0.1, 3], cap: 'round' }),
  opening: lined('ink', 'paper', 1.1, 1.7, 1.1),
  fitting: lined('ink', 'paper', 0.75, 1.1, 0.7),
  detail: lined('ink', 'none', 0.6, 0.9, 0.5),
  ghost: lined('line', 'none', 0.75, 1, 0.6, { dash: [2, 2] }),
  decal: lined('line', 'none', 0.75, 1, 0.6),
  slide: lined('ink', 'paper', 2.4, 3, 2.4),
  'coarse-face': lined('ink', 'paper', 1.4, 2.4, 1.5),
  'coarse-line': lined('ink', 'paper', 0.7, 1.2, 0.7),
  'coarse-seam': lined('ink', 'none', 1, 1.6, 1),
  ground: lined('ink', 'none', 1, 1.6, 1),
  hatch: lined('line', 'none', 0.75, 1, 0.6),
  host: lined('line', 'none', 0.9, 1.2, 0.8),
  tyre: filled('ink'),
  hub: lined('ink', 'paper', 0.75, 1, 0.7),
  dimension: lined('line', 'none', 0.75, 1, 0.6),
  'tick-end': lined('ink', 'none', 1, 1.4, 0.9),
  leader: lined('ink', 'none', 0.75, 1.2, 0.7),
  'scale-dark': lined('ink', 'ink', 0.75, 1, 0.7),
  'scale-light': lined('ink', 'paper', 0.75, 1, 0.7),
  selected: lined('accent', 'none', 2, 4, 2.4),
  plate: filled('paper'),
  bead: lined('accent', 'none', 6, 7, 6, { cap: 'butt' }),
  'bead-edge': lined('ink', 'none', 0.75, 1, 0.7, { dash: [4, 3] }),
  hairline: lined('ink', 'none', 0.9, 2.4, 0.8),
  here: lined('ink', 'here', 1.5, 3, 1.3),
  'wet-1': filled('wet1'),
  'wet-2': filled('wet2'),
  'wet-3': filled('wet3'),
  'wet-4': filled('wet4'),
  contour: lined('ink', 'none', 0.7, 1, 0.6),
  'contour-half': lined('ink', 'none', 2, 2.6, 1.8),
  bay: lined('line', 'none', 0.75, 1, 0.6),
  'way-casing': lined('paper', 'none', 6, 7, 6),
  'way-likely': lined('accent', 'none', 3, 3.6, 2.8),
  'way-possible': lined('accent', 'none', 2, 3, 1.9, { dash: [7, 4] }),
  'way-unlikely': lined('accent', 'none', 2, 3, 1.9, { dash: [0.1, 5], cap: 'round' }),
  ring: lined('accent', 'paper', 2, 3, 2),
  'rain-fell': lined('rain', 'none', 2.4, 3, 2.2),
  'wet-outline': lined('ink', 'none', 1.6, 2.2, 1.5),
  mark: filled('ink'),
  'mark-frame': lined('ink', 'paper', 1.5, 2.4, 1.5),
  'mark-gap': filled('paper'),
  'mark-stop': lined('ink', 'stop', 1.5, 2.2, 1.2),
  'mark-moving': lined('ink', 'moving', 1.5, 2.2, 1.2),
  'mark-rain': lined('ink', 'rain', 1.5, 2.2, 1.2),
  'mark-season': lined('ink', 'season', 1.5, 2.4, 1.5),
  flag: lined('paper', 'ink', 1, 1, 1),
  'picture-line': lined('ink', 'none', 2, 3, 1.8),
  'picture-thin': lined('ink', 'none', 1, 1.4, 0.9),
  'picture-fill': filled('ink'),
  'picture-paper': lined('ink', 'paper', 1.4, 2, 1.2),
  sealant: filled('sealant'),
  axis: lined('ink', 'none', 1, 1.6, 0.9),
  grid: lined('faint', 'none', 0.75, 1, 0.6),
  shade: filled('wash'),
  band: filled('band'),
  data: lined('ink', 'none', 2, 3, 1.9),
  'data-thin': lined('ink', 'none', 1, 1.6, 0.9),
  'data-one': lined('accent', 'none', 2.4, 3.4, 2.6),
  'data-guess': lined('accent', 'none', 1.4, 2, 1.2, { dash: [5, 4] }),
  point: filled('ink'),
  'point-open': lined('ink', 'paper', 1.5, 2.2, 1.3),
  'point-one': filled('accent'),
  text: typed('ink', 400),
  'text-bold': typed('ink', 700),
  'text-small': typed('mute', 400),
  'text-number': typed('ink', 700),
  'text-one': typed('accent', 700),
  sounding: cased('ink', 400),
  'sounding-wet': cased('ink', 700),
  'sounding-next': cased('accent', 700),
};

/** How an ink looks in a theme: the only table of colours and stroke widths for drawings. */
export const inkStyle = (ink: Ink, theme: Theme = 'desk'): InkStyle => {
  const { stroke, fill, desk, field, paper, dash, cap, weight } = RULES[ink];
  const tones = TONES[theme];
  const width = theme === 'desk' ? desk : theme === 'paper' ? paper : field;
  return { stroke: tones[stroke], width, fill: tones[fill], ...(dash ? { dash } : {}), ...(cap ? { cap } : {}), ...(weight ? { weight } : {}) };
};

/** One sans-serif face everywhere, with figures of one width. */
export const FONT_FAMILY = '"Helvetica Neue", Helvetica, Arial, sans-serif';
