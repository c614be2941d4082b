import { useMemo } from 'react';
import { stationDrawing } from '../../../src/drawing';
import type { Station } from '../../../src/terms';
import { useDesk } from './desk';
import { Picture } from './picture';
import { useWidth } from './use-width';

/** The station drawn large, with the bead by practice laid on it. */
export const StationPicture = ({ station }: { readonly station: Station }) => {
  const { overview, preferences } = useDesk();
  const [frame, width] = useWidth<HTMLDivElement>(520);
  const drawing = useMemo(() => stationDrawing(overview.rig, station, { preferences, fit_px: Math.max(260, width), height_px: 340 }), [overview.rig, station, preferences, width]);
  return (
    <div ref={frame} className="station-picture">
      <Picture drawing={drawing} />
    </div>
  );
};
