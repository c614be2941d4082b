import { useEffect } from 'react';
import type { Leak } from '../../../../src/plan';
import type { EntryId } from '../../../../src/terms';
import type { Overview } from '../../session/session';
import { PageTitle } from '../../shared/page-title';
import { stationById } from '../../shared/rig-words';
import { href, useRoute } from '../../shared/route';
import { Frame, Primary } from '../frame';
import { plannedAt } from './planned-test';
import { type Running, useRunning } from './running-test';
import { TestBefore } from './test-before';
import { TestClock } from './test-clock';
import { TestShown } from './test-shown';
import { leakOf } from './water-of';

type Props = { readonly overview: Overview; readonly leak: string };

/** One opening or seam tested by itself: what to do, the clock, what it showed, and what that changes. */
export const TestScreen = ({ overview, leak: id }: Props) => {
  const { rig, plan, record } = overview;
  const { query } = useRoute();
  const [running, put] = useRunning(rig.id);
  const leak = leakOf(plan.water, running?.leak ?? id);
  const planned = plannedAt(leak, stationById(rig, running?.station ?? query['station']));
  const station = stationById(rig, planned?.station);
  // A page that was killed right after the result was kept still holds the test as running: it is not asked for again.
  const kept = running && running.entry === undefined ? keptSince(leak, running) : undefined;
  useEffect(() => {
    if (running && kept !== undefined) put({ ...running, entry: kept });
  }, [running, kept, put]);
  if (running === undefined) return <Bare overview={overview} words="One moment" />;
  if (running?.entry !== undefined) return <TestShown overview={overview} leak={leak} running={running} put={put} />;
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
    <TestClock overview={overview} running={running} put={put} station={station} />
  ) : (
    <TestBefore overview={overview} leak={leak} id={id} planned={planned} station={station} put={put} />
  );
};

const keptSince = (leak: Leak | undefined, running: Running): EntryId | undefined => {
  const tests = leak?.candidates.find((c) => c.station === running.station)?.tests ?? [];
  return tests.length > running.tests ? tests.at(-1) : undefined;
};

const Bare = ({ overview, words }: { readonly overview: Overview; readonly words: string }) => (
  <Frame cells={['Water test']} record={overview.record} dock={<Primary words={words} disabled />}>
    {null}
  </Frame>
);
