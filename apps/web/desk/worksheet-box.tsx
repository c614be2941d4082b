import { createContext, type ReactNode, use, useEffect, useRef, useState } from 'react';
import type { Worked } from '../../../src/plan';
import type { Preferences } from '../../../src/units';
import { useRoute } from '../shared/route';
import { WorksheetSheet } from './worksheet-sheet';

type Open = (worked: Worked) => void;

const BoxContext = createContext<Open | undefined>(undefined);

/** The one box that can stand open over a desk page: the worksheet behind the figure that was pressed. */
export const WorksheetBoxes = ({ preferences, children }: { readonly preferences: Preferences; readonly children: ReactNode }) => {
  const [worked, setWorked] = useState<Worked>();
  const { text } = useRoute();
  const dialog = useRef<HTMLDialogElement>(null);

  useEffect(() => {
    if (worked) dialog.current?.showModal();
  }, [worked]);

  // A box belongs to the page it was opened on.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another address means another page
  useEffect(() => setWorked(undefined), [text]);

  return (
    <BoxContext value={setWorked}>
      {children}
      {worked && (
        <dialog ref={dialog} className="worksheet-box" aria-labelledby="worksheet-title" onClose={() => setWorked(undefined)}>
          <WorksheetSheet key={JSON.stringify(worked)} id={worked.worksheet} given={worked.inputs} preferences={preferences} boxed onClose={() => dialog.current?.close()} />
        </dialog>
      )}
    </BoxContext>
  );
};

/** A figure that can be opened: what was put in, how it was worked, where it comes from. */
export const FigureButton = ({ worked, children }: { readonly worked: Worked; readonly children: ReactNode }) => {
  const open = use(BoxContext);
  return (
    <button type="button" className="figure" title="Open the worksheet behind this" onClick={() => open?.(worked)}>
      {children}
    </button>
  );
};
