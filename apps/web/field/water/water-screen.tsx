import type { Leak, Water } from '../../../../src/plan';
import { ENOUGH_DRY } from '../../../../src/plan';
import type { Overview } from '../../session/session';
import { MarkSign } from '../../shared/mark-sign';
import { PageTitle } from '../../shared/page-title';
import { lowerFirst } from '../../shared/rig-words';
import { href, withQuery } from '../../shared/route';
import { Cell, Frame, Primary } from '../frame';
import { againHref, LeakPart, stationName } from './leak-part';
import { causeWord, dueOf, isDue, notRuledOut, stageOf, stageWord } from './leak-words';
import { useRunning } from './running-test';
import { unbroken } from './unbroken';
import { WallCaution } from './wall-caution';
import { mapHref } from './water-addresses';
import { againOf } from './water-of';

/** The order in which leaks are told: what still comes in first, what is dry again last. */
const ORDER: readonly ReturnType<typeof stageOf>[] = ['reopened', 'confirmed', 'open', 'rule-out', 'repaired', 'drying', 'explained', 'dry'];

export const inOrder = (leaks: readonly Leak[]): readonly Leak[] => [...leaks].sort((a, b) => ORDER.indexOf(stageOf(a)) - ORDER.indexOf(stageOf(b)) || b.since - a.since);

/** Water on one rig: what is wet, where it most likely comes in, what else it could be, what to do next. */
export const WaterScreen = ({ overview }: { readonly overview: Overview }) => {
  const { rig, plan, record } = overview;
  const { water } = plan;
  const leaks = inOrder(water.leaks);
  const [first, ...others] = leaks;
  const [running] = useRunning(rig.id);
  const meter = href('rig', rig.id, 'meter');
  /** Where the large button already leads to metering, it is not offered a second time. */
  const other = first !== undefined && (Boolean(running) || !['explained', 'dry'].includes(stageOf(first)));
  return (
    <Frame
      cells={['Water']}
      back={{ to: href('rig', rig.id), name: 'Back to the rig' }}
      record={record}
      ruled
      dock={
        <>
          {running ? (
            <Primary
              words={running.entry === undefined ? 'Go on with the water test' : 'What the test showed'}
              second={stationName(overview, running.station)}
              to={href('rig', rig.id, 'water-test', running.leak)}
            />
          ) : (
            <NextStep overview={overview} leak={first} />
          )}
          {other && <Cell to={meter}>Meter a wall</Cell>}
          <Cell wide={!other} to={withQuery(href('rig', rig.id, 'water-note'), first ? { leak: first.id } : {})}>
            Write down …
          </Cell>
        </>
      }
    >
      {first ? (
        <>
          <LeakPart
            overview={overview}
            leak={first}
            head={
              <PageTitle id={`water ${rig.id}`} title={`${rig.name}, water: ${stageWord(first)}`}>
                {stageWord(first)}
              </PageTitle>
            }
          />
          {others.map((leak) => (
            <LeakPart key={leak.id} overview={overview} leak={leak} />
          ))}
        </>
      ) : (
        <NoLeak overview={overview} water={water} />
      )}
      <Walls overview={overview} water={water} />
      {first && <WallCaution />}
    </Frame>
  );
};

/** The one thing to do next about the first leak. */
const NextStep = ({ overview, leak }: { readonly overview: Overview; readonly leak: Leak | undefined }) => {
  const { rig, plan } = overview;
  const meter = <Primary words="Meter a wall" second="dry places first, then towards what looks wet" to={href('rig', rig.id, 'meter')} />;
  if (!leak) return meter;
  const stage = stageOf(leak);
  const [again] = againOf(plan.water, leak);
  switch (stage) {
    case 'rule-out': {
      const cause = notRuledOut(leak)[0]?.cause ?? 'condensation';
      return (
        <Primary
          words={`Rule out: ${causeWord(cause).toLowerCase()}`}
          second={cause === 'condensation' ? 'measure air and surface at the wet place' : 'before a leak is named'}
          to={withQuery(href('rig', rig.id, 'water-note', cause === 'condensation' ? 'air-and-skin' : 'other-cause'), { leak: leak.id, cause })}
        />
      );
    }
    case 'open':
    case 'reopened':
      return leak.next_test ? (
        <Primary
          words={`Test ${lowerFirst(stationName(overview, leak.next_test.station))}`}
          second={`${leak.next_test.how === 'hose' ? 'with the hose' : 'with soap'}, about ${leak.next_test.minutes} min with setting up`}
          to={href('rig', rig.id, 'water-test', leak.id)}
        />
      ) : stage === 'reopened' && again ? (
        <Primary words="Meter the same places" second="wet and dry ones, one after the other" to={againHref(rig.id, leak, again)} />
      ) : (
        meter
      );
    case 'confirmed':
      return <Primary words="Record the repair" second={stationName(overview, leak.confirmed ?? '')} to={repairHref(overview, leak)} />;
    case 'repaired':
    case 'drying': {
      const [due] = dueOf(leak);
      return again ? (
        <Primary
          words="Meter the same places"
          second={due === undefined || isDue(leak, plan.on) ? 'wet and dry ones, one after the other' : due.words}
          to={againHref(rig.id, leak, again)}
        />
      ) : (
        meter
      );
    }
    case 'explained':
    case 'dry':
      return meter;
  }
};

