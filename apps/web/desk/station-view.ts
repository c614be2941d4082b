import { useEffect, useState } from 'react';
import type { StationId } from '../../../src/terms';
import type { StationView } from '../session/session';
import { useDesk } from './desk';

/** What is known about one station, asked again after each change. Undefined while it loads, or without a station. */
export const useStationView = (station: StationId | undefined): StationView | undefined => {
  const { id, session, overview } = useDesk();
  const [view, setView] = useState<{ readonly station: StationId; readonly view: StationView }>();
  const known = overview.rig.stations.some((s) => s.id === station);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new overview means that the logbook has changed
  useEffect(() => {
    if (station === undefined || !known) return;
    let gone = false;
    session.station(id, station).then(
      (found) => {
        if (!gone) setView({ station, view: found });
      },
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [session, id, station, known, overview]);
  return view?.station === station ? view?.view : undefined;
};
