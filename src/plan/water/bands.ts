import { type Source, seen } from '../../terms';

/** One step of a table of bands: from this reading up. [kg/kg] */
export type Band = { readonly id: string; readonly from: number; readonly word: string; readonly text: string };

/** Bands of the leisure-vehicle trade, by pin meter in wood, as printed on several workshop pages. */
export const TRADE_BANDS: readonly Band[] = [
  { id: 'none', from: 0, word: 'no concern', text: 'below 15 %: no cause for concern' },
  { id: 'note', from: 0.15, word: 'note and re-check', text: '15 to 20 %: written down and read again in about three months' },
  { id: 'early', from: 0.2, word: 'possible early ingress - look for evidence', text: '20 to 25 %: water may be coming in; find where' },
  { id: 'evident', from: 0.25, word: 'remedial work', text: '25 to 30 %: moisture is evident; remedial work, and stripping where it is stained or soft' },
  { id: 'structural', from: 0.3, word: 'structural damage likely - strip down', text: '30 % and above: structural damage is under way; it is stripped down' },
];

/** What the literature of wood says of the same figures: life that it feeds. */
export const WOOD_BANDS: readonly Band[] = [
  { id: 'in-service', from: 0, word: 'dry in service', text: 'below 15 %: wood indoors lies between 6 and 16 % over most of the year' },
  { id: 'some-mould', from: 0.15, word: 'some moulds', text: '15 to 20 %: some moulds settle, with little growth' },
  { id: 'most-moulds', from: 0.2, word: 'most moulds', text: '20 to 26 %: most moulds grow, and rot that is there may spread' },
  { id: 'near-saturation', from: 0.26, word: 'near fibre saturation', text: '26 to 30 %: near fibre saturation; rot can begin' },
  { id: 'free-water', from: 0.3, word: 'free water', text: '30 % and above: free water; rot in earnest when it is warm' },
];

export const TRADE_SOURCE: Source = seen('Moisture bands of the leisure-vehicle trade, several workshop pages');
export const WOOD_SOURCE: Source = seen(
  'Wood Handbook, FPL-GTR-190 (2010), chapter 14; Smulski 1996 and Rowell and Ibach 2000, abstracts; the band from 15 to 26 % as quoted by others',
);

/** A figure that falls on a limit belongs above it, whatever the last bit says. */
const SAME = 1e-9;

export const bandOf = (bands: readonly Band[], value: number): Band => bands.findLast((b) => value >= b.from - SAME) ?? (bands[0] as Band);

/** Percentages mean something in wood only. */
const NOT_WOOD: ReadonlySet<string> = new Set(['foam', 'chipboard', 'metal', 'no-wood']);

export const inWood = (material: string | undefined): boolean => material === undefined || !NOT_WOOD.has(material);
