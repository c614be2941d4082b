import { kindById } from '../../../src/entries';
import { caution, type Finding, isOpen, type Job, type Remedy, remedy, shownAs } from '../../../src/plan';
import { type Entry, stationOf } from '../../../src/terms';
import { show, showDay } from '../../../src/units';
import { jobOf, lifeWords, minutesWords, numberOf, openFindings, urgencyPhrase, whoWords } from './answers';
import { count, findingStation, lowerFirst, placeWords, stationById, upperFirst, useDesk } from './desk';
import { GradePlot } from './grade-plot';
import { useEveryLine } from './logbook-lines';
import { MarkIcon } from './mark-icon';
import { desk } from './paths';
import { Photo } from './photo-input';
import { Shopping } from './plan-page';
import { SourceLine } from './source-line';
import { StationPicture } from './station-picture';
import { useStationView } from './station-view';
import { whenWords } from './when-picker';
import { FigureButton } from './worksheet-box';

/** One finding: what is wrong, where, why it is held so, and what can be done about it. */
export const FindingPage = ({ finding: findingId }: { readonly finding: string }) => {
  const { id, overview } = useDesk();
  const finding = overview.plan.findings.find((f) => f.id === findingId);
  if (!finding)
    return (
      <main className="desk-page" id="content">
        <h1>This finding no longer stands</h1>
        <p className="lead">What raised it was corrected, withdrawn, or mended and proved. The logbook still shows every line.</p>
        <p className="buttons">
          <a className="button primary" href={desk.plan(id)}>
            To the plan
          </a>
        </p>
      </main>
    );
  return <Standing finding={finding} />;
};

const Standing = ({ finding }: { readonly finding: Finding }) => {
  const { id, overview, preferences } = useDesk();
  const { rig, plan } = overview;
  const station = stationById(rig, findingStation(finding));
  const view = useStationView(station?.id);
  const lines = useEveryLine();
  const job = jobOf(plan, finding.id);
  const number = numberOf(plan, finding.id);
  const open = openFindings(plan).length;
  const where = placeWords(rig, finding.place);
  const side = 'side' in finding.place ? finding.place.side : 'outside';

  const reach = station ? `${REACH[station.reach]}, highest point ${show(station.top_m, 'length', preferences)} above the ground.` : '';
  const aboutSeal = finding.rule.startsWith('seal');
  const done = finding.life === 'proved' || finding.life === 'proof-due';

  return (
    <main className="desk-page finding-page" id="content">
      <header className="page-head with-mark">
        <MarkIcon mark={isOpen(finding) ? shownAs(finding) : 'sound'} professional={finding.who === 'professional'} size={28} />
        <div>
          <h1>
            {where}: {lowerFirst(finding.title)}, {done ? lowerFirst(lifeWords(finding)) : urgencyPhrase(shownAs(finding))}
          </h1>
          <p className="mut">
            {number === undefined ? '' : `Finding ${number} of ${open}. `}
            {reach} {whoWords(finding.who)}
            {job?.minutes ? `, ${minutesWords(job.minutes)}` : ''}. Since {showDay(finding.since)}.{finding.life === 'open' || done ? '' : ` ${lifeWords(finding)}.`}
          </p>
        </div>
      </header>
      <div className="columns finding-columns">
        <div className="finding-left">
          {station && <StationPicture station={station} />}
          <Photos lines={lines?.map((l) => l.entry) ?? []} station={station?.id} />
          <Actions finding={finding} />
        </div>
        <div className="finding-middle">
          {view && aboutSeal && <GradePlot view={view} side={side} />}
          <section>
            <h2 className="group-head">Because</h2>
            <ol className="rows because">
              {finding.because.map((b, i) => (
                <li key={`${b.text}${b.source.text}`} className="row">
                  <span className="row-number">{i + 1}</span>
                  <div className="row-body">
                    <p>
                      {b.text} {b.worksheet && <FigureButton worked={{ worksheet: b.worksheet.id, inputs: b.worksheet.inputs }}>worksheet</FigureButton>}
                    </p>
                    {b.entries.map((e) => (
                      <EntryLine key={e} entry={lines?.find((l) => l.entry.id === e)?.entry} words={lines?.find((l) => l.entry.id === e)?.words} />
                    ))}
                    <SourceLine source={b.source} />
                  </div>
                </li>
              ))}
            </ol>
          </section>
          {view && !aboutSeal && <GradePlot view={view} side={side} />}
          {finding.settled_by !== undefined && (
            <section>
              <h2 className="group-head">{done ? 'What was done' : 'What was decided'}</h2>
              <EntryLine entry={lines?.find((l) => l.entry.id === finding.settled_by)?.entry} words={lines?.find((l) => l.entry.id === finding.settled_by)?.words} large />
            </section>
          )}
        </div>
        <aside className="finding-right">
          <Cautions ids={job?.cautions ?? finding.cautions} />
          <HowTo finding={finding} job={job} />
          {job && job.materials.length > 0 && <Shopping materials={job.materials} head="Material for this job" />}
          {station && (
            <p className="mut small">
              <a href={desk.place(id, station.id)}>Everything known about {lowerFirst(where)}</a>
            </p>
          )}
        </aside>
      </div>
    </main>
  );
};

