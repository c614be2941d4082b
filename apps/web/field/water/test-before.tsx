import { caution, type Leak } from '../../../../src/plan';
import type { Station } from '../../../../src/terms';
import type { Overview } from '../../session/session';
import { announce } from '../../shared/announce';
import { href } from '../../shared/route';
import { Cell, Frame, Primary } from '../frame';
import { buzz } from '../visit/last-kept';
import { HOW, type Planned } from './planned-test';
import { type Running, stood } from './running-test';
import { TestHead } from './test-head';
import { unbroken } from './unbroken';

/** What to beware of and what to do, right before the water is turned on. */
export const TestBefore = ({
  overview,
  leak,
  id,
  planned,
  station,
  put,
}: {
  readonly overview: Overview;
  readonly leak: Leak | undefined;
  readonly id: string;
  readonly planned: Planned;
  readonly station: Station;
  readonly put: (next: Running) => void;
}) => {
  const { rig, record } = overview;
  const back = href('rig', rig.id, 'water');
  const candidate = leak?.candidates.find((c) => c.station === station.id);
  const reasons = [...(candidate?.because ?? []), ...planned.because];
  const start = (): void => {
    put({
      leak: id,
      station: station.id,
      how: planned.how,
      minutes: planned.minutes,
      started: Date.now(),
      kept_dry: undefined,
      before: stood(leak),
      tests: candidate?.tests.length ?? 0,
    });
    announce('The clock runs.');
    buzz(1);
  };
  return (
    <Frame
      cells={['Water test', HOW[planned.how]]}
      back={{ to: back, name: 'Back to water' }}
      record={record}
      ruled
      dock={
        <>
          <Primary words={planned.how === 'hose' ? 'Water on: start' : 'Air on: start'} second={`the clock runs ${planned.minutes} min`} act={start} />
          <Cell to={back} wide>
            Not now
          </Cell>
        </>
      }
    >
      <TestHead overview={overview} station={station} title="Test" />
      {planned.cautions.map((c) => (
        <CautionBox key={c} of={c} />
      ))}
      {planned.cautions.length > 0 && <p>The maker’s manual, local rules and licensed trades come first.</p>}
      <ol className="steps">
        {planned.steps.map((step, i) => (
          <li key={step}>
            <span className="number">{i + 1}</span>
            <span>{unbroken(step)}</span>
          </li>
        ))}
      </ol>
      {reasons.length > 0 && <h2>Why here</h2>}
      {reasons.map((b) => (
        <p key={b.text}>{unbroken(b.text)}</p>
      ))}
    </Frame>
  );
};

/** A caution of the trade table by its id, or a sentence of its own. */
const CautionBox = ({ of }: { readonly of: string }) => {
  const words = caution(of);
  if (!words) return <p className="caution-box">{of}</p>;
  return (
    <details className="caution-box">
      <summary>{words.warning}</summary>
      <p>{words.do}</p>
    </details>
  );
};
