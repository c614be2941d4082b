import type { Source } from '../../terms';
import sourceRows from './bond-sources.json';
import rows from './bonds.json';

/** May it: yes; with preparation; only where a test patch holds; no. From best to worst. */
export const TOUCH_VERDICTS = ['yes', 'prep', 'test', 'no'] as const;
export type TouchVerdict = (typeof TOUCH_VERDICTS)[number];
export type Confidence = 'high' | 'medium' | 'low';

/** Whether a family of sealant, or a cleaner, goes with a surface. Each row with what it leans on; sources that disagree stand side by side, never averaged. */
export type Bond = {
  readonly family: string;
  readonly surface: string;
  readonly verdict: TouchVerdict;
  readonly note?: string;
  readonly confidence: Confidence;
  /** A source key, and what that source covers of the row when it does not cover all of it. */
  readonly sources: readonly (readonly [key: string, covers?: string])[];
  readonly disagree?: readonly { readonly says: string; readonly source: string }[];
};

export const bonds = rows as unknown as readonly Bond[];

const byPair = new Map(bonds.map((b) => [`${b.family}/${b.surface}`, b]));

/** What the table says of a pair; undefined where it says nothing, which counts as “test patch first”. */
export const bond = (family: string, surface: string): Bond | undefined => byPair.get(`${family}/${surface}`);

type SourceRow = Source & { readonly key: string };
const byKey = new Map((sourceRows as readonly SourceRow[]).map((row) => [row.key, row]));

/** A source of the table by its key, with what it covers of the row that names it. */
export const bondSource = (key: string, covers?: string): Source => {
  const row = byKey.get(key);
  if (row === undefined) throw new Error(`no source ${key}`);
  const text = covers === undefined ? row.text : `${row.text} (covers: ${covers})`;
  return row.address === undefined ? { status: row.status, text } : { status: row.status, text, address: row.address };
};

/** Every source that the table leans on. */
export const bondSources = (): readonly Source[] => [...byKey.keys()].map((key) => bondSource(key));

/** What may be laid or wiped on, by what it is made of and never by maker. */
export const TOUCHING = [
  { id: 'lap-self-levelling', word: 'lap sealant, self-levelling' },
  { id: 'lap-non-sag', word: 'lap sealant, non-sag' },
  { id: 'butyl-tape', word: 'butyl tape' },
  { id: 'butyl-gun', word: 'butyl from a gun' },
  { id: 'silicone', word: 'silicone, neutral cure' },
  { id: 'silicone-acetoxy', word: 'silicone that smells of vinegar' },
  { id: 'polyurethane', word: 'polyurethane' },
  { id: 'hybrid', word: 'hybrid (silyl-ended)' },
  { id: 'polysulphide', word: 'polysulphide' },
  { id: 'acrylic', word: 'acrylic with solvent' },
  { id: 'repair-tape', word: 'faced repair tape' },
  { id: 'bitumen', word: 'bitumen or asphalt' },
  { id: 'isopropyl-alcohol', word: 'isopropyl alcohol' },
  { id: 'petroleum-cleaner', word: 'oil, or a petroleum-based cleaner or conditioner' },
] as const;

/** What it may be laid on. */
export const TOUCHED = [
  { id: 'epdm', word: 'EPDM rubber' },
  { id: 'tpo', word: 'TPO' },
  { id: 'pvc', word: 'PVC sheet' },
  { id: 'coated', word: 'a coated roof' },
  { id: 'fibreglass', word: 'fibreglass or gelcoat' },
  { id: 'painted-aluminium', word: 'painted aluminium' },
  { id: 'bare-aluminium', word: 'bare aluminium' },
  { id: 'painted-steel', word: 'painted or galvanised steel' },
  { id: 'abs', word: 'ABS plastic' },
  { id: 'acrylic', word: 'acrylic pane' },
  { id: 'polycarbonate', word: 'polycarbonate' },
  { id: 'glass', word: 'glass' },
  { id: 'wood', word: 'wood' },
  { id: 'unknown', word: 'a surface that nobody knows' },
] as const;

export type TouchingId = (typeof TOUCHING)[number]['id'];
export type TouchedId = (typeof TOUCHED)[number]['id'];