const REACH = {
  ground: 'Reached from the ground',
  ladder: 'Reached from a ladder',
  roof: 'Reached from the roof',
  under: 'Reached from below',
  inside: 'Reached from inside',
} as const;

const EntryLine = ({ entry, words, large = false }: { readonly entry: Entry | undefined; readonly words: string | undefined; readonly large?: boolean }) =>
  entry ? (
    <p className={large ? '' : 'mut small'}>
      {kindById(entry.kind)?.title ?? entry.kind}: {words}. {whenWords(entry.observed_at)}, by {entry.by}.
    </p>
  ) : null;

/** What can be recorded about a finding. No rule is set aside without an entry that says who did so. */
const Actions = ({ finding }: { readonly finding: Finding }) => {
  const { id, overview } = useDesk();
  const station = stationById(overview.rig, findingStation(finding));
  const at = { ...(station ? { station: station.id } : {}), finding: finding.id };
  const has = (kind: string): boolean => kindById(kind) !== undefined;
  const proofDue = finding.life === 'proof-due';
  const [care, again] = kindsFor(finding, station?.bead);
  return (
    <div className="buttons finding-actions">
      {proofDue && has('proof-seen') && (
        <a className="button primary" href={desk.add(id, { kind: 'proof-seen', ...at })}>
          Record that it held
        </a>
      )}
      {care !== undefined && !proofDue && (
        <a className="button primary" href={desk.add(id, { kind: care, ...at })}>
          Record the work
        </a>
      )}
      <a className="button" href={desk.add(id, { ...(again === undefined ? {} : { kind: again }), ...(station ? { station: station.id } : {}) })}>
        Look again
      </a>
      {has('put-off') && (
        <a className="button" href={desk.add(id, { kind: 'put-off', ...at })}>
          Put off
        </a>
      )}
      {has('declined') && (
        <a className="button" href={desk.add(id, { kind: 'declined', ...at })}>
          Decline
        </a>
      )}
      {has('judged-otherwise') && (
        <a className="button" href={desk.add(id, { kind: 'judged-otherwise', ...at })}>
          Judge otherwise
        </a>
      )}
      {has('handed-over') && (
        <a className="button" href={desk.add(id, { kind: 'handed-over', ...at })}>
          Hand over
        </a>
      )}
      <a className="button" href={desk.add(id, { ...at })}>
        Something else was done
      </a>
    </div>
  );
};

/** Which care is likeliest, and with which kind of entry the place is looked at again. */
const kindsFor = (finding: Finding, bead: string | undefined): readonly [care: string | undefined, again: string | undefined] => {
  const known = (id: string): string | undefined => (kindById(id) ? id : undefined);
  if (finding.rule.includes('tyre-pressure') || finding.rule.includes('low')) return [known('pressure-set'), known('tyre-pressure')];
  if (finding.rule.includes('tyre')) return [known('tyre-fitted'), known('tyre-sidewall') ?? known('tyre-pressure')];
  if (finding.rule.includes('seal') || (bead !== undefined && bead !== 'none' && finding.remedies[0]?.startsWith('reseal'))) return [known('resealed'), known('seal-grade')];
  if (finding.remedies[0]?.includes('lubricat')) return [known('lubricated'), known('look')];
  if (finding.remedies[0]?.includes('paint')) return [known('spot-painted'), known('look')];
  return [known('replaced') ?? known('professional-work'), known('look')];
};

