import { useState } from 'react';
import { useOffline } from './register';

/** A calm line above the page: a new version waits, or this page cannot work offline and why. Nothing is reloaded by itself. */
export const OfflineNotice = () => {
  const offline = useOffline();
  const [put, setPut] = useState<string>();
  if (put === offline.state) return null;
  const later = (
    <button type="button" className="press" onClick={() => setPut(offline.state)}>
      {offline.state === 'new-version' ? 'Later' : 'Close'}
    </button>
  );
  switch (offline.state) {
    case 'starting':
    case 'ready':
      return null;
    case 'new-version':
      return (
        <aside className="notice" aria-label="New version">
          <p>A new version is ready. What you recorded stays as it is.</p>
          <button type="button" className="press" onClick={offline.use}>
            Use it now
          </button>
          {later}
        </aside>
      );
    case 'replaced':
      return (
        <aside className="notice" aria-label="New version">
          <p>Another window took the new version. Reload this one when you are done here.</p>
          {later}
        </aside>
      );
    default:
      return (
        <aside className="notice" aria-label="Working offline">
          <details>
            <summary>This page cannot work offline here.</summary>
            <p>{offline.happened}</p>
            <p>{offline.safe}</p>
            <p>{offline.todo}</p>
          </details>
          {later}
        </aside>
      );
  }
};
