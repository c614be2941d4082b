import type { RigLine } from '../session/session';
import { PageTitle } from '../shared/page-title';
import { href } from '../shared/route';
import { Cell, Frame, Primary } from './frame';
import { useLoadSample } from './use-sample';

/** All rigs in a plain list. */
export const RigsList = ({ rigs }: { readonly rigs: readonly RigLine[] }) => {
  const { load, loading } = useLoadSample();
  const sample = rigs.some((r) => r.demo);
  return (
    <Frame
      cells={['Seamward', rigs.length === 1 ? '1 rig' : `${rigs.length} rigs`]}
      dock={
        <>
          <Primary words="Add a rig" to={href('new')} />
          {sample ? (
            <Cell to={href('record')}>Copies</Cell>
          ) : (
            <Cell act={load} disabled={loading}>
              Sample rig
            </Cell>
          )}
          <Cell to={href('settings')}>Settings</Cell>
        </>
      }
    >
      <PageTitle id="rigs" title="My rigs">
        My rigs
      </PageTitle>
      <ul className="rows">
        {rigs.map((rig) => (
          <li key={rig.id}>
            <a className="wide-row" href={href('rig', rig.id)}>
              <span>
                <b>
                  {rig.name || 'Rig without a name'}
                  {rig.demo ? ', a sample' : ''}
                </b>
                {rig.words}
                {rig.last_seen === undefined ? '' : `. Last round ${rig.last_seen}`}
              </span>
              <span className="end">{rig.open === 0 ? '' : `${rig.open} open`}</span>
            </a>
          </li>
        ))}
      </ul>
    </Frame>
  );
};
