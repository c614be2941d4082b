import { useState } from 'react';
import { kindById } from '../../../../src/entries';
import type { AnyKind, Field } from '../../../../src/terms';
import { civilDay, isoDay } from '../../../../src/units';
import type { Overview } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText, today } from '../../shared/clock';
import { Over } from '../../shared/dialog';
import { PageTitle } from '../../shared/page-title';
import { go, href, useRoute, withQuery } from '../../shared/route';
import { byOf, useSettings } from '../../shared/settings';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { Ask, LiveKeys } from '../visit/ask';
import { type Answers, changed, ready } from '../visit/form';
import { NumberCells } from '../visit/number-cells';
import { type PlaceChoice, placesFor } from './note-places';
import { unbroken } from './unbroken';
import { useDraft } from './use-series';
import { leakOf } from './water-of';

type Held = { readonly answers: Answers; readonly place: string; readonly ago: number };

const readHeld =
  (start: Held) =>
  (saved: unknown): Held => {
    const found = saved as Partial<Held> | undefined;
    return typeof found === 'object' && found !== null && typeof found.answers === 'object' ? { ...start, ...found } : start;
  };

/** One entry of a kind, from the kind's own fields: where it was and on which day are asked only where that is open. */
export const NoteForm = ({ overview, kind: id }: { readonly overview: Overview; readonly kind: string }) => {
  const kind = kindById(id);
  const back = href('rig', overview.rig.id, 'water');
  if (!kind)
    return (
      <Frame cells={['Water']} record={overview.record} dock={<Primary words="Back to water" to={back} />}>
        <PageTitle id="no kind" title="No such entry">
          There is no such kind of entry
        </PageTitle>
      </Frame>
    );
  return <Form key={id} overview={overview} kind={kind} />;
};