const Cautions = ({ ids }: { readonly ids: readonly string[] }) => {
  const known = ids.flatMap((c) => caution(c) ?? []);
  if (known.length === 0) return null;
  return (
    <section className="cautions">
      <h2 className="group-head">Before the hand moves</h2>
      {known.map((c) => (
        <div key={c.id} className="caution">
          <p>
            <b>{c.warning}</b> {c.do}
          </p>
        </div>
      ))}
      <p className="mut small">The maker’s manual, local rules and licensed trades come first.</p>
    </section>
  );
};

const HowTo = ({ finding, job }: { readonly finding: Finding; readonly job: Job | undefined }) => {
  const known = finding.remedies.flatMap((r) => remedy(r) ?? []);
  const first = job?.remedy === undefined ? known[0] : (remedy(job.remedy) ?? known[0]);
  const others = known.filter((r) => r.id !== first?.id);
  if (!job && !first) return null;
  const steps = job && job.steps.length > 0 ? job.steps : (first?.steps ?? []);
  return (
    <section>
      <h2 className="group-head">
        {finding.who === 'professional' ? 'What a professional is likely to do' : 'How to put it right'}
        <span className="mut"> {minutesWords(job?.minutes ?? first?.minutes)}</span>
      </h2>
      <ol className="how-steps">
        {steps.map((s) => (
          <li key={s}>{upperFirst(s)}</li>
        ))}
      </ol>
      <Terms remedy={first} job={job} />
      {others.length > 0 && (
        <details>
          <summary>{count(others.length, 'other way', 'other ways')}</summary>
          {others.map((r) => (
            <div key={r.id} className="other-way">
              <h3>
                {upperFirst(r.id.replaceAll('-', ' '))} <span className="mut">{minutesWords(r.minutes)}</span>
              </h3>
              <ol className="how-steps">
                {r.steps.map((s) => (
                  <li key={s}>{upperFirst(s)}</li>
                ))}
              </ol>
              <Terms remedy={r} job={undefined} />
            </div>
          ))}
        </details>
      )}
    </section>
  );
};

const Terms = ({ remedy: r, job }: { readonly remedy: Remedy | undefined; readonly job: Job | undefined }) => {
  const rows: readonly (readonly [string, string | undefined])[] = [
    ['Must be true first', job?.must_be_true ?? r?.must_be_true],
    ['Tools', r?.tools],
    ['Material', r?.materials],
    ['Shows that it held', job?.prove ?? r?.prove],
    ['Hand over when', r?.hand_over],
  ];
  return (
    <dl className="terms">
      {rows.map(([term, words]) =>
        words === undefined || words === '' ? null : (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{words}</dd>
          </div>
        ),
      )}
    </dl>
  );
};

/** The same place, photograph by photograph. */
export const Photos = ({ lines, station }: { readonly lines: readonly Entry[]; readonly station: string | undefined }) => {
  const shots = lines
    .toSorted((a, b) => (a.observed_at < b.observed_at ? -1 : 1))
    .filter((e) => station !== undefined && stationOf(e.place) === station)
    .flatMap((e) => (e.photos ?? []).map((p) => ({ hash: p.hash, when: e.observed_at, title: kindById(e.kind)?.title ?? '' })));
  if (shots.length === 0) return null;
  const some = shots.slice(-6);
  return (
    <section>
      <h2 className="group-head">
        Photographs <span className="mut">{shots.length > some.length ? `the last ${some.length} of ${shots.length}` : ''}</span>
      </h2>
      <ul className="photo-strip">
        {some.map((s) => (
          <li key={`${s.hash}${s.when}`}>
            <Photo hash={s.hash} words={`${s.title}, ${whenWords(s.when)}`} />
            <span className="small">{whenWords(s.when)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
};
