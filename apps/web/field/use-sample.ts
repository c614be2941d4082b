import { useState } from 'react';
import { useSession } from '../session/use-session';
import { go, href } from '../shared/route';
import { reportTrouble, saidOf } from '../shared/trouble';

/** One press loads the sample rig and opens it; it is marked as a sample and can be removed as easily. */
export const useLoadSample = () => {
  const session = useSession();
  const [loading, setLoading] = useState(false);
  const load = (): void => {
    setLoading(true);
    session.loadDemo().then(
      (rig) => go(href('rig', rig)),
      (cause: unknown) => {
        setLoading(false);
        reportTrouble({
          key: 'sample',
          title: 'The sample rig could not be opened',
          happened: `It was not loaded (${saidOf(cause)}).`,
          safe: 'Your own rigs are untouched.',
          todo: 'Try again, or start with your own rig.',
        });
      },
    );
  };
  return { load, loading };
};
