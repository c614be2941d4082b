import { PageTitle } from '../shared/page-title';
import { href } from '../shared/route';
import { StitchSign } from '../shared/signs';
import { Primary } from './frame';
import { useLoadSample } from './use-sample';

/** Before anything is recorded: what this is for, and two ways to begin. No account. */
export const FirstMinute = () => {
  const { load, loading } = useLoadSample();
  return (
    <div className="field first-minute">
      <main id="content">
        <p className="brand">
          <StitchSign /> Seamward
        </p>
        <img className="sheet-frame sample" src="./first-picture.svg" alt="A travel trailer unfolded, with marks where something is to be done" />
        <PageTitle id="first" title="Draw your rig, walk round it">
          Draw your rig, walk round it, and know what to seal, mend or watch before the next trip.
        </PageTitle>
      </main>
      <footer className="dock">
        <Primary words="Start with my rig" to={href('new')} />
        <button type="button" className="press wide" onClick={load} disabled={loading}>
          {loading ? 'Opening the sample rig' : 'Look at the sample rig'}
        </button>
        <p className="wide">No account, no signal needed. What you record stays on this device until you share it.</p>
        <a className="wide quiet" href={href('record')}>
          I have a saved copy
        </a>
      </footer>
    </div>
  );
};
