import type { Finding, Job, Plan } from '../../../../src/plan';
import { MARK_WORD, URGENCIES } from '../../../../src/terms';
import { showDay } from '../../../../src/units';
import type { Overview } from '../../session/session';
import { MarkSign } from '../../shared/mark-sign';
import { PageTitle } from '../../shared/page-title';
import { stationById } from '../../shared/rig-words';
import { href } from '../../shared/route';
import { Cell, Frame, Primary } from '../frame';
import { readyHead } from '../ready-words';
import { MaterialRows } from './material-rows';
import { minutesWords } from './minutes';

/** What must be done, in order of urgency, each with its reason; what to buy; what was not seen. */
const PlanScreen = ({ overview, part }: { readonly overview: Overview; readonly part: string | undefined }) =>
  part === 'shopping' ? <Shopping overview={overview} /> : <Jobs overview={overview} />;

export default PlanScreen;

export const becauseOf = (plan: Plan, job: Job): string => plan.findings.find((f: Finding) => job.findings.includes(f.id))?.because[0]?.text ?? '';

const Jobs = ({ overview }: { readonly overview: Overview }) => {
  const { plan, rig, record } = overview;
  const against = plan.ready.because.length;
  const groups = URGENCIES.map((urgency) => ({ urgency, jobs: plan.jobs.filter((j) => j.urgency === urgency) })).filter((g) => g.jobs.length > 0);
  const things = plan.shopping.length;
  return (
    <Frame
      cells={['Plan', showDay(plan.on, true)]}
      back={{ to: href('rig', rig.id), name: 'Back to the rig' }}
      record={record}
      ruled
      dock={
        things > 0 ? (
          <Primary
            words="Shopping list"
            second={`${things} ${things === 1 ? 'thing' : 'things'} for ${plan.jobs.filter((j) => j.materials.length > 0).length} jobs`}
            to={href('rig', rig.id, 'plan', 'shopping')}
          />
        ) : (
          <Primary words="Back to the rig" to={href('rig', rig.id)} />
        )
      }
    >
      <PageTitle id={`plan ${rig.id}`} title={`Plan for ${rig.name}`}>
        {readyHead(plan.ready)}
      </PageTitle>
      {plan.ready.answer !== 'yes' && against > 0 && (
        <ul className="reasons">
          {plan.ready.because.slice(0, 3).map((b) => (
            <li key={b.text}>{b.text}</li>
          ))}
          {against > 3 && <li>And {against - 3} more.</li>}
        </ul>
      )}
      {groups.map((g) => (
        <section key={g.urgency}>
          <h2 className="urgency">
            <MarkSign mark={g.urgency} /> {MARK_WORD[g.urgency]}
          </h2>
          <ol className="rows bare">
            {g.jobs.map((job) => (
              <JobRow key={job.id} job={job} overview={overview} number={plan.jobs.indexOf(job) + 1} />
            ))}
          </ol>
        </section>
      ))}
      {groups.length === 0 && <p>Nothing that was recorded asks for work.</p>}
      {plan.not_seen.length > 0 && (
        <section>
          <h2 className="urgency">
            <MarkSign mark="not-seen" /> Not seen
          </h2>
          <ul className="rows bare">
            {plan.not_seen.map((n) => (
              <li key={n.station}>
                <div className="row">
                  <span />
                  <span>
                    <b>{stationById(rig, n.station)?.name ?? n.station}</b>
                    {n.because.text}
                  </span>
                </div>
              </li>
            ))}
          </ul>
        </section>
      )}
    </Frame>
  );
};

const JobRow = ({ job, overview, number }: { readonly job: Job; readonly overview: Overview; readonly number: number }) => {
  const { rig, plan } = overview;
  const station = stationById(rig, job.station);
  return (
    <li>
      <a className="job-row" href={href('rig', rig.id, 'job', job.id)}>
        <b className="number">{number}</b>
        <b>{job.title}</b>
        <span className="end">{job.who === 'professional' ? 'shop' : job.minutes ? minutesWords(job.minutes) : ''}</span>
        <span className="why">
          {station ? `${station.name}. ` : ''}
          {becauseOf(plan, job)}
        </span>
      </a>
    </li>
  );
};

const Shopping = ({ overview }: { readonly overview: Overview }) => {
  const { plan, rig, record } = overview;
  return (
    <Frame
      cells={['To buy', `${plan.shopping.length}`]}
      back={{ to: href('rig', rig.id, 'plan'), name: 'Back to the plan' }}
      record={record}
      dock={
        <>
          <Primary words="Back to the plan" to={href('rig', rig.id, 'plan')} />
          <Cell wide to={href('rig', rig.id, 'print')}>
            On paper
          </Cell>
        </>
      }
    >
      <PageTitle id={`shopping ${rig.id}`} title="Shopping list">
        Shopping list
      </PageTitle>
      <p>For all jobs of the plan together. Check each product against the material it goes on; the package and the manual come first.</p>
      <MaterialRows materials={plan.shopping} />
    </Frame>
  );
};
