import type { Leak } from '../../../../src/plan';
import type { Overview } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { PageTitle } from '../../shared/page-title';
import { lowerFirst } from '../../shared/rig-words';
import { go, href } from '../../shared/route';
import { byOf, useSettings } from '../../shared/settings';
import { UndoSign } from '../../shared/signs';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { LIKELY_WORD, stationName } from './leak-part';
import { changes, type Running, stood } from './running-test';
import { unbroken } from './unbroken';

const RESULT_WORD: Readonly<Record<string, string>> = { 'came-in': 'Water came in', 'stayed-dry': 'It stayed dry', bubbles: 'It bubbled', 'no-bubbles': 'No bubbles' };

/** As many stand there even if nothing changed for them. */
const ALWAYS_SHOWN = 3;

/** What the test changed: every way in beside how it stood. */
export const TestShown = ({
  overview,
  leak,
  running,
  put,
}: {
  readonly overview: Overview;
  readonly leak: Leak | undefined;
  readonly running: Running;
  readonly put: (next: Running | null) => void;
}) => {
  const { rig, record } = overview;
  const session = useSession();
  const settings = useSettings();
  const home = href('rig', rig.id, 'water');
  const done = (): void => {
    put(null);
    go(home);
  };
  const undo = async (): Promise<void> => {
    if (running.entry === undefined) return;
    try {
      await session.undo(rig.id, running.entry, byOf(settings));
      const { entry: _, result: __, ...again } = running;
      put(again);
      announce('Taken back.');
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    }
  };
  const name = stationName(overview, running.station);
  const all = changes(running.before, stood(leak));
  const list = all.filter((c, i) => i < ALWAYS_SHOWN || c.before !== c.after);
  return (
    <Frame
      cells={['Water test']}
      back={{ to: home, name: 'Back to water' }}
      record={record}
      ruled
      dock={
        <>
          <Primary
            words={leak?.confirmed === running.station ? 'On to the repair' : leak?.next_test ? 'On to the next' : 'Back to water'}
            second={
              leak?.next_test && leak.confirmed === undefined
                ? stationName(overview, leak.next_test.station)
                : leak?.confirmed === running.station
                  ? 'seal it, and write down with what'
                  : 'what is next stands there'
            }
            act={done}
          />
          <Cell undo wide act={() => void undo()}>
            <UndoSign /> Undo the result
          </Cell>
        </>
      }
    >
      <PageTitle id={`shown ${running.entry}`} title={`Water test: ${RESULT_WORD[running.result ?? ''] ?? ''}`}>
        {RESULT_WORD[running.result ?? ''] ?? 'Tested'}: {lowerFirst(name)}
      </PageTitle>
      {leak && <p>{unbroken(leak.sentence)}</p>}
      {list.length > 0 && (
        <section>
          <h2>Before and now</h2>
          <ol className="rows">
            {list.map((c, i) => (
              <li key={c.station}>
                <div className="row candidate">
                  <span className="number">{c.after === undefined ? '–' : i + 1}</span>
                  <span>
                    <b>{stationName(overview, c.station)}</b>
                    {c.before === c.after ? 'as before' : `${c.before === undefined ? 'not on the list' : `was ${LIKELY_WORD[c.before].toLowerCase()}`}`}
                  </span>
                  <span className="end">{c.after === undefined ? 'Off the list' : LIKELY_WORD[c.after]}</span>
                </div>
              </li>
            ))}
          </ol>
          {all.length > list.length && <p>{all.length - list.length} more, as before.</p>}
        </section>
      )}
    </Frame>
  );
};