/** The job at the way in, where there is one, else the care that seals it: the work belongs to the seam, not to the wet wall. */
const repairHref = ({ rig, plan }: Overview, leak: Leak): string => {
  const station = leak.confirmed;
  const job = plan.jobs.find((j) => station !== undefined && j.station === station);
  return job ? href('rig', rig.id, 'care', job.id) : withQuery(href('rig', rig.id, 'water-note', 'resealed'), { leak: leak.id, station: station ?? '' });
};

const DECIDING = 2;
const MOST_SAID = 3;

/** No leak: nothing read yet, or what was read explains itself. */
const NoLeak = ({ overview, water }: { readonly overview: Overview; readonly water: Water }) => {
  const { rig } = overview;
  const title = (words: string) => (
    <PageTitle id={`water ${rig.id}`} title={`${rig.name}, water: ${words}`}>
      {words}
    </PageTitle>
  );
  const panels = water.panels;
  if (panels.length === 0)
    return (
      <section className="verdict bare" aria-label="Water">
        <MarkSign mark="not-seen" />
        <div>
          {title('Nothing metered yet')}
          <p>A handful of readings tells whether a wall is wet, and where the water most likely comes in.</p>
        </div>
      </section>
    );
  const why = water.no_leak;
  const [reason] = why;
  // What decides it stands last; walls that say the same say it once.
  const said = [...new Set(why.flatMap((n) => n.because.slice(-DECIDING).map((b) => b.text)))].slice(0, MOST_SAID);
  const few = panels.filter((p) => (p.reference?.readings ?? 0) < ENOUGH_DRY);
  const unknown = panels.every((p) => p.spots.every((s) => s.state === 'not-known'));
  const words = reason ? (reason.why === 'weather' ? 'Damp as its air is, no leak' : 'It sweats, no leak') : unknown ? 'Too few readings to say' : 'No leak known';
  return (
    <>
      <section className="verdict bare" aria-label="Water">
        <MarkSign mark={reason ? 'watch' : unknown ? 'not-seen' : 'sound'} />
        <div>
          {title(words)}
          {said.map((text) => (
            <p key={text}>{unbroken(text)}</p>
          ))}
          {!reason && !unknown && <p>Nothing that was metered stands out from its surroundings.</p>}
        </div>
      </section>
      {few.map((p) => (
        <p key={p.id}>
          <b>{p.words}:</b> {ENOUGH_DRY - (p.reference?.readings ?? 0)} more dry {ENOUGH_DRY - (p.reference?.readings ?? 0) === 1 ? 'place' : 'places'} would make a good yardstick.
        </p>
      ))}
    </>
  );
};

/** What was metered so far, wall by wall: each with its map. */
const Walls = ({ overview, water }: { readonly overview: Overview; readonly water: Water }) => {
  const panels = water.panels;
  if (panels.length === 0) return null;
  return (
    <section>
      <h2>Metered walls</h2>
      <ul className="rows">
        {panels.map((p) => {
          const wet = p.spots.filter((s) => s.state === 'wet' || s.state === 'damp').length;
          return (
            <li key={p.id}>
              <a className="wide-row" href={mapHref(overview.rig.id, p)}>
                <span>
                  <b>{p.words}</b>
                  {p.spots.length === 1 ? 'one place' : `${p.spots.length} places`}, {wet === 0 ? 'none stands out' : `${wet} wet or damp`}
                </span>
              </a>
            </li>
          );
        })}
      </ul>
    </section>
  );
};
