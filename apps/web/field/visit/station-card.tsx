import { useMemo, useState } from 'react';
import { asksAt, couldNotSee, kindById } from '../../../../src/entries';
import type { AnyKind, Side, Station } from '../../../../src/terms';
import { type Preferences, showDay } from '../../../../src/units';
import type { Overview, RoundStep, RoundView, StationView } from '../../session/session';
import { useSession, useStation } from '../../session/use-session';
import { nowText, today } from '../../shared/clock';
import { useKeys } from '../../shared/keys';
import { PageTitle } from '../../shared/page-title';
import { lowerFirst, stationById, whereWords } from '../../shared/rig-words';
import { href } from '../../shared/route';
import { byOf, useSettings } from '../../shared/settings';
import { UndoSign } from '../../shared/signs';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { Locator } from '../locator';
import { leftWords } from '../walk/pace';
import { StitchLine } from '../walk/stitch-line';
import { Ask } from './ask';
import { formOf, ready } from './form';
import { forgetKept, lastKept, rememberKept } from './last-kept';
import { LookLines } from './look-lines';
import { MoreSheet } from './more-sheet';
import { NotSeen } from './not-seen';
import { PhotoPair } from './photo-pair';
import { type Doing, partnerOf, primaryOf } from './primary';
import { useVisit } from './use-visit';
import { Verdict } from './verdict';
import { agreedTo, answersOf, isOneTap, nextKind } from './visit';

type Props = { readonly overview: Overview; readonly round: RoundView; readonly index: number; readonly toStep: (index: number) => void; readonly onward: (from: number) => void };

/** One stop of a round. Waits for what is known about the place, so that last and now stand side by side. */
export const StationCard = (props: Props) => {
  const { overview, round, index } = props;
  const step = round.steps[index];
  const station = stationById(overview.rig, step?.station);
  const view = useStation(overview.rig.id, step?.station ?? '');
  if (!step || !station) return <Gone {...props} />;
  if (!view) return <Opening {...props} step={step} station={station} />;
  return <Card key={`${round.id} ${step.station} ${step.side}`} {...props} step={step} station={station} view={view} />;
};

/** The head stands at once; the fields follow when the place's history has come from the worker. */
const Opening = ({ overview, round, index, step, station }: Props & Pick<Full, 'step' | 'station'>) => (
  <Frame
    cells={[<StopCell key="n" overview={overview} round={round} index={index} />, leftWords(round)]}
    back={{ to: href('rig', overview.rig.id), name: 'Stop here, go on later' }}
    record={overview.record}
    under={<StitchLine steps={round.steps} at={index} />}
    dock={
      <>
        <Primary words="One moment" disabled />
        <Cell disabled>Could not see it</Cell>
        <Cell undo disabled>
          <UndoSign /> Undo
        </Cell>
      </>
    }
  >
    <div className="station-head">
      <div>
        <h1>{station.name}</h1>
        <p>{whereWords(overview.rig, station, step.side)}</p>
      </div>
      <Locator rig={overview.rig} station={station} side={step.side} />
    </div>
  </Frame>
);

const StopCell = ({ overview, round, index }: Pick<Props, 'overview' | 'round' | 'index'>) => (
  <a className="plain" href={href('rig', overview.rig.id, 'round', 'list')} aria-label={`Stop ${index + 1} of ${round.steps.length}. Show all stops`}>
    {index + 1} of {round.steps.length}
  </a>
);

const Gone = ({ overview, round, index, onward }: Props) => (
  <Frame cells={[`${index + 1} of ${round.steps.length}`]} record={overview.record} dock={<Primary words="Go on" act={() => onward(index)} />}>
    <PageTitle id={`gone ${index}`} title="No longer there">
      This place is no longer on the rig
    </PageTitle>
    <p>It was taken out after the round had begun. What was recorded there stays in the logbook.</p>
  </Frame>
);

const MOST_UNDO = 14;

type Full = Props & { readonly step: RoundStep; readonly station: Station; readonly view: StationView };

const answeredKinds = (view: StationView, side: Side, round: RoundView): ReadonlySet<string> =>
  new Set(view.through.filter((t) => t.side === side && t.entries.some((e) => e.entry.round !== round.id)).map((t) => t.kind));

