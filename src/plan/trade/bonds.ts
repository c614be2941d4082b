import rows from './bonds.json';

/** Whether a family of sealant goes with a surface: yes; with preparation; only after a test patch; no. */
export type Bond = {
  readonly family: string;
  readonly surface: string;
  readonly verdict: 'yes' | 'prep' | 'test' | 'no';
  readonly note?: string;
  readonly confidence: 'high' | 'medium' | 'low';
};

export const bonds = rows as unknown as readonly Bond[];

const byPair = new Map(bonds.map((b) => [`${b.family}/${b.surface}`, b]));

/** What the table says of a pair; undefined where it says nothing, which counts as “test patch first”. */
export const bond = (family: string, surface: string): Bond | undefined => byPair.get(`${family}/${surface}`);
