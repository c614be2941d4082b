import { lazy, Suspense, useEffect, useState } from 'react';
import { OfflineNotice } from './offline/notice';
import { SessionProvider } from './session/use-session';
import { Announcer } from './shared/announce';
import { Surface } from './shared/drawing-view';
import { type Route, useRoute } from './shared/route';
import { SettingsProvider, useSettings } from './shared/settings';

const Field = lazy(() => import('./field'));
const Desk = lazy(() => import('./desk'));

/** From this width on a rig opens at the desk, unless the person chose otherwise. [px] */
const DESK_WIDTH = 900;

const useWide = (): boolean => {
  const [wide, set] = useState(() => window.matchMedia(`(min-width: ${DESK_WIDTH}px)`).matches);
  useEffect(() => {
    const query = window.matchMedia(`(min-width: ${DESK_WIDTH}px)`);
    const tell = (): void => set(query.matches);
    query.addEventListener('change', tell);
    return () => query.removeEventListener('change', tell);
  }, []);
  return wide;
};

/** Screens made for the hand, whatever the width: walking, recording work, and what comes before a rig is there. */
const ALWAYS_FIELD: readonly string[] = ['round', 'job', 'care', 'more'];
/** Pages that both have. */
const BOTH: readonly (string | undefined)[] = [undefined, 'plan'];

export const atDesk = ({ parts }: Route, desk: boolean): boolean => {
  const [head, , page] = parts;
  if (head !== 'rig') return head === 'settings' || head === 'worksheets';
  if (page !== undefined && ALWAYS_FIELD.includes(page)) return false;
  return BOTH.includes(page) ? desk : true;
};

const Screen = () => {
  const route = useRoute();
  const { view } = useSettings();
  const wide = useWide();
  const desk = atDesk(route, view === 'desk' || (view === 'auto' && wide));
  return (
    <Surface value={desk ? 'desk' : 'field'}>
      <Suspense fallback={<p className="opening">One moment.</p>}>{desk ? <Desk route={route} /> : <Field route={route} />}</Suspense>
    </Surface>
  );
};

export const App = () => (
  <SettingsProvider>
    <OfflineNotice />
    <SessionProvider>
      <Screen />
    </SessionProvider>
    <Announcer />
  </SettingsProvider>
);