const Card = ({ overview, round, index, toStep, onward, step, station, view }: Full) => {
  const { rig, record } = overview;
  const session = useSession();
  const settings = useSettings();
  const [sheet, setSheet] = useState<'more' | 'not-seen'>();
  const [added, setAdded] = useState<readonly string[]>([]);
  const [all, setAll] = useState(false);
  /** While an answer is being written nothing else can be pressed by haste. */
  const [busy, setBusy] = useState(false);

  const offered = useMemo(() => asksAt(station, step.side, round.form, answeredKinds(view, step.side, round)), [station, step.side, round, view]);
  const asks = useMemo(() => [...offered.asks, ...offered.also.filter((k) => added.includes(k.id))], [offered, added]);
  const controls = useVisit({ rig: rig.id, round, step, stationName: station.name, view, asks });
  const { visit, verdict } = controls;
  const active: AnyKind | undefined = visit ? (asks.find((k) => k.id === visit.active) ?? asks[0]) : undefined;

  const before = useMemo(() => lastOf(view, step.side, round, active, settings), [view, step.side, round, active, settings]);
  const nextStep = nextStepOf(round, index);
  const nextStation = stationById(rig, nextStep?.station);

  const walkOn = async (): Promise<void> => {
    const now = controls;
    if (await now.leave()) onward(index);
  };

  /** After a kind is kept: the next kind of this station, or the next station. */
  const goOn = async (): Promise<void> => {
    if (!visit || busy) return;
    setBusy(true);
    try {
      if (!(await controls.keep())) return;
      const next = nextKind(visit, asks);
      if (next) controls.turnTo(next);
      else await walkOn();
    } finally {
      setBusy(false);
    }
  };

  const sameAsLast = (kind: AnyKind): void => {
    if (!before) return;
    controls.repeat(kind, formOf(kind, before.body));
    void goOn();
  };

  const choose = (kind: AnyKind, what: Parameters<typeof controls.change>[1]): void => {
    const next = controls.change(kind, what);
    if (!next || what.do === 'key' || what.do === 'unit' || what.do === 'text') return;
    // A word beside a figure that has been typed is the step to the next figure.
    const live = next.live;
    if (what.do === 'choose' && live !== undefined && answersOf(next, kind.id)[live] !== undefined) {
      const partner = partnerOf(kind, live, answersOf(next, kind.id));
      if (partner !== undefined) controls.look({ live: partner });
      return;
    }
    if (isOneTap(next, kind)) void goOn();
    else if (agreedTo(next, kind) && !hasNumbersOpen(kind, next.live)) void controls.keep();
  };

  const doing: Doing | undefined =
    visit && active
      ? primaryOf({
          kind: active,
          answers: answersOf(visit, active.id),
          visit,
          agreed: agreedTo(visit, active),
          before: before && { words: before.words, repeatable: active.repeatable },
          nextKind: nextKind(visit, asks)?.title,
          next: nextStation ? { name: nextStation.name, same: nextStep?.group === step.group, group: nextStep?.group ?? '' } : undefined,
          by: settings.by.trim(),
          found: verdict.length > 0,
          today: today(),
        })
      : undefined;

  const press = (): void => {
    if (!doing || !visit || !active || doing.disabled || busy) return;
    switch (doing.does) {
      case 'same':
        sameAsLast(active);
        return;
      case 'sound':
        choose(active, { do: 'choose', field: active.sound?.field ?? '', option: active.sound?.answer ?? '' });
        return;
      case 'focus':
        controls.look({ live: doing.field });
        return;
      case 'close-keys':
        controls.look({ live: undefined });
        setAll(true);
        void controls.keep();
        return;
      case 'agree':
        controls.agree(active);
        return;
      case 'on':
        void goOn();
    }
  };

  const last = lastKept(rig.id);
  const here = active && visit?.kept[active.id];
  const given = active && visit && ready(active, answersOf(visit, active.id)).state !== 'empty';
  const undoWords = given
    ? undoWord(active, visit ? answersOf(visit, active.id) : {})
    : last && last.words.length <= MOST_UNDO
      ? `Undo ${lowerFirst(last.words)}`
      : last
        ? 'Undo last'
        : 'Undo';
  const undoSpoken = given || !last ? undoWords : `Undo ${last.words}`;
  const undo = async (): Promise<void> => {
    if (active && given) {
      await controls.undo(active.id);
      if (here) forgetKept();
      return;
    }
    if (!last) return;
    try {
      await session.undo(rig.id, last.entry, byOf(settings));
      forgetKept();
      const at = round.steps.findIndex((s) => s.station === last.station && s.side === last.side);
      if (at >= 0) toStep(at);
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    }
  };

  const notSeen = async (reason: string, note: string): Promise<void> => {
    if (!(await controls.leave())) return;
    try {
      const [entry] = await session.keep([
        {
          rig: rig.id,
          kind: couldNotSee.id,
          version: couldNotSee.version,
          observed_at: nowText(),
          by: byOf(settings),
          place: { at: 'station', station: step.station, side: step.side },
          body: { reason },
          round: round.id,
          ...(visit ? { spent_s: Math.max(0, Math.round((Date.now() - visit.began) / 1000)) } : {}),
          ...(note === '' ? {} : { note }),
        },
      ]);
      if (entry) rememberKept({ rig: rig.id, entry: entry.id, kind: couldNotSee.id, station: step.station, side: step.side, words: station.name });
      setSheet(undefined);
      onward(index);
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    }
  };

  const anyGiven = visit && Object.keys(visit.forms).some((k) => Object.keys(answersOf(visit, k)).length > 0);
  useKeys(
    sheet === undefined && visit && active
      ? {
          Enter: press,
          u: () => void undo(),
          n: () => setSheet('more'),
          x: () => setSheet('not-seen'),
          Backspace: visit.live !== undefined ? () => choose(active, { do: 'key', field: visit.live ?? '', key: 'erase' }) : undefined,
          ...digitKeys(active, visit.live, answersOf(visit, active.id), choose),
        }
      : {},
  );

  if (sheet === 'not-seen')
    return (
      <NotSeen
        overview={overview}
        round={round}
        index={index}
        station={station}
        step={step}
        last={before && `${before.day}: ${before.words}`}
        give={notSeen}
        later={() => {
          setSheet(undefined);
          onward(index);
        }}
        back={() => setSheet(undefined)}
      />
    );

  const state = active && visit ? ready(active, answersOf(visit, active.id)) : undefined;
  const keysOpen = visit?.live !== undefined;
  const typingCode = visit?.live !== undefined && active?.fields[visit.live]?.type === 'code';
  return (
    <Frame
      cells={[<StopCell key="n" overview={overview} round={round} index={index} />, leftWords(round)]}
      back={{ to: href('rig', rig.id), name: 'Stop here, go on later' }}
      record={record}
      under={<StitchLine steps={round.steps} at={index} />}
      dock={
        <>
          {busy ? (
            <Primary words="Keeping it" second={station.name} />
          ) : (
            <Primary words={doing?.words ?? 'One moment'} second={doing?.second} act={press} disabled={doing === undefined || doing.disabled === true} />
          )}
          {anyGiven && given ? <Cell act={() => setSheet('more')}>Note or more</Cell> : <Cell act={() => setSheet('not-seen')}>Could not see it</Cell>}
          <Cell undo act={() => void undo()} disabled={!given && !last} spoken={undoSpoken}>
            <UndoSign /> {undoWords}
          </Cell>
        </>
      }
    >
      <div className={`station-head${keysOpen ? ' keyed' : ''}${keysOpen && (verdict.length > 0 || typingCode) ? ' tight' : ''}`}>
        <div>
          <PageTitle id={`${step.station} ${step.side}`} title={`${index + 1} of ${round.steps.length}, ${station.name}`}>
            {station.name}
          </PageTitle>
          <p>{whereWords(rig, station, step.side)}</p>
        </div>
        <Locator rig={rig} station={station} side={step.side} />
      </div>
      {!keysOpen && !anyGiven && <LookLines looks={view.looks} />}
      {!keysOpen && (asks.length === 1 || !anyGiven) && (
        <PhotoPair last={before && { day: before.day, words: before.words, photo: before.photo }} photos={visit?.photos ?? []} name={station.name} add={controls.photo} />
      )}
      {visit &&
        !keysOpen &&
        !given &&
        asks.filter((k) => k !== active && visit.kept[k.id]).map((k) => <DoneRow key={k.id} kind={k} visit={visit} open={() => controls.turnTo(k)} />)}
      {asks.length > 1 && active && (
        <h2>
          {active.title}
          <small className="of">
            {' '}
            {asks.indexOf(active) + 1} of {asks.length} here
          </small>
        </h2>
      )}
      {visit && active && (
        <div className="low group">
          <Ask
            kind={active}
            answers={answersOf(visit, active.id)}
            live={visit.live}
            opened={visit.opened}
            last={before && formOf(active, before.body)}
            defects={view.defects}
            preferences={settings}
            all={all || verdict.length > 0 ? 'choices' : false}
            found={verdict.length > 0}
            verdict={<Verdict findings={verdict} brief={keysOpen} />}
            change={(what) => choose(active, what)}
            focus={(live) => controls.look({ live })}
            open={(opened) => controls.look({ opened })}
          />
        </div>
      )}
      {state?.state === 'refused' && !keysOpen && (
        <p className="refusal" role="alert">
          {state.refusals[0]?.sentence}
        </p>
      )}
      {state?.state === 'complete' && !agreedTo(visit as NonNullable<typeof visit>, active as AnyKind) && <p className="refusal">{state.doubts[0]?.sentence}</p>}
      {sheet === 'more' && visit && active && (
        <MoreSheet
          kind={active}
          visit={visit}
          asks={asks}
          also={offered.also.filter((k) => !added.includes(k.id))}
          preferences={settings}
          stationName={station.name}
          change={(what) => controls.change(active, what)}
          note={controls.note}
          photo={controls.photo}
          add={(kind) => {
            setAdded([...added, kind.id]);
            controls.turnTo(kind);
            setSheet(undefined);
          }}
          notSeen={() => setSheet('not-seen')}
          close={() => setSheet(undefined)}
        />
      )}
    </Frame>
  );
};

