import { useMemo } from 'react';
import { knownFrom, numberedMarks, rigSheet } from '../../../src/drawing';
import type { Overview } from '../session/session';
import { DrawingView } from '../shared/drawing-view';

const PX_PER_M = 28;

/** The rig unfolded, with its marks, as small as a phone needs it. The list of stops is its equal for hands and screen readers. */
export const RigSheetView = ({ overview }: { readonly overview: Overview }) => {
  const { rig, plan, marks } = overview;
  const drawing = useMemo(
    () =>
      rigSheet(
        rig,
        { known: knownFrom(plan, marks), numbered: numberedMarks(rig, plan).filter((m) => m.mark !== 'not-seen') },
        { px: PX_PER_M, mark_px: 17, type_px: 13, heavy: true, numbers: false, dimensions: false, show: { sound: false, not_seen: plan.not_seen.length < 20 } },
      ),
    [rig, plan, marks],
  );
  return <DrawingView drawing={drawing} className="on-home" />;
};
