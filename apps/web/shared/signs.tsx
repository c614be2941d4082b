import type { ReactNode } from 'react';

/** Small line drawings that stand beside words; each is silent, the words say it. */
const sign = (children: ReactNode, size = 24) => (
  <svg viewBox="0 0 24 24" width={size} height={size} fill="none" stroke="currentColor" strokeWidth="2.6" aria-hidden="true">
    {children}
  </svg>
);

export const StitchSign = () => (
  <svg viewBox="0 0 40 24" width="40" height="24" fill="none" stroke="currentColor" strokeWidth="4" aria-hidden="true">
    <path d="M0 12h40M6 3v18M16 3v18M24 3v18M34 3v18" />
  </svg>
);
export const UndoSign = () => sign(<path d="M9 4 4 9l5 5M4 9h10a5.5 5.5 0 0 1 0 11H9" />);
export const BackSign = () => sign(<path d="M14 4 6 12l8 8M6 12h14" />);
export const EraseSign = () => sign(<path d="M8 5h13v14H8l-6-7zM11.5 9l6 6M17.5 9l-6 6" />, 32);
export const CameraSign = () => sign(<path d="M2 7h5l2-3h6l2 3h5v13H2zM12 9.5a3.9 3.9 0 1 0 0 7.8 3.9 3.9 0 0 0 0-7.8z" />, 34);
export const TickSign = () => sign(<path d="M4.5 13 10 18.5 20 6" />, 20);
