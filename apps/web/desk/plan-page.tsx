import type { Finding, Job, Material, Plan } from '../../../src/plan';
import { show, showDay } from '../../../src/units';
import { byUrgencyGroups, minutesWords, numberOf, readySentence, whoWords } from './answers';
import { count, stationById, stationWords, useDesk } from './desk';
import { giveFile } from './files';
import { MarkIcon } from './mark-icon';
import { desk } from './paths';
import { PrintButton } from './print';
import { FigureButton } from './worksheet-box';

/** What must be done, in what order, by whom, and what to buy for it. */
export const PlanPage = () => {
  const { id, overview, session, say } = useDesk();
  const { plan } = overview;
  const groups = byUrgencyGroups(inNumberOrder(plan));

  const save = async () => {
    try {
      const file = await session.exportPlan(id, plan.on);
      giveFile(file.name, file.text, 'application/json');
      say({ form: 'kept', words: `The plan of ${showDay(plan.on)} was saved as ${file.name}.` });
    } catch (cause) {
      say({ form: 'problem', happened: `The plan could not be saved as a file (${String(cause)}).`, safe: 'The logbook is unchanged.', todo: 'Try again, or print the plan.' });
    }
  };

  return (
    <main className="desk-page plan-page" id="content">
      <header className="page-head">
        <h1>{readySentence(plan.ready)}</h1>
        <p className="lead">
          {plan.jobs.length === 0 ? 'No work stands on the plan' : count(plan.jobs.length, 'job', 'jobs')} on {showDay(plan.on)}.
        </p>
      </header>
      <div className="columns plan-columns">
        <section className="plan-jobs" aria-label="Jobs">
          <ReadyReasons plan={plan} />
          {groups.map((group) => (
            <section key={group.urgency} className={`job-group job-group-${group.urgency}`}>
              <h2 className="group-head">
                <MarkIcon mark={group.urgency} size={20} /> {group.word}
                <span className="mut"> {count(group.items.length, 'job', 'jobs')}</span>
              </h2>
              <ol className="rows">
                {group.items.map((job) => (
                  <JobRow key={job.id} job={job} plan={plan} />
                ))}
              </ol>
            </section>
          ))}
          {groups.length === 0 && <p className="empty">Nothing that was recorded asks for work.</p>}
        </section>
        <aside className="plan-side">
          <Shopping materials={plan.shopping} />
          <NextRound plan={plan} />
          <NotSeen plan={plan} />
          <div className="buttons">
            <PrintButton paper="plan" words="Print the plan" primary />
            <button type="button" className="button" onClick={save}>
              Save plan as JSON
            </button>
          </div>
        </aside>
      </div>
    </main>
  );
};

/** Jobs in the order of their numbers on the drawing, so that list and sheet are read together. */
const inNumberOrder = (plan: Plan): readonly Job[] => {
  const numberOfJob = (job: Job): number => Math.min(...job.findings.map((f) => numberOf(plan, f) ?? Number.POSITIVE_INFINITY));
  return plan.jobs
    .map((job) => ({ job, n: numberOfJob(job) }))
    .toSorted((a, b) => a.n - b.n)
    .map(({ job }) => job);
};

const ReadyReasons = ({ plan }: { readonly plan: Plan }) => {
  const { id } = useDesk();
  if (plan.ready.because.length === 0) return null;
  const [shown, rest] = [plan.ready.because.slice(0, 6), plan.ready.because.slice(6)];
  const line = (b: Plan['ready']['because'][number]) => (
    <li key={`${b.finding ?? ''}${b.station ?? ''}${b.text}`}>
      {b.finding !== undefined ? <a href={desk.finding(id, b.finding)}>{b.text}</a> : b.station !== undefined ? <a href={desk.place(id, b.station)}>{b.text}</a> : b.text}
    </li>
  );
  return (
    <section className="ready-reasons">
      <h2>{plan.ready.answer === 'no' ? 'What stands against it' : plan.ready.answer === 'not-known' ? 'Why it is not known' : 'Why'}</h2>
      <ul className="plain">{shown.map(line)}</ul>
      {rest.length > 0 && (
        <details>
          <summary>{count(rest.length, 'more reason', 'more reasons')}</summary>
          <ul className="plain">{rest.map(line)}</ul>
        </details>
      )}
    </section>
  );
};

