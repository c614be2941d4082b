import { useEffect, useState } from 'react';
import { kindById } from '../../../../src/entries';
import type { WaterTest } from '../../../../src/plan';
import type { Draft, Station } from '../../../../src/terms';
import { readQuantity } from '../../../../src/units';
import type { Overview } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText } from '../../shared/clock';
import { href } from '../../shared/route';
import { byOf, useSettings } from '../../shared/settings';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { buzz } from '../visit/last-kept';
import { HOW } from './planned-test';
import { clock, elapsed, LEFT_RUNNING_S, type Running, ranFor } from './running-test';
import { TestHead } from './test-head';

/** The time now, once a second while the clock runs. */
const useNow = (): number => {
  const [now, set] = useState(() => Date.now());
  useEffect(() => {
    const tick = setInterval(() => set(Date.now()), SECOND_MS);
    return () => clearInterval(tick);
  }, []);
  return now;
};
const SECOND_MS = 1000;

/** The phone stays awake beside the hose where the browser can do that. */
const useAwake = (): void => {
  useEffect(() => {
    let held: { release: () => Promise<void> } | undefined;
    let gone = false;
    navigator.wakeLock?.request('screen').then(
      (lock) => {
        if (gone) void lock.release();
        else held = lock;
      },
      () => undefined,
    );
    return () => {
      gone = true;
      void held?.release();
    };
  }, []);
};

const RESULTS: Readonly<Record<WaterTest['how'], { readonly yes: readonly [id: string, words: string]; readonly no: readonly [id: string, words: string] }>> = {
  hose: { yes: ['came-in', 'Water came in'], no: ['stayed-dry', 'Stayed dry'] },
  soap: { yes: ['bubbles', 'It bubbles'], no: ['no-bubbles', 'No bubbles'] },
};

/** The clock of a running test: it ends at the first sign, or dry. */
export const TestClock = ({
  overview,
  running,
  put,
  station,
}: {
  readonly overview: Overview;
  readonly running: Running;
  readonly put: (next: Running | null) => void;
  readonly station: Station;
}) => {
  const { rig, record } = overview;
  const session = useSession();
  const settings = useSettings();
  const [busy, setBusy] = useState(false);
  useAwake();
  const seconds = elapsed(running, useNow());
  const left = Math.max(0, running.minutes * 60 - seconds);
  const over = left === 0;
  useEffect(() => {
    if (!over) return;
    announce(`The ${running.minutes} minutes are over.`);
    buzz(2);
  }, [over, running.minutes]);
  const { yes, no } = RESULTS[running.how];
  const lost = seconds > LEFT_RUNNING_S;

  const end = async (result: string): Promise<void> => {
    const kind = kindById('water-test');
    if (!kind || busy) return;
    const minutes = ranFor(seconds);
    const ran = minutes === undefined ? undefined : readQuantity(minutes, 'duration', 'min');
    const draft: Draft = {
      rig: rig.id,
      kind: kind.id,
      version: kind.version,
      observed_at: nowText(),
      by: byOf(settings),
      place: { at: 'station', station: running.station, side: 'outside' },
      body: { how: running.how, result, ...(running.kept_dry === undefined ? {} : { kept_dry: running.kept_dry }), ...(ran?.ok ? { ran_for: ran.value } : {}) },
      concerns: [running.leak],
    };
    setBusy(true);
    try {
      const [entry] = await session.keep([draft]);
      if (entry) put({ ...running, entry: entry.id, result });
      announce(`Kept: water test, ${station.name}.`);
      buzz(1);
    } catch (cause) {
      setBusy(false);
      reportTrouble(keepTrouble(cause));
    }
  };

  return (
    <Frame
      cells={['Water test', HOW[running.how]]}
      back={{ to: href('rig', rig.id, 'water'), name: 'Leave it running' }}
      record={record}
      ruled
      dock={
        <>
          <Primary words={busy ? 'Keeping it' : yes[1]} second="stop at the first sign" act={() => void end(yes[0])} disabled={busy} />
          <button type="button" className="press wide" onClick={() => void end(no[0])} disabled={busy}>
            <b>{no[1]}</b> {over ? '' : `only ${clock(seconds)} of ${running.minutes} min`}
          </button>
          <Cell wide act={() => put(null)}>
            Break off
          </Cell>
        </>
      }
    >
      <TestHead overview={overview} station={station} title="Running" />
      <p className="clock" role="timer" aria-live="off">
        <b>{lost ? 'Left running' : clock(over ? seconds : left)}</b>
        <span>{lost ? 'Its time will not be written down.' : over ? `since the start, of ${running.minutes} min` : `to go of ${running.minutes} min`}</span>
      </p>
      <p>
        {running.how === 'hose'
          ? 'Somebody inside watches with light and meter. Wait for slow ways: it can take minutes to show.'
          : 'Suds over it from outside; look for bubbles that grow.'}
      </p>
      <p>Break off writes nothing down: a test without an end says nothing.</p>
      {running.how === 'hose' && (
        <div className="low ask">
          <p className="label">What lies above</p>
          <fieldset className="choices of-2" aria-label="What lies above">
            {ABOVE.map(([kept, words]) => (
              <button key={words} type="button" className="press" aria-pressed={running.kept_dry === kept} onClick={() => put({ ...running, kept_dry: kept })}>
                {words}
              </button>
            ))}
          </fieldset>
        </div>
      )}
    </Frame>
  );
};

const ABOVE: readonly (readonly [boolean, string])[] = [
  [true, 'Kept dry'],
  [false, 'Got wet too'],
];
