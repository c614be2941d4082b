import type { Side, Station } from '../../../src/terms';

export const StationPicture = (_: { readonly station: Station; readonly side: Side; readonly bead: boolean }) => null;
