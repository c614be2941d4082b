import { useEffect, useState } from 'react';
import type { Job } from '../../../../src/plan';
import { type AnyKind, type Draft, type Field, type PhotoRef, WHOLE_RIG } from '../../../../src/terms';
import type { Overview } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText, today } from '../../shared/clock';
import { Over } from '../../shared/dialog';
import { PageTitle } from '../../shared/page-title';
import { go, href } from '../../shared/route';
import { byOf, useSettings } from '../../shared/settings';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { Ask, LiveKeys } from '../visit/ask';
import { type Answers, type Change, changed, ready } from '../visit/form';
import { NumberCells } from '../visit/number-cells';
import { PhotoButton } from '../visit/photo-pair';
import { careFor } from './care-for';

type Held = { readonly kind: string; readonly answers: Answers; readonly note: string; readonly photos: readonly PhotoRef[] };

const isHeld = (saved: unknown): saved is Held => typeof saved === 'object' && saved !== null && 'answers' in saved;

/** What was done at this job, from the care kind's own fields. It names the findings it settles; they stay until they are proved. */
export const CareForm = ({ overview, job }: { readonly overview: Overview; readonly job: Job }) => {
  const { rig, plan, record } = overview;
  const session = useSession();
  const settings = useSettings();
  const offered = careFor(job.remedy, job.who === 'professional');
  const [held, setHeld] = useState<Held>({ kind: offered[0]?.id ?? '', answers: {}, note: '', photos: [] });
  const [choosing, setChoosing] = useState(false);
  const [live, setLive] = useState<string>();
  const [keeping, setKeeping] = useState(false);
  const [agreed, setAgreed] = useState('');
  const draft = `${rig.id}/care/${job.id}`;

  useEffect(() => {
    session.draft(draft).then(
      (saved) => {
        if (isHeld(saved)) setHeld(saved);
      },
      () => undefined,
    );
  }, [session, draft]);

  const kind: AnyKind | undefined = offered.find((k) => k.id === held.kind) ?? offered[0];
  if (!kind) return null;
  const put = (next: Held): void => {
    setHeld(next);
    session.saveDraft(draft, next).catch((cause: unknown) => reportTrouble(keepTrouble(cause)));
  };
  const change = (what: Change): void => put({ ...held, answers: changed(kind, held.answers, what, settings) });
  const state = ready(kind, held.answers, today());
  const complete = state.state === 'complete';
  const doubt = complete ? state.doubts[0] : undefined;
  const asked = doubt !== undefined && agreed !== JSON.stringify(held.answers);

  const keep = async (): Promise<void> => {
    if (!complete) return;
    if (asked) return setAgreed(JSON.stringify(held.answers));
    setKeeping(true);
    const finding = plan.findings.find((f) => job.findings.includes(f.id));
    const entry: Draft = {
      rig: rig.id,
      kind: kind.id,
      version: kind.version,
      observed_at: nowText(),
      by: byOf(settings),
      place: finding?.place ?? (job.station === undefined ? WHOLE_RIG : { at: 'station', station: job.station, side: 'outside' }),
      body: state.body,
      concerns: job.findings,
      ...(held.note === '' ? {} : { note: held.note }),
      ...(held.photos.length === 0 ? {} : { photos: held.photos }),
    };
    try {
      await session.keep([entry]);
      await session.saveDraft(draft, undefined);
      await session.saveDraft(`${rig.id}/job/${job.id}`, undefined);
      announce(`Kept: ${kind.title.toLowerCase()}.`);
      go(href('rig', rig.id, 'plan'));
    } catch (cause) {
      setKeeping(false);
      reportTrouble(keepTrouble(cause));
    }
  };

  const liveEntry = live === undefined ? undefined : numberEntry(kind, live);
  return (
    <Frame
      cells={['Work done', `Job ${plan.jobs.indexOf(job) + 1}`]}
      back={{ to: href('rig', rig.id, 'job', job.id), name: 'Back to the job' }}
      record={record}
      ruled
      dock={
        <>
          <Primary
            words={keeping ? 'Keeping it' : asked ? 'Yes, that is right' : 'Keep this work'}
            second={
              state.state === 'empty'
                ? 'say what was done'
                : state.state === 'unfinished'
                  ? `still to answer: ${state.missing[0]?.toLowerCase()}`
                  : state.state === 'refused'
                    ? state.refusals[0]?.sentence
                    : `${job.findings.length === 1 ? 'one finding is' : `${job.findings.length} findings are`} then proof due`
            }
            act={() => void keep()}
            disabled={!complete || keeping}
          />
          <Cell act={() => setChoosing(true)}>Other work</Cell>
          <Cell to={href('rig', rig.id, 'job', job.id)}>Not now</Cell>
        </>
      }
    >
      <PageTitle id={`care ${job.id}`} title={`Record: ${job.title}`}>
        {kind.title}: {job.title}
      </PageTitle>
      <p>{kind.meaning}</p>
      {asked && <p className="refusal">{doubt.sentence}</p>}
      <div className="group">
        <Ask
          kind={kind}
          answers={held.answers}
          live={live}
          opened={undefined}
          last={undefined}
          defects={[]}
          preferences={settings}
          all
          wide
          change={change}
          focus={setLive}
          open={() => undefined}
        />
      </div>
      <PhotoButton
        words={held.photos.length === 0 ? 'Photo after' : `Another photo (${held.photos.length} kept)`}
        name={job.title}
        add={(photo) => put({ ...held, photos: [...held.photos, photo] })}
      />
      <label className="ask">
        <span className="label">Note</span>
        <textarea className="text-in" value={held.note} maxLength={4000} onChange={(e) => put({ ...held, note: e.currentTarget.value })} />
      </label>
      {liveEntry && (
        <Over label={liveEntry[1].label} close={() => setLive(undefined)}>
          <NumberCells fields={[liveEntry]} answers={held.answers} live={live} preferences={settings} focus={() => undefined} change={change} />
          <LiveKeys entry={liveEntry} change={change} />
          <Primary words="Done" act={() => setLive(undefined)} />
        </Over>
      )}
      {choosing && (
        <Over label="What was done" close={() => setChoosing(false)}>
          <h2>What was done?</h2>
          <fieldset className="choices lines" aria-label="What was done">
            {offered.map((k) => (
              <button
                key={k.id}
                type="button"
                className="press"
                aria-pressed={k.id === kind.id}
                onClick={() => {
                  put({ ...held, kind: k.id, answers: k.id === kind.id ? held.answers : {} });
                  setChoosing(false);
                }}
              >
                <b>{k.title}</b>
              </button>
            ))}
          </fieldset>
        </Over>
      )}
    </Frame>
  );
};

const numberEntry = (kind: AnyKind, key: string) => {
  const field: Field | undefined = kind.fields[key];
  return field?.type === 'number' ? ([key, field] as const) : undefined;
};
