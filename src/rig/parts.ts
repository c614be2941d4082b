import type { BeadRule, StationGroup } from '../terms';
import table from './parts.json';

/** A row of the parts table: what is typical of one part, before anybody has measured it. */
export type Part = {
  readonly id: string;
  /** What it is called in a station's name: `Window`. */
  readonly noun: string;
  readonly group: StationGroup;
  /** Kind of station in the trade tables. */
  readonly looks: string;
  /** Where it sits: wall, roof, front, rear, under, tongue; several parted by `;`. */
  readonly face: string;
  /** Typical outer size; 0 for lines. [m] */
  readonly w_m: number;
  readonly h_m: number;
  readonly bead: BeadRule;
  readonly behind: string;
  /** Usual height of its middle above ground. [m] */
  readonly height_lo_m: number | undefined;
  readonly height_hi_m: number | undefined;
  /** Cut right through roof or wall. */
  readonly cut_through: boolean;
  readonly size_status: 'seen' | 'memory' | 'own';
  readonly seal_status: 'seen' | 'practice' | 'own';
};

type Row = readonly [string, string, string, string, string, number, number, string, string, number | null, number | null, boolean, string, string];

const read = ([id, noun, group, looks, face, w_m, h_m, bead, behind, lo, hi, cut_through, size_status, seal_status]: Row): Part => ({
  id,
  noun,
  group: group as StationGroup,
  looks,
  face,
  w_m,
  h_m,
  bead: bead as BeadRule,
  behind,
  height_lo_m: lo ?? undefined,
  height_hi_m: hi ?? undefined,
  cut_through,
  size_status: size_status as Part['size_status'],
  seal_status: seal_status as Part['seal_status'],
});

export const parts: readonly Part[] = (table.rows as unknown as readonly Row[]).map(read);

const byId = new Map(parts.map((p) => [p.id, p]));

export const partNamed = (id: string): Part | undefined => byId.get(id);

/** A part that the layouts name; a missing one is our own mistake. */
export const partOf = (id: string): Part => {
  const found = byId.get(id);
  if (!found) throw new Error(`no part ${id} in parts.json`);
  return found;
};
