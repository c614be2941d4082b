import type { Rig } from '../../../src/rig';
import type { Side, Station } from '../../../src/terms';

export const Locator = (_: { readonly rig: Rig; readonly station: Station; readonly side: Side }) => null;