const Form = ({ overview, kind }: { readonly overview: Overview; readonly kind: AnyKind }) => {
  const { rig, plan, record } = overview;
  const { query } = useRoute();
  const session = useSession();
  const settings = useSettings();
  const leak = leakOf(plan.water, query['leak']);
  const places = placesFor(overview, kind, leak, query['station'], settings);
  const cause: Field | undefined = kind.fields['cause'];
  const asked = cause?.type === 'choice' && cause.options.some((o) => o.id === query['cause']) ? query['cause'] : undefined;
  const sought = leak?.other_causes.find((c) => c.cause === query['cause']);
  const draft = `${rig.id}/water-note/${kind.id}${asked === undefined ? '' : `/${asked}`}`;
  const [held, put] = useDraft<Held>(draft, readHeld({ answers: asked === undefined ? {} : { cause: asked }, place: places[0]?.key ?? '', ago: 0 }));
  const [live, setLive] = useState<string>();
  const [choosing, setChoosing] = useState(false);
  const [busy, setBusy] = useState(false);
  const [agreed, setAgreed] = useState('');
  const back = href('rig', rig.id, 'water');
  if (!held)
    return (
      <Frame cells={['Water']} record={record} dock={<Primary words="One moment" disabled />}>
        {null}
      </Frame>
    );

  const place = places.find((p) => p.key === held.place) ?? places[0];
  const byDay = kind.group === 'whereabouts';
  const state = ready(kind, held.answers, today());
  const doubt = state.state === 'complete' ? state.doubts[0] : undefined;
  const doubted = doubt !== undefined && agreed !== JSON.stringify(held.answers);
  // Rain may be told without an amount, a wind or a word: that it rained is enough.
  const nothingAsked = Object.values(kind.fields as Readonly<Record<string, Field>>).every((f) => f.optional);
  const body = state.state === 'complete' ? state.body : state.state === 'empty' && nothingAsked ? {} : undefined;

  const keep = async (): Promise<void> => {
    if (body === undefined || !place || busy) return;
    if (doubted) return setAgreed(JSON.stringify(held.answers));
    setBusy(true);
    const observed_at = byDay ? isoDay(civilDay(today() - held.ago)) : nowText();
    const concerns = kind.group === 'care' && leak ? { concerns: concernsOf(overview, leak.id) } : {};
    try {
      await session.keep([{ rig: rig.id, kind: kind.id, version: kind.version, observed_at, by: byOf(settings), place: place.place, body, ...concerns }]);
      await session.saveDraft(draft, undefined);
      announce(`Kept: ${kind.title.toLowerCase()}.`);
      go(back);
    } catch (cause) {
      setBusy(false);
      reportTrouble(keepTrouble(cause));
    }
  };

  const liveField: Field | undefined = live === undefined ? undefined : kind.fields[live];
  const liveEntry = live !== undefined && liveField?.type === 'number' ? ([live, liveField] as const) : undefined;
  const nextNumber = live === undefined ? undefined : numbersOf(kind).find(([key]) => key !== live && held.answers[key] === undefined);
  const change = (what: Parameters<typeof changed>[2]): void => put({ ...held, answers: changed(kind, held.answers, what, settings) });
  const second =
    state.state === 'unfinished'
      ? `still to answer: ${state.missing[0]?.toLowerCase()}`
      : state.state === 'refused'
        ? state.refusals[0]?.sentence
        : body === undefined
          ? 'answer above'
          : byDay
            ? dayWords(held.ago)
            : place?.words;
  return (
    <Frame
      cells={['Water']}
      back={{ to: back, name: 'Back to water' }}
      record={record}
      ruled
      dock={
        <>
          <Primary
            words={busy ? 'Keeping it' : doubted ? 'Yes, that is right' : 'Keep it'}
            second={second}
            act={() => void keep()}
            disabled={body === undefined || !place || busy}
          />
          {kind.id === 'air-and-skin' && leak && sought ? (
            <>
              <Cell to={withQuery(href('rig', rig.id, 'water-note', 'other-cause'), { leak: leak.id, cause: sought.cause })}>Known otherwise</Cell>
              <Cell to={back}>Not now</Cell>
            </>
          ) : (
            <Cell wide to={back}>
              Not now
            </Cell>
          )}
        </>
      }
    >
      <PageTitle id={`note ${kind.id}`} title={kind.title}>
        {kind.title}
      </PageTitle>
      <p>{sought?.how ?? kind.meaning}</p>
      {sought && sought.because.text !== '' && <p>{sought.because.text}</p>}
      {doubted && <p className="refusal">{doubt.sentence}</p>}
      <div className="group">
        {places.length > 1 && place && (
          <div className="ask">
            <p className="label">Where</p>
            <button type="button" className="press done-row" onClick={() => setChoosing(true)} aria-label={`Where: ${place.words}. Change it`}>
              <b>{unbroken(place.words)}</b>
            </button>
          </div>
        )}
        {byDay && <DayRow ago={held.ago} set={(ago) => put({ ...held, ago })} />}
        <Ask
          kind={kind}
          answers={held.answers}
          live={undefined}
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
      {liveEntry && (
        <Over label={liveEntry[1].label} close={() => setLive(undefined)}>
          <NumberCells fields={[liveEntry]} answers={held.answers} live={live} preferences={settings} focus={() => undefined} change={change} />
          <LiveKeys entry={liveEntry} change={change} />
          <Primary words={nextNumber ? `Next: ${nextNumber[1].label.toLowerCase()}` : 'Done'} act={() => setLive(nextNumber?.[0])} />
        </Over>
      )}
      {choosing && (
        <Over label="Where" close={() => setChoosing(false)}>
          <h2>Where?</h2>
          <Choices
            places={places}
            chosen={place?.key}
            choose={(key) => {
              put({ ...held, place: key });
              setChoosing(false);
            }}
          />
        </Over>
      )}
    </Frame>
  );
};

const numbersOf = (kind: AnyKind): readonly (readonly [string, Field])[] =>
  Object.entries(kind.fields as Readonly<Record<string, Field>>).filter(([, f]) => f.type === 'number' && !f.optional);

const concernsOf = ({ plan }: Overview, leak: string): readonly string[] => {
  const named = plan.findings.filter((f) => f.raised_by === leak).map((f) => f.id);
  return named.length > 0 ? named : [leak];
};

const DAYS = ['Today', 'Yesterday', '2 days ago'] as const;
const dayWords = (ago: number): string => (DAYS[ago] ?? '').toLowerCase();

const DayRow = ({ ago, set }: { readonly ago: number; readonly set: (ago: number) => void }) => (
  <fieldset className="choices of-3" aria-label="On which day">
    {DAYS.map((word, i) => (
      <button key={word} type="button" className="press" aria-pressed={i === ago} onClick={() => set(i)}>
        {word}
      </button>
    ))}
  </fieldset>
);

const Choices = ({ places, chosen, choose }: { readonly places: readonly PlaceChoice[]; readonly chosen: string | undefined; readonly choose: (key: string) => void }) => (
  <fieldset className="choices lines" aria-label="Where">
    {places.map((p) => (
      <button key={p.key} type="button" className="press" aria-pressed={p.key === chosen} onClick={() => choose(p.key)}>
        <b>{p.words}</b>
      </button>
    ))}
  </fieldset>
);
