import { showDay } from '../../../src/units';
import type { Overview } from '../session/session';
import { href } from '../shared/route';
import { CountsTable } from './counts';
import { Cell, Frame, Primary } from './frame';
import { ReadyVerdict } from './ready-verdict';
import { readyHead } from './ready-words';
import { RigSheetView } from './rig-sheet-view';
import { waterLine } from './water-line';

/** One rig in the hand: may it roll, where is what, and the way into the round and the plan. */
export const RigHome = ({ overview }: { readonly overview: Overview }) => {
  const { rig, plan, round, record } = overview;
  const open = round && !round.ended ? round : undefined;
  const answered = open ? open.steps.filter((s) => s.answered !== 'no').length : 0;
  const next = plan.next_round;
  return (
    <Frame
      cells={[rig.name || 'Rig']}
      back={{ to: href('rigs'), name: 'All rigs' }}
      record={record}
      dock={
        <>
          {open ? (
            <Primary words="Go on with the round" second={`${answered} of ${open.steps.length} answered`} to={href('rig', rig.id, 'round', 'now')} />
          ) : (
            <Primary
              words="Walk a round"
              second={next ? (next.on <= plan.on ? 'a full round is due' : `next one due ${showDay(next.on)}`) : 'look at every place in turn'}
              to={href('rig', rig.id, 'round')}
            />
          )}
          <Cell to={href('rig', rig.id, 'plan')}>Plan</Cell>
          <Cell to={href('rig', rig.id, 'more')}>More</Cell>
        </>
      }
    >
      <ReadyVerdict plan={plan} id={rig.id} title={`${rig.name}: ${readyHead(plan.ready).toLowerCase()}`} />
      <RigSheetView overview={overview} />
      <a className="press water-row" href={href('rig', rig.id, 'water')}>
        <b>Water</b> {waterLine(plan)}
      </a>
      <CountsTable counts={plan.counts} />
    </Frame>
  );
};
