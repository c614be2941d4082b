import { useRigs } from '../session/use-session';
import { PageTitle } from '../shared/page-title';
import { href, type Route } from '../shared/route';
import { useTroubles } from '../shared/trouble';
import { FirstMinute } from './first-minute';
import { Frame, Primary } from './frame';
import { NewRig, OneRig } from './parts';
import { ProblemsScreen } from './problems-screen';
import { RecordScreen } from './record-screen';
import { RigsList } from './rigs-list';

/** The screens for the hand. What comes before a rig is opened is small and stands at once; the rest is loaded with the rig. */
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
  const troubles = useTroubles();
  if (!rigs) return troubles.length > 0 ? <ProblemsScreen /> : <p className="opening">One moment.</p>;
  return rigs.length === 0 ? <FirstMinute /> : <RigsList rigs={rigs} />;
};

const NoSuchPage = () => (
  <Frame cells={['Seamward']} dock={<Primary words="My rigs" to={href('rigs')} />}>
    <PageTitle id="no page" title="No such page">
      There is no such page
    </PageTitle>
    <p>The address is not one that this version knows. Nothing was changed.</p>
  </Frame>
);
