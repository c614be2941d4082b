import type { Source } from '../../terms';
import rows from './thermal-expansion.json';

/** What a part of a rig is made of, as far as warmth stretches it. */
export const EXPANDING = [
  { id: 'aluminium', word: 'aluminium' },
  { id: 'steel', word: 'steel' },
  { id: 'stainless-steel', word: 'stainless steel' },
  { id: 'fibreglass', word: 'fibreglass or gelcoat' },
  { id: 'abs', word: 'ABS plastic' },
  { id: 'asa', word: 'ASA plastic' },
  { id: 'acrylic', word: 'acrylic pane' },
  { id: 'polycarbonate', word: 'polycarbonate' },
  { id: 'rigid-pvc', word: 'rigid PVC' },
  { id: 'polypropylene', word: 'polypropylene' },
  { id: 'polyethylene', word: 'polyethylene' },
  { id: 'glass', word: 'glass' },
  { id: 'plywood', word: 'plywood, in its plane' },
  { id: 'wood-along', word: 'softwood, along the grain' },
  { id: 'wood-across', word: 'softwood, across the grain' },
] as const;

type Row = { readonly material: string; readonly low: number; readonly high: number; readonly source: string; readonly address?: string; readonly status: 'seen' | 'memory' };
const table = rows as readonly Row[];

/** Growth of a length for each degree: the least and the most that any source gives. [1/K] */
export type Expansion = { readonly low: number; readonly high: number };

/** A part that does not move, such as a flange held by a frame that is reckoned elsewhere. [1/K] */
export const HELD_STILL: Expansion = { low: 0, high: 0 };

/** A coefficient that somebody typed or read on a sheet. [1/K] */
export const oneExpansion = (alpha: number): Expansion => ({ low: alpha, high: alpha });

const PER_KELVIN = 1e-6;

/**
 * How much a material grows with warmth, as wide as its sources disagree.
 *
 * @param material  id of EXPANDING
 * @returns         least and most coefficient of all sources; undefined for a material that is not in the table. [1/K]
 * @agrees          with the table as read: every row lies within
 * @assumes         nothing about the grade: filled and reinforced plastics move less, and a skin glued down to plywood moves nearly with the plywood
 * @source          1. thermal-expansion.json, each row with its own source
 */
export const expansionOf = (material: string): Expansion | undefined => {
  const found = table.filter((r) => r.material === material);
  if (found.length === 0) return undefined;
  return { low: Math.min(...found.map((r) => r.low)) * PER_KELVIN, high: Math.max(...found.map((r) => r.high)) * PER_KELVIN };
};

/** Where the coefficients of a material come from, each source with what it says. */
export const expansionSources = (material: string): readonly Source[] =>
  table
    .filter((r) => r.material === material)
    .map((r) => {
      const says = `${r.source}: ${r.low === r.high ? r.low : `${r.low} to ${r.high}`} millionths per °C${r.status === 'memory' ? '; from memory, unconfirmed' : ''}`;
      return r.address === undefined ? { status: r.status, text: says } : { status: r.status, text: says, address: r.address };
    });