const DoneRow = ({ kind, visit, open }: { readonly kind: AnyKind; readonly visit: NonNullable<ReturnType<typeof useVisit>['visit']>; readonly open: () => void }) => {
  const settings = useSettings();
  const state = ready(kind, answersOf(visit, kind.id));
  return (
    <button type="button" className="press done-row" onClick={open}>
      <b>{kind.title}</b> {state.state === 'complete' ? kind.line(state.body, settings) : ''}
    </button>
  );
};

const hasNumbersOpen = (kind: AnyKind, live: string | undefined): boolean => live !== undefined && live in kind.fields;

type Before = { readonly body: Readonly<Record<string, unknown>>; readonly words: string; readonly day: string; readonly photo: string | undefined };

/** The last answer of this kind before this round; `could not see it` never counts as one. */
const lastOf = (view: StationView, side: Side, round: RoundView, kind: AnyKind | undefined, preferences: Preferences): Before | undefined => {
  if (!kind) return undefined;
  const standing = view.through.find((t) => t.side === side && t.kind === kind.id)?.entries.findLast((e) => e.entry.round !== round.id);
  if (!standing) return undefined;
  const known = kindById(standing.entry.kind);
  const body = standing.body as Readonly<Record<string, unknown>>;
  return { body, words: known?.line(body, preferences) ?? '', day: showDay(standing.day, true), photo: standing.entry.photos?.at(-1)?.hash };
};

