import { useState } from 'react';
import { kindById } from '../../../../src/entries';
import { WHOLE_RIG } from '../../../../src/terms';
import type { Overview, RoundView } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText } from '../../shared/clock';
import { PageTitle } from '../../shared/page-title';
import { goInstead, href } from '../../shared/route';
import { byOf, useSettings } from '../../shared/settings';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { Ask } from '../visit/ask';
import { type Answers, changed, ready } from '../visit/form';

/** What a round asks of the whole rig, after its last stop: each answered for itself, kept with the last of them. */
export const WholeRig = ({ overview, round }: { readonly overview: Overview; readonly round: RoundView }) => {
  const { rig, record } = overview;
  const session = useSession();
  const settings = useSettings();
  const [answers, setAnswers] = useState<Answers>({});
  const kind = kindById(round.asked_of_rig[0] ?? '');
  const finished = href('rig', rig.id, 'round', 'finished');
  if (!kind) return null;
  const state = ready(kind, answers);

  const keep = async (): Promise<void> => {
    if (state.state !== 'complete') return;
    try {
      await session.keep([{ rig: rig.id, kind: kind.id, version: kind.version, observed_at: nowText(), by: byOf(settings), place: WHOLE_RIG, body: state.body, round: round.id }]);
      announce(`Kept: ${kind.title.toLowerCase()}.`);
      goInstead(finished);
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    }
  };

  return (
    <Frame
      cells={['Last of all']}
      back={{ to: href('rig', rig.id), name: 'Stop here, go on later' }}
      record={record}
      ruled
      dock={
        <>
          <Primary
            words="Keep it"
            second={state.state === 'unfinished' ? `still to answer: ${state.missing[0]?.toLowerCase()}` : kind.title}
            act={() => void keep()}
            disabled={state.state !== 'complete'}
          />
          <Cell wide to={finished}>
            Not now
          </Cell>
        </>
      }
    >
      <PageTitle id={`whole ${kind.id}`} title={kind.title}>
        {kind.title}
      </PageTitle>
      <p>{kind.meaning}</p>
      <div className="group">
        <Ask
          kind={kind}
          answers={answers}
          live={undefined}
          opened={undefined}
          last={undefined}
          defects={[]}
          preferences={settings}
          all
          wide
          change={(what) => setAnswers(changed(kind, answers, what, settings))}
          focus={() => undefined}
          open={() => undefined}
        />
      </div>
    </Frame>
  );
};
