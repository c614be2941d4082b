import { useMemo } from 'react';
import { locator } from '../../../src/drawing';
import type { Rig } from '../../../src/rig';
import type { Side, Station } from '../../../src/terms';
import { DrawingView } from '../shared/drawing-view';

/** Where on the rig: one face, two hairs right across it, a marker at the station. The words beside it say the same. */
export const Locator = ({ rig, station, side }: { readonly rig: Rig; readonly station: Station; readonly side: Side }) => {
  const drawing = useMemo(() => locator(rig, station, { side }), [rig, station, side]);
  return <DrawingView drawing={drawing} className="locator" silent />;
};
