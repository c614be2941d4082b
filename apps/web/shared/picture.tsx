import { useMemo } from 'react';
import { choicePicture } from '../../../src/drawing';
import { DrawingView } from './drawing-view';

/** The picture of one step of a choice. The word beside it says the same, so it is silent. */
export const Picture = ({ set, step }: { readonly set: string; readonly step: string }) => {
  const drawing = useMemo(() => choicePicture(set, step), [set, step]);
  return drawing ? <DrawingView drawing={drawing} silent /> : null;
};
