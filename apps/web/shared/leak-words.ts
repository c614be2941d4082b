import type { Leak, OtherCause } from '../../../src/plan';

const CAUSE: Readonly<Record<OtherCause['cause'], string>> = {
  condensation: 'Condensation',
  plumbing: 'Plumbing',
  'air-conditioner': 'Air conditioner',
  'weep-holes': 'Weep holes',
};

/** What else than rain may have wetted a place. */
export const causeWord = (cause: OtherCause['cause']): string => CAUSE[cause];

const DRYNESS: Readonly<Record<Leak['dryness']['state'], string>> = {
  wet: 'Wet',
  drying: 'Drying',
  wetting: 'Getting wetter',
  dry: 'Dry',
  reopened: 'Wet again',
  'not-known': 'Not known whether it dries',
};

/** How wet a place is, in two or three words. */
export const dryWord = (leak: Leak): string => DRYNESS[leak.dryness.state];
