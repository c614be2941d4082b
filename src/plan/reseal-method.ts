import type { resealed } from '../entries';
import type { Standing } from '../logbook';
import type { BodyOf, EntryId, Source, Station } from '../terms';
import { PRACTICE, SEALANT_CHEMISTRY } from './rules/sources';
import { isA } from './trade';

/**
 * How a seal is to be renewed: laid over what is there, or after stripping it. A crack is sealed over only after what is
 * loose is off, and only if the new product goes with what stays; silicone, and what nobody knows, is stripped or tried
 * with a test patch; what does not stick comes off.
 */
export type Method = {
  readonly way: 'over' | 'strip' | 'strip-or-test';
  /** Family of the sealant that stays, where it is known. */
  readonly stays?: string;
  readonly remedies: readonly string[];
  readonly text: string;
  readonly entries: readonly EntryId[];
  readonly source: Source;
};

type Resealed = BodyOf<(typeof resealed)['fields']>;

/** What sits there now, by the last reseal, else by what the station says. */
const familyNow = (station: Station | undefined, last: Standing | undefined): { readonly family: string; readonly entries: readonly EntryId[]; readonly mixed: boolean } => {
  if (!last) return { family: station?.sealed_with ?? 'unknown', entries: [], mixed: false };
  const body = last.body as Resealed;
  const under = body.removed === 'all' ? undefined : (body.old ?? station?.sealed_with ?? 'unknown');
  const worst = under === 'silicone' || under === 'unknown' ? under : body.product_family;
  return { family: worst, entries: [last.entry.id], mixed: under !== undefined && under !== body.product_family };
};

/** Rows of the remedies table: over the old one, and after stripping it. */
const remediesAt = (station: Station | undefined): { readonly over: readonly string[]; readonly strip: readonly string[] } => {
  const looks = station?.looks ?? '';
  if (isA(looks, 'cap-seam') || isA(looks, 'antenna') || isA(looks, 'ladder-rack-foot')) return { over: ['reseal-roof-strip'], strip: ['reseal-roof-strip'] };
  if (isA(looks, 'corner-moulding')) return { over: ['corner-rebed'], strip: ['corner-rebed'] };
  if (isA(looks, 'windscreen')) return { over: ['glass-hold'], strip: ['glass-hold'] };
  if (station?.face === 'roof' || isA(looks, 'roof-edge') || isA(looks, 'opening-roof')) return { over: ['reseal-roof-over', 'reseal-roof-strip'], strip: ['reseal-roof-strip'] };
  return { over: ['wall-top-bead', 'rebed-opening'], strip: ['wall-top-bead', 'rebed-opening'] };
};

export const methodOf = (station: Station | undefined, lastReseal: Standing | undefined, seen: { readonly failed: boolean; readonly notAdhering: boolean }): Method => {
  const { family, entries, mixed } = familyNow(station, lastReseal);
  const at = remediesAt(station);
  const chemistry = { entries, source: SEALANT_CHEMISTRY };
  if (seen.notAdhering) return { way: 'strip', remedies: at.strip, text: 'Sealant that does not stick is removed before resealing.', ...chemistry };
  if (family === 'silicone')
    return {
      way: 'strip',
      remedies: at.strip,
      text: 'There is silicone here; nothing else sticks to it. Strip it, or prove the new product with a test patch first.',
      ...chemistry,
    };
  if (family === 'unknown' || family === 'other')
    return {
      way: 'strip-or-test',
      remedies: [...at.strip, ...at.over.filter((r) => !at.strip.includes(r))],
      text: 'What it is sealed with is not known, which counts as silicone: strip it, or prove the new product with a test patch first.',
      ...chemistry,
    };
  if (seen.failed) return { way: 'strip', remedies: at.strip, text: 'A failed bead is stripped down to what it was laid on.', entries, source: PRACTICE };
  return {
    way: 'over',
    stays: family,
    remedies: at.over,
    text: `Take off all that is loose, then seal over only with a product that goes with what stays (${family.replaceAll('-', ' ')}${mixed ? ', over an older bead' : ''}).`,
    ...chemistry,
  };
};
