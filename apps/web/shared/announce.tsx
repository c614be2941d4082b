import { useSyncExternalStore } from 'react';

/** One quiet voice for the whole page: what was kept, what a verdict says. Read aloud by screen readers, seen by nobody. */
let text = '';
const listeners = new Set<() => void>();

export const announce = (sentence: string): void => {
  // A changed ending makes the same sentence be read again.
  text = text === sentence ? `${sentence}\u00a0` : sentence;
  for (const tell of listeners) tell();
};

export const Announcer = () => {
  const said = useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => text,
  );
  return (
    <div className="unseen" role="status" aria-live="polite" aria-atomic="true">
      {said}
    </div>
  );
};
