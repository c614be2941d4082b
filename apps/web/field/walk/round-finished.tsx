import { kindById, roundEnded } from '../../../../src/entries';
import type { Plan } from '../../../../src/plan';
import { type Fields, WHOLE_RIG } from '../../../../src/terms';
import type { Overview, RoundStep, RoundView } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText } from '../../shared/clock';
import { stationById } from '../../shared/rig-words';
import { go, href } from '../../shared/route';
import { byOf, useSettings } from '../../shared/settings';
import { UndoSign } from '../../shared/signs';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { CountsTable } from '../counts';
import { Cell, Frame, Primary } from '../frame';
import { ReadyVerdict } from '../ready-verdict';
import { RigSheetView } from '../rig-sheet-view';
import { lastKept, rememberKept } from '../visit/last-kept';
import { StitchLine } from './stitch-line';

const counted = (steps: readonly RoundStep[]) => ({
  seen: steps.filter((s) => s.answered === 'sound' || s.answered === 'finding').length,
  notSeen: steps.filter((s) => s.answered === 'not-seen'),
  open: steps.filter((s) => s.answered === 'no'),
});

/** What the round found, and what it did not see. Not seen is not sound. */
export const RoundFinished = ({ overview, round }: { readonly overview: Overview; readonly round: RoundView }) => {
  const { rig, plan, record } = overview;
  const session = useSession();
  const settings = useSettings();
  const { seen, notSeen, open } = counted(round.steps);
  const lastly = kindById(round.asked_of_rig[0] ?? '');
  const without = [...notSeen, ...open];
  const first = without[0] && round.steps.indexOf(without[0]);

  const finish = async (): Promise<void> => {
    try {
      const [entry] = await session.keep([
        {
          rig: rig.id,
          kind: roundEnded.id,
          version: roundEnded.version,
          observed_at: nowText(),
          by: byOf(settings),
          place: WHOLE_RIG,
          body: { end: open.length === 0 ? 'finished' : 'stopped' },
          round: round.id,
        },
      ]);
      if (entry) rememberKept({ rig: rig.id, entry: entry.id, kind: roundEnded.id, station: '', side: 'outside', words: 'the end of the round' });
      announce('The end of the round is kept.');
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    }
  };
  const last = lastKept(rig.id);
  const unfinish = async (): Promise<void> => {
    if (last?.kind !== roundEnded.id) return;
    try {
      await session.undo(rig.id, last.entry, byOf(settings));
      announce('The round is open again.');
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    }
  };

  return (
    <Frame
      cells={[`${seen} of ${round.steps.length}`, round.ended ? 'Round over' : 'Not over yet']}
      back={{ to: href('rig', rig.id), name: 'Back to the rig' }}
      record={record}
      under={<StitchLine steps={round.steps} at={-1} />}
      dock={
        round.ended ? (
          <>
            <Primary
              words="See the plan"
              second={plan.jobs.length === 0 ? 'nothing asks for work' : `${plan.jobs.length} ${plan.jobs.length === 1 ? 'job' : 'jobs'}, each with its reason`}
              act={() => go(href('rig', rig.id, 'plan'))}
            />
            <Cell to={href('rig', rig.id, 'round', 'list')}>All stops</Cell>
            <Cell undo act={() => void unfinish()} disabled={last?.kind !== roundEnded.id}>
              <UndoSign /> Undo finish
            </Cell>
          </>
        ) : (
          <>
            {lastly && open.length === 0 ? (
              <Primary
                words={`Last: ${lastly.title.toLowerCase()}`}
                second={Object.values(lastly.fields as Fields)
                  .map((f) => f.label.toLowerCase())
                  .join(', ')}
                to={href('rig', rig.id, 'round', 'last')}
              />
            ) : (
              <Primary
                words={open.length === 0 ? 'Finish the round' : 'End the round here'}
                second={open.length === 0 ? `${seen} seen, ${notSeen.length} not seen` : `${open.length} were not reached and stay not seen`}
                act={() => void finish()}
              />
            )}
            {first === undefined ? (
              <Cell to={href('rig', rig.id, 'round', 'list')}>All stops</Cell>
            ) : (
              <Cell to={href('rig', rig.id, 'round', first + 1)}>Look at the {without.length} now</Cell>
            )}
            <Cell to={href('rig', rig.id)}>Go on later</Cell>
          </>
        )
      }
    >
      <ReadyVerdict plan={plan} id={`finished ${round.id}`} title="The round" />
      <RigSheetView overview={overview} />
      <CountsTable counts={plan.counts} />
      {without.length > 0 && (
        <section>
          <h2>Not seen is not sound</h2>
          <ul className="plain-list">
            {without.slice(0, MOST_NAMED).map((s) => (
              <li key={`${s.station} ${s.side}`}>
                <b>{stationById(rig, s.station)?.name ?? s.station}</b>: {s.answered === 'no' ? 'not reached' : reasonOf(plan, s.station)}
              </li>
            ))}
            {without.length > MOST_NAMED && <li>And {without.length - MOST_NAMED} more: see all stops.</li>}
          </ul>
        </section>
      )}
    </Frame>
  );
};

const MOST_NAMED = 8;

/** The reason after its colon; the plan says it whole. */
const reasonOf = (plan: Plan, station: string): string => {
  const text = plan.not_seen.find((n) => n.station === station)?.because.text ?? 'not seen';
  return text
    .slice(text.indexOf(': ') + 1)
    .trim()
    .replace(/\.$/, '');
};
