import { Suspense, useEffect, useState } from 'react';
import { JobCard, PlanScreen, WaterScreens } from './field/one-rig-parts';
import { NewRig, OneRig } from './field/parts';
import { OfflineNotice } from './offline/notice';
import type { Session } from './session/session';
import { SessionProvider } from './session/use-session';
import { Announcer } from './shared/announce';
import { Surface } from './shared/drawing-view';
import { part, whenIdle } from './shared/part';
import { parseRoute, type Route, useRoute } from './shared/route';
import { SettingsProvider, storedSettings, useSettings } from './shared/settings';

const Field = part(() => import('./field'));
const Desk = part(() => import('./desk'));

/** From this width on a rig opens at the desk, unless the person chose otherwise. [px] */
const DESK_WIDTH = 900;

const useWide = (): boolean => {
  const [wide, set] = useState(isWide);
  useEffect(() => {
    const query = window.matchMedia(`(min-width: ${DESK_WIDTH}px)`);
    // Paper is narrow, but what is printed is the page that stood on the screen.
    const tell = (): void => {
      if (!window.matchMedia('print').matches) set(query.matches);
    };
    query.addEventListener('change', tell);
    return () => query.removeEventListener('change', tell);
  }, []);
  return wide;
};

/** Screens made for the hand, whatever the width: walking, recording work, and what comes before a rig is there. */
const ALWAYS_FIELD: readonly string[] = ['round', 'job', 'care', 'more', 'meter', 'water-test', 'water-note'];
/** Pages that both have. */
const BOTH: readonly (string | undefined)[] = [undefined, 'plan', 'water'];

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

const isWide = (): boolean => window.matchMedia(`(min-width: ${DESK_WIDTH}px)`).matches;

/** Loads what the address asks for before the first drawing, all at once in place of one after the other. */
export const warmUp = async (session: Session): Promise<void> => {
  const route = parseRoute(location.hash);
  const { view } = storedSettings();
  const desk = atDesk(route, view === 'desk' || (view === 'auto' && isWide()));
  const rig = route.parts[0] === 'rig' ? route.parts[1] : undefined;
  if (rig !== undefined) session.overview(rig).catch(() => undefined);
  try {
    await (desk ? Desk.load() : Promise.all([Field.load(), ...(rig === undefined ? [] : [OneRig.load()])]));
  } catch {
    // The screen itself says what could not be loaded.
  }
  whenIdle(Field, OneRig, NewRig, PlanScreen, JobCard, WaterScreens);
};

export const App = ({ session }: { readonly session: Session }) => (
  <SettingsProvider>
    <OfflineNotice />
    <SessionProvider session={session}>
      <Screen />
    </SessionProvider>
    <Announcer />
  </SettingsProvider>
);
