import { type GaugePascals, gaugePascals, type Share, share } from '../../units';

/** At or below this share of what it should show, a tyre counts as run flat. */
export const RUN_FLAT_SHARE = share(0.8);

/** A reading that equals the threshold counts as below it, whatever the arithmetic leaves in the last digit. [Pa] */
const AT_THRESHOLD = 1;

export type RunFlat = { readonly share: Share; readonly threshold: GaugePascals; readonly at_or_below: boolean };

/**
 * Whether a reading is so low that a tyre driven like this may have been destroyed from within, with nothing to see outside.
 *
 * @param reading      gauge pressure as read, cold. [Pa]
 * @param should_show  what the gauge should show at this temperature and height. [Pa]
 * @returns            the share, the threshold, and whether it is reached. [1, Pa]
 * @valid              should_show above zero
 * @agrees             exactly with the printed cases
 * @assumes            the rule's "specified pressure" is carried to today's temperature and height, so that cold alone raises no alarm
 * @source             1. 29 CFR 1910.177(f)(2) as reproduced in a coach maker's manual; the rule itself leaves out light-truck and car tyres, the physics does not
 */
export const runFlat = (reading: GaugePascals, should_show: GaugePascals): RunFlat => {
  const threshold = gaugePascals(RUN_FLAT_SHARE * should_show);
  return { share: share(reading / should_show), threshold, at_or_below: reading <= threshold + AT_THRESHOLD };
};
