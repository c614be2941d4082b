import { useRigs } from '../session/use-session';
import { PageTitle } from '../shared/page-title';
import { href } from '../shared/route';
import { type Trouble, troubleOver, useTroubles } from '../shared/trouble';
import { Cell, Frame, Primary } from './frame';
import { usePersist } from './persist';

/** What went wrong, in three steps: what happened, what is safe, what to do. The first stands large, the others below. */
export const ProblemsScreen = () => {
  const troubles = useTroubles();
  const persist = usePersist();
  const rigs = useRigs();
  const [first, ...others] = troubles;
  const back = (): void => {
    if (history.length > 1) history.back();
    else location.hash = href('rigs');
  };
  return (
    <Frame
      cells={['Problems', first ? `${troubles.length}` : 'none']}
      back={{ to: href('rigs'), name: 'All rigs' }}
      dock={
        <>
          <Primary words="Save a copy as a file" second={rigs && rigs.length > 0 ? 'with all answers and photos' : undefined} to={href('record')} />
          <Cell act={back}>Go on</Cell>
          <Cell act={() => troubles.forEach((t) => void troubleOver(t.key))} disabled={!first}>
            Settled
          </Cell>
        </>
      }
    >
      {first ? (
        <section className="sheet" aria-live="assertive">
          <PageTitle id="problems" title={first.title}>
            {first.title}
          </PageTitle>
          <Steps trouble={first} />
        </section>
      ) : (
        <PageTitle id="problems" title="No problems">
          Nothing is wrong on this device that the program knows of
        </PageTitle>
      )}
      {others.map((t) => (
        <section key={t.key} className="sheet">
          <h2>{t.title}</h2>
          <Steps trouble={t} />
        </section>
      ))}
      {persist === 'may-be-cleared' && (
        <section>
          <h2>This browser may clear the page</h2>
          <p>When the device is short of room, or after some days unused. Put Seamward on the home screen, and save a copy.</p>
        </section>
      )}
    </Frame>
  );
};

const Steps = ({ trouble }: { readonly trouble: Trouble }) => (
  <dl>
    <div>
      <dt>What happened</dt>
      <dd>{trouble.happened}</dd>
    </div>
    <div>
      <dt>What is safe</dt>
      <dd>{trouble.safe}</dd>
    </div>
    <div>
      <dt>What to do</dt>
      <dd>{trouble.todo}</dd>
    </div>
  </dl>
);
