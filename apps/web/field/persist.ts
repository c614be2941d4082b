import { useEffect, useState } from 'react';

/** What the browser answered when it was asked not to clear this page's storage by itself. */
export type Persist = 'kept' | 'may-be-cleared' | 'not-known';

/** Asked after the first entry, when there is something to lose. */
export const askPersist = async (): Promise<Persist> => {
  if (!navigator.storage?.persist) return 'not-known';
  try {
    return (await navigator.storage.persist()) ? 'kept' : 'may-be-cleared';
  } catch {
    return 'not-known';
  }
};

export const usePersist = (): Persist | undefined => {
  const [answer, set] = useState<Persist>();
  useEffect(() => {
    if (!navigator.storage?.persisted) return set('not-known');
    navigator.storage.persisted().then(
      (yes) => set(yes ? 'kept' : 'may-be-cleared'),
      () => set('not-known'),
    );
  }, []);
  return answer;
};

export const PERSIST_WORDS: Readonly<Record<Persist, string>> = {
  kept: 'This browser has agreed not to clear what is kept here by itself.',
  'may-be-cleared':
    'This browser may clear what is kept here when the device runs short of room, or when the page is not used for some days. Put Seamward on the home screen, and save copies.',
  'not-known': 'This browser does not say whether it may clear what is kept here. Save copies.',
};