const nextStepOf = (round: RoundView, index: number): RoundStep | undefined => {
  const order = [...round.steps.slice(index + 1), ...round.steps.slice(0, index)];
  return order.find((s) => s.answered === 'no');
};

const undoWord = (kind: AnyKind, answers: ReturnType<typeof answersOf>): string => {
  const [key, raw] = Object.entries(answers)[0] ?? [];
  const field = key === undefined ? undefined : kind.fields[key];
  if (field?.type === 'choice') {
    const word = field.options.find((o: { readonly id: string }) => o.id === raw)?.word ?? '';
    const short = /^[A-Z]\d(?= )/.exec(word)?.[0] ?? word;
    return short.length <= MOST_UNDO ? `Undo ${lowerFirst(short)}` : 'Undo answer';
  }
  return typeof raw === 'object' && 'text' in raw ? `Undo ${raw.text}` : 'Undo answer';
};

const digitKeys = (
  kind: AnyKind,
  live: string | undefined,
  answers: ReturnType<typeof answersOf>,
  choose: (kind: AnyKind, what: Parameters<ReturnType<typeof useVisit>['change']>[1]) => void,
): Readonly<Record<string, () => void>> => {
  const digits = '0123456789'.split('');
  if (live !== undefined) {
    const key = (k: string) => () => choose(kind, { do: 'key', field: live, key: k });
    return { ...Object.fromEntries(digits.map((d) => [d, key(d)])), '.': key('.'), ',': key('.'), '-': key('−') };
  }
  const field = Object.entries(kind.fields as Readonly<Record<string, { readonly type: string; readonly options?: readonly { readonly id: string }[] }>>).find(
    ([k, f]) => f.type === 'choice' && (answers[k] === undefined || Object.keys(answers).length === 1),
  );
  if (!field) return {};
  return Object.fromEntries((field[1].options ?? []).slice(0, 9).map((o, i) => [String(i + 1), () => choose(kind, { do: 'choose', field: field[0], option: o.id })]));
};
