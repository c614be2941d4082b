import { useState } from 'react';
import type { Overview } from '../session/session';
import { useRigs, useSession } from '../session/use-session';
import { Over } from '../shared/dialog';
import { PageTitle } from '../shared/page-title';
import { go, href } from '../shared/route';
import { useChangeSettings, useSettings } from '../shared/settings';
import { keepTrouble, reportTrouble } from '../shared/trouble';
import { Cell, Frame, Primary } from './frame';

/** What is needed now and then: the pages made for the table, settings of the hand, and taking a rig off this device. */
export const MoreScreen = ({ overview }: { readonly overview: Overview }) => {
  const { rig, record, entries } = overview;
  const session = useSession();
  const settings = useSettings();
  const change = useChangeSettings();
  const sample = useRigs()?.find((r) => r.id === rig.id)?.demo === true;
  const [removing, setRemoving] = useState(false);

  const remove = async (): Promise<void> => {
    try {
      await session.forget(rig.id);
      go(href('rigs'));
    } catch (cause) {
      setRemoving(false);
      reportTrouble(keepTrouble(cause));
    }
  };

  const pages: readonly (readonly [page: string, name: string, line: string])[] = [
    ['sheet', 'Drawing and all places', 'the unfolded rig, and the same places as a list'],
    ['logbook', 'Logbook', `${entries} entries`],
    ['add', 'Record something else', 'a stay, a trip, a reading, work that was done'],
    ['describe', 'Describe and move parts', 'sizes, names, what it is sealed with'],
    ['slides', 'Slide-outs', 'what to close before they move'],
    ['copies', 'Copies', 'save or open a file, with or without photos'],
    ['print', 'Paper', 'walk sheet, condition record'],
  ];
  return (
    <Frame
      cells={['More']}
      back={{ to: href('rig', rig.id), name: 'Back to the rig' }}
      record={record}
      dock={
        <>
          <Primary words="Back to the rig" to={href('rig', rig.id)} />
          <Cell to={href('settings')}>Settings</Cell>
          <Cell act={() => setRemoving(true)}>{sample ? 'Remove sample' : 'Remove rig'}</Cell>
        </>
      }
    >
      <PageTitle id={`more ${rig.id}`} title={`${rig.name}, more`}>
        {rig.name}
      </PageTitle>
      <ul className="rows">
        {pages.map(([page, name, line]) => (
          <li key={page}>
            <a className="wide-row" href={href('rig', rig.id, page)}>
              <span>
                <b>{name}</b>
                {line}
              </span>
            </a>
          </li>
        ))}
      </ul>
      <fieldset className="choices of-2" aria-label="Hand">
        {(['left', 'right'] as const).map((hand) => (
          <button key={hand} type="button" className="press" aria-pressed={settings.hand === hand} onClick={() => change({ hand })}>
            {hand === 'left' ? 'Left hand' : 'Right hand'}
          </button>
        ))}
      </fieldset>
      <fieldset className="choices of-2" aria-label="Light">
        {(['light', 'night'] as const).map((theme) => (
          <button key={theme} type="button" className="press" aria-pressed={settings.theme === theme} onClick={() => change({ theme })}>
            {theme === 'light' ? 'Day' : 'Night'}
          </button>
        ))}
      </fieldset>
      {removing && (
        <Over label={`Remove ${rig.name}`} close={() => setRemoving(false)}>
          <h2>Remove {rig.name} from this device?</h2>
          <p>
            {sample
              ? 'The sample goes as it came. You can load it again at any time.'
              : `All ${entries} entries and the photos of this rig are taken off this device and cannot be brought back, except from a copy you saved. Save a copy first.`}
          </p>
          {!sample && (
            <a className="press" href={href('rig', rig.id, 'copies')}>
              Save a copy first
            </a>
          )}
          <button type="button" className="press" onClick={() => setRemoving(false)}>
            Keep it here
          </button>
          <Primary words={sample ? 'Remove the sample' : 'Remove it for good'} act={() => void remove()} />
        </Over>
      )}
    </Frame>
  );
};
