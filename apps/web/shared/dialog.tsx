import { type ReactNode, useEffect, useRef } from 'react';

/** A sheet over the page. Escape and the way out both close it; the focus goes back to where it was. */
export const Over = ({ label, close, children }: { readonly label: string; readonly close: () => void; readonly children: ReactNode }) => {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    const dialog = ref.current;
    if (dialog && !dialog.open) dialog.showModal();
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={ref}
      className="over"
      aria-label={label}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
    >
      {children}
    </dialog>
  );
};
