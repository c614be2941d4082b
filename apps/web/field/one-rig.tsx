import type { RigId } from '../../../src/terms';
import { useOverview } from '../session/use-session';
import { PageTitle } from '../shared/page-title';
import { href } from '../shared/route';
import { useTroubles } from '../shared/trouble';
import { Frame, Primary } from './frame';
import { MoreScreen } from './more-screen';
import { JobCard, PlanScreen, WaterScreens } from './one-rig-parts';
import { ProblemsScreen } from './problems-screen';
import { RigHome } from './rig-home';
import { RoundScreen } from './walk/round-screen';

/** The screens of one rig. */
const OneRig = ({ rig, page, more }: { readonly rig: RigId; readonly page: string | undefined; readonly more: readonly string[] }) => {
  const overview = useOverview(rig);
  const troubles = useTroubles();
  if (!overview) return troubles.length > 0 ? <ProblemsScreen /> : <p className="opening">Opening the logbook.</p>;
  if (overview.entries === 0) return <NoSuchRig />;
  switch (page) {
    case 'round':
      return <RoundScreen overview={overview} at={more[0]} />;
    case 'plan':
      return <PlanScreen overview={overview} part={more[0]} />;
    case 'job':
    case 'care':
      return <JobCard overview={overview} job={more[0] ?? ''} recording={page === 'care'} />;
    case 'water':
    case 'meter':
    case 'water-test':
    case 'water-note':
      return <WaterScreens overview={overview} page={page} more={more} />;
    case 'more':
      return <MoreScreen overview={overview} />;
    default:
      return <RigHome overview={overview} />;
  }
};

export default OneRig;

const NoSuchRig = () => (
  <Frame cells={['Seamward']} dock={<Primary words="My rigs" to={href('rigs')} />}>
    <PageTitle id="no rig" title="No such rig">
      This rig is not on this device
    </PageTitle>
    <p>The address names a rig that this browser holds no logbook of. It may be on another phone, or it was removed here. Nothing was changed.</p>
  </Frame>
);
