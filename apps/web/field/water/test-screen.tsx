import { useEffect, useState } from 'react';
import { kindById } from '../../../../src/entries';
import { caution, type Leak, type WaterTest } from '../../../../src/plan';
import type { Draft, Station } from '../../../../src/terms';
import { readQuantity } from '../../../../src/units';
import type { Overview } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText } from '../../shared/clock';
import { PageTitle } from '../../shared/page-title';
import { lowerFirst, stationById, whereWords } from '../../shared/rig-words';
import { go, href, useRoute } from '../../shared/route';
import { byOf, useSettings } from '../../shared/settings';
import { UndoSign } from '../../shared/signs';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { Locator } from '../locator';
import { buzz } from '../visit/last-kept';
import { LIKELY_WORD, stationName } from './leak-part';
import { changes, clock, elapsed, LEFT_RUNNING_S, type Running, ranFor, stood, useRunning } from './running-test';
import { leakOf } from './water-of';

type Props = { readonly overview: Overview; readonly leak: string };

/** A test that somebody chose, or that was done before: the same way of doing it, without what a proposal knows. */
const MINUTES = 10;
const STEPS: readonly string[] = [
  'Lay the hose so that water runs over it in a plain flow, without a nozzle: a jet held close makes leaks that rain would not.',
  'Begin at its lowest edge and go up; keep everything above it dry.',
  'Somebody inside watches with light and meter. Stop at the first water.',
];

type Planned = Pick<WaterTest, 'station' | 'how' | 'minutes' | 'steps' | 'cautions' | 'keep_dry' | 'because'>;

const plannedAt = (leak: Leak | undefined, station: Station | undefined): Planned | undefined => {
  const proposed = leak?.next_test;
  if (proposed && (station === undefined || proposed.station === station.id)) return proposed;
  if (!station) return undefined;
  const cautions = station.reach === 'ladder' ? ['ladder'] : station.reach === 'roof' ? ['ladder', 'roof'] : [];
  return { station: station.id, how: 'hose', minutes: MINUTES, steps: STEPS, cautions, keep_dry: [], because: [] };
};

/** One opening or seam tested by itself: what to do, the clock, what it showed, and what that changes. */
export const TestScreen = ({ overview, leak: id }: Props) => {
  const { rig, plan, record } = overview;
  const { query } = useRoute();
  const [running, put] = useRunning(rig.id);
  const leak = leakOf(plan.water, running?.leak ?? id);
  const planned = plannedAt(leak, stationById(rig, running?.station ?? query['station']));
  const station = stationById(rig, planned?.station);
  if (running === undefined) return <Bare overview={overview} words="One moment" />;
  if (running?.entry !== undefined) return <Shown overview={overview} leak={leak} running={running} put={put} />;
  if (!planned || !station)
    return (
      <Frame cells={['Water test']} record={record} dock={<Primary words="Back to water" to={href('rig', rig.id, 'water')} />}>
        <PageTitle id="no test" title="No test to make">
          No test is proposed now
        </PageTitle>
        <p>Either the way in is found, or nothing on the list would be told apart by a test. Choose a place from the list under Water to test it all the same.</p>
      </Frame>
    );
  return running ? (
    <Clock overview={overview} running={running} put={put} station={station} />
  ) : (
    <Before overview={overview} leak={leak} id={id} planned={planned} station={station} put={put} />
  );
};

const Bare = ({ overview, words }: { readonly overview: Overview; readonly words: string }) => (
  <Frame cells={['Water test']} record={overview.record} dock={<Primary words={words} disabled />}>
    {null}
  </Frame>
);

type Put = (next: Running | null) => void;

const Head = ({ overview, station, title }: { readonly overview: Overview; readonly station: Station; readonly title: string }) => (
  <div className="station-head">
    <div>
      <PageTitle id={`test ${title} ${station.id}`} title={`${title}: ${station.name}`}>
        {station.name}
      </PageTitle>
      <p>{whereWords(overview.rig, station, 'outside')}</p>
    </div>
    <Locator rig={overview.rig} station={station} side="outside" />
  </div>
);

const HOW: Readonly<Record<WaterTest['how'], string>> = { hose: 'Hose', soap: 'Soap and air' };

const Before = ({
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
  readonly put: Put;
}) => {
  const { rig, record } = overview;
  const back = href('rig', rig.id, 'water');
  const start = (): void => {
    put({ leak: id, station: station.id, how: planned.how, minutes: planned.minutes, started: Date.now(), kept_dry: true, before: stood(leak) });
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
      <Head overview={overview} station={station} title="Test" />
      {planned.because[0] && <p>{planned.because[0].text}</p>}
      <ol className="steps">
        {planned.steps.map((step, i) => (
          <li key={step}>
            <span className="number">{i + 1}</span>
            <span>{step}</span>
          </li>
        ))}
      </ol>
      {planned.keep_dry.length > 0 && (
        <p>
          <b>Keep dry:</b> {planned.keep_dry.map((s) => lowerFirst(stationName(overview, s))).join(', ')}.
        </p>
      )}
      {planned.cautions.map((c) => (
        <CautionBox key={c} of={c} />
      ))}
    </Frame>
  );
};

/** A caution of the trade table by its id, or a sentence of its own. */
const CautionBox = ({ of }: { readonly of: string }) => {
  const words = caution(of);
  if (!words) return <p className="caution-box">{of}</p>;
  return (
    <details className="caution-box" open>
      <summary>{words.warning}</summary>
      <p>{words.do}</p>
    </details>
  );
};

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

const Clock = ({ overview, running, put, station }: { readonly overview: Overview; readonly running: Running; readonly put: Put; readonly station: Station }) => {
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
      body: { how: running.how, result, kept_dry: running.kept_dry, ...(ran?.ok ? { ran_for: ran.value } : {}) },
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
          <Cell act={() => put(null)}>Break off</Cell>
          <button type="button" className="press" aria-pressed={running.kept_dry} onClick={() => put({ ...running, kept_dry: !running.kept_dry })}>
            Above kept dry
          </button>
        </>
      }
    >
      <Head overview={overview} station={station} title="Running" />
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
    </Frame>
  );
};

const RESULT_WORD: Readonly<Record<string, string>> = { 'came-in': 'Water came in', 'stayed-dry': 'It stayed dry', bubbles: 'It bubbled', 'no-bubbles': 'No bubbles' };

/** What the test changed: every way in beside how it stood. */
const Shown = ({ overview, leak, running, put }: { readonly overview: Overview; readonly leak: Leak | undefined; readonly running: Running; readonly put: Put }) => {
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
  const list = changes(running.before, stood(leak));
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
            second={leak?.next_test && leak.confirmed === undefined ? stationName(overview, leak.next_test.station) : 'what is next stands there'}
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
      {leak && <p>{leak.sentence}</p>}
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
        </section>
      )}
    </Frame>
  );
};
