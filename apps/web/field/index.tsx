import { lazy } from 'react';
import type { RigId } from '../../../src/terms';
import { useOverview, useRigs } from '../session/use-session';
import { href, type Route } from '../shared/route';
import { FirstMinute } from './first-minute';
import { Frame, Primary } from './frame';
import { MoreScreen } from './more-screen';
import { RigHome } from './rig-home';
import { RigsList } from './rigs-list';
import { RecordScreen } from './record-screen';
import { ProblemsScreen } from './problems-screen';
import { PageTitle } from '../shared/page-title';
import { RoundScreen } from './walk/round-screen';

const NewRig = lazy(() => import('./new-rig/new-rig'));
const PlanScreen = lazy(() => import('./work/plan-screen'));
const JobCard = lazy(() => import('./work/job-card'));

/** The screens for the hand. */
const Field = ({ route }: { readonly route: Route }) => {
  const [head = 'rigs', rig, page, ...more] = route.parts;
  switch (head) {
    case 'rigs':
      return <Rigs />;
    case 'new':
      return <NewRig />;
    case 'problems':
      return <ProblemsScreen />;
    case 'record':
      return <RecordScreen />;
    case 'rig':
      return rig === undefined ? <Rigs /> : <OneRig key={rig} rig={rig} page={page} more={more} />;
    default:
      return <NoSuchPage />;
  }
};

export default Field;

const Rigs = () => {
  const rigs = useRigs();
  if (!rigs) return <p className="opening">One moment.</p>;
  return rigs.length === 0 ? <FirstMinute /> : <RigsList rigs={rigs} />;
};

const OneRig = ({ rig, page, more }: { readonly rig: RigId; readonly page: string | undefined; readonly more: readonly string[] }) => {
  const overview = useOverview(rig);
  if (!overview) return <p className="opening">Opening the logbook.</p>;
  if (overview.entries === 0) return <NoSuchRig />;
  switch (page) {
    case 'round':
      return <RoundScreen overview={overview} at={more[0]} />;
    case 'plan':
      return <PlanScreen overview={overview} part={more[0]} />;
    case 'job':
    case 'care':
      return <JobCard overview={overview} job={more[0] ?? ''} recording={page === 'care'} />;
    case 'more':
      return <MoreScreen overview={overview} />;
    default:
      return <RigHome overview={overview} />;
  }
};

const NoSuchRig = () => (
  <Frame cells={['Seamward']} dock={<Primary words="My rigs" to={href('rigs')} />}>
    <PageTitle id="no rig" title="No such rig">
      This rig is not on this device
    </PageTitle>
    <p>The address names a rig that this browser holds no logbook of. It may be on another phone, or it was removed here. Nothing was changed.</p>
  </Frame>
);

const NoSuchPage = () => (
  <Frame cells={['Seamward']} dock={<Primary words="My rigs" to={href('rigs')} />}>
    <PageTitle id="no page" title="No such page">
      There is no such page
    </PageTitle>
    <p>The address is not one that this version knows. Nothing was changed.</p>
  </Frame>
);