const firstFinding = (plan: Plan, job: Job): Finding | undefined => plan.findings.find((f) => job.findings.includes(f.id));

const JobRow = ({ job, plan }: { readonly job: Job; readonly plan: Plan }) => {
  const { id, overview, preferences } = useDesk();
  const finding = firstFinding(plan, job);
  const station = stationById(overview.rig, job.station);
  const number = finding ? numberOf(plan, finding.id) : undefined;
  const because = finding?.because[0]?.text;
  return (
    <li className="row job-row">
      <span className="row-number">{number}</span>
      <div className="row-body">
        <h3>
          <a href={finding ? desk.finding(id, finding.id) : desk.plan(id)}>{job.title}</a>
        </h3>
        <p className="mut">
          {station ? `${stationWords(overview.rig, station)}. ` : ''}
          {because}
        </p>
        {job.bead_m !== undefined && job.bead_m > 0 && <p className="mut">Bead to lay: {show(job.bead_m, 'length', preferences)}.</p>}
      </div>
      <div className="row-side">
        <span>
          {job.who === 'professional' && <ProfessionalFlag />} {whoWords(job.who)}
        </span>
        <span className="mut">{minutesWords(job.minutes)}</span>
      </div>
    </li>
  );
};

export const ProfessionalFlag = () => (
  <svg className="flag" width="12" height="12" viewBox="0 0 12 12" aria-hidden="true" focusable="false">
    <path d="M0 0H12V12Z" />
  </svg>
);

export const Shopping = ({ materials, head = 'What to buy' }: { readonly materials: readonly Material[]; readonly head?: string }) => (
  <section className="shopping">
    <h2>{head}</h2>
    {materials.length === 0 ? (
      <p className="mut">Nothing on the list asks for material.</p>
    ) : (
      <ul className="rows">
        {materials.map((m) => (
          <li key={`${m.material}${m.package_words}`} className="row shopping-row">
            <div className="row-body">
              <h3>{m.words}</h3>
              <p>
                {m.worked ? (
                  <FigureButton worked={m.worked}>
                    {m.packages} {m.package_words}
                  </FigureButton>
                ) : (
                  <b>
                    {m.packages} {m.package_words}
                  </b>
                )}
              </p>
              <p className="mut">{m.because}</p>
            </div>
          </li>
        ))}
      </ul>
    )}
  </section>
);

const NextRound = ({ plan }: { readonly plan: Plan }) => (
  <section>
    <h2>Next round</h2>
    {plan.next_round ? (
      <>
        <p>
          <b>{showDay(plan.next_round.on)}</b>
        </p>
        <p className="mut">
          {plan.next_round.because} {plan.next_round.source.text}.
        </p>
      </>
    ) : (
      <p className="mut">No day follows from the record yet.</p>
    )}
  </section>
);

const NotSeen = ({ plan }: { readonly plan: Plan }) => {
  const { id, overview } = useDesk();
  if (plan.not_seen.length === 0) return null;
  return (
    <section>
      <h2>
        Not seen <span className="mut">{count(plan.not_seen.length, 'place', 'places')}</span>
      </h2>
      <p className="mut">Not seen is never taken for sound.</p>
      <details open={plan.not_seen.length <= 8}>
        <summary>Which, and why</summary>
        <ul className="rows">
          {plan.not_seen.map((n) => {
            const station = stationById(overview.rig, n.station);
            return (
              <li key={n.station} className="row">
                <MarkIcon mark="not-seen" size={16} />
                <div className="row-body">
                  <h3>
                    <a href={desk.place(id, n.station)}>{station ? stationWords(overview.rig, station) : n.station}</a>
                  </h3>
                  <p className="mut">{n.because.text}</p>
                </div>
              </li>
            );
          })}
        </ul>
      </details>
    </section>
  );
};
