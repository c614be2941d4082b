import { useEffect, useState } from 'react';
import { caution, type Job } from '../../../../src/plan';
import type { Overview } from '../../session/session';
import { useSession } from '../../session/use-session';
import { MarkSign } from '../../shared/mark-sign';
import { PageTitle } from '../../shared/page-title';
import { stationById } from '../../shared/rig-words';
import { go, href } from '../../shared/route';
import { UndoSign } from '../../shared/signs';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { CareForm } from './care-form';
import { MaterialRows } from './material-rows';
import { minutesWords } from './minutes';
import { becauseOf } from './plan-screen';

type Props = { readonly overview: Overview; readonly job: string; readonly recording: boolean };

/** One job in the hand: cautions first, then step by step, then what was done is recorded. */
const JobCard = ({ overview, job: id, recording }: Props) => {
  const job = overview.plan.jobs.find((j) => j.id === id);
  if (!job) return <JobGone overview={overview} />;
  return recording ? <CareForm overview={overview} job={job} /> : <Steps overview={overview} job={job} />;
};

export default JobCard;

const JobGone = ({ overview }: { readonly overview: Overview }) => (
  <Frame cells={['Job']} record={overview.record} dock={<Primary words="Back to the plan" to={href('rig', overview.rig.id, 'plan')} />}>
    <PageTitle id="job gone" title="No longer on the plan">
      This job is no longer on the plan
    </PageTitle>
    <p>It was settled, or what raised it was seen otherwise. The logbook holds all of it.</p>
  </Frame>
);

const Steps = ({ overview, job }: { readonly overview: Overview; readonly job: Job }) => {
  const { rig, plan, record } = overview;
  const session = useSession();
  const draft = `${rig.id}/job/${job.id}`;
  const [done, setDone] = useState(0);
  useEffect(() => {
    session.draft(draft).then(
      (saved) => {
        if (typeof saved === 'number') setDone(saved);
      },
      () => undefined,
    );
  }, [session, draft]);
  const put = (n: number): void => {
    setDone(n);
    session.saveDraft(draft, n === 0 ? undefined : n).catch((cause: unknown) => reportTrouble(keepTrouble(cause)));
  };
  const station = stationById(rig, job.station);
  const professional = job.who === 'professional';
  const over = done >= job.steps.length;
  const record_to = href('rig', rig.id, 'care', job.id);
  return (
    <Frame
      cells={[`Job ${plan.jobs.indexOf(job) + 1}`, professional ? 'shop' : job.minutes ? minutesWords(job.minutes) : '']}
      back={{ to: href('rig', rig.id, 'plan'), name: 'Back to the plan' }}
      record={record}
      ruled
      dock={
        <>
          {over || professional || job.steps.length === 0 ? (
            <Primary words="Record what was done" second={professional ? 'who did it, and the document' : 'the finding stays until it is proved'} to={record_to} />
          ) : (
            <Primary
              words={`Step ${done + 1} done`}
              second={job.steps[done + 1] === undefined ? 'then record it' : `then: ${shortStep(job.steps[done + 1] ?? '')}`}
              act={() => put(done + 1)}
            />
          )}
          <Cell act={() => go(href('rig', rig.id, 'plan'))}>Stop, go on later</Cell>
          {done > 0 ? (
            <Cell undo act={() => put(done - 1)}>
              <UndoSign /> Undo step {done}
            </Cell>
          ) : (
            <Cell to={record_to}>Already done</Cell>
          )}
        </>
      }
    >
      <section className="verdict bare" aria-label="Job">
        <MarkSign mark={job.urgency} who={job.who} />
        <div>
          <PageTitle id={job.id} title={job.title}>
            {job.title}
          </PageTitle>
          <p>
            {station ? `${station.name}. ` : ''}
            {becauseOf(plan, job)}
          </p>
        </div>
      </section>
      {job.cautions.map((c) => {
        const words = caution(c);
        return words ? (
          <details key={c} className="caution-box" open={job.cautions.length === 1}>
            <summary>{words.warning}</summary>
            <p>{words.do}</p>
          </details>
        ) : null;
      })}
      {professional && <p>This is for a professional. What follows is what they are likely to do; print or show the condition record.</p>}
      {job.must_be_true && (
        <p>
          <b>First be sure:</b> {job.must_be_true}
        </p>
      )}
      <ol className="steps">
        {job.steps.map((step, i) => (
          <li key={step} className={i === done ? 'now' : ''} aria-current={i === done ? 'step' : undefined}>
            <span className="number">{i < done ? '✓' : i + 1}</span>
            <span>{step}</span>
          </li>
        ))}
      </ol>
      {job.materials.length > 0 && (
        <section>
          <h2>Take with you</h2>
          <MaterialRows materials={job.materials} />
        </section>
      )}
      {job.prove && (
        <p>
          <b>To prove it held:</b> {job.prove}
        </p>
      )}
      {station && <a href={href('rig', rig.id, 'place', station.id)}>All that is known about {station.name}</a>}
    </Frame>
  );
};

const SHORT = 30;
const shortStep = (text: string): string => (text.length <= SHORT ? text.toLowerCase() : `${text.slice(0, text.lastIndexOf(' ', SHORT)).toLowerCase()} …`);
