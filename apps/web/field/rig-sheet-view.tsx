import { useMemo } from 'react';
import { knownFrom, numberedMarks, rigSheet } from '../../../src/drawing';
import type { Overview } from '../session/session';
import { DrawingView } from '../shared/drawing-view';
import { PHONE_SHEET, withoutSmallPrint } from './phone-sheet';

/** More dotted circles than this hide the drawing; the counts below say how many. */
const FEW = 20;

/** The rig unfolded, with its marks, as small as a phone needs it. The list of stops is its equal for hands and screen readers. */
export const RigSheetView = ({ overview }: { readonly overview: Overview }) => {
  const { rig, plan, marks } = overview;
  const drawing = useMemo(
    () =>
      withoutSmallPrint(
        rigSheet(
          rig,
          { known: knownFrom(plan, marks), numbered: numberedMarks(rig, plan).filter((m) => m.mark !== 'not-seen') },
          { ...PHONE_SHEET, show: { sound: false, not_seen: plan.counts['not-seen'] < FEW } },
        ),
      ),
    [rig, plan, marks],
  );
  return <DrawingView drawing={drawing} className="on-home" />;
};
