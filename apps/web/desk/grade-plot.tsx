import type { Side } from '../../../src/terms';
import type { StationView } from '../session/session';

export const GradePlot = (_: { readonly view: StationView; readonly side: Side }) => null;
