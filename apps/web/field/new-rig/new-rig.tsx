import { useEffect, useMemo, useState } from 'react';
import { rigSheet } from '../../../../src/drawing';
import { rigDescribed, setPressure } from '../../../../src/entries';
import { blankRig, kindLimits, type Rig, startingLayout } from '../../../../src/rig';
import { WHOLE_RIG } from '../../../../src/terms';
import { readQuantity, show, type UnitSystem } from '../../../../src/units';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText } from '../../shared/clock';
import { DrawingView } from '../../shared/drawing-view';
import { useKeys } from '../../shared/keys';
import { PageTitle } from '../../shared/page-title';
import { upperFirst } from '../../shared/rig-words';
import { go, href } from '../../shared/route';
import { byOf, useChangeSettings, useSettings } from '../../shared/settings';
import { UndoSign } from '../../shared/signs';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { askPersist } from '../persist';
import { PHONE_SHEET, withoutSmallPrint } from '../phone-sheet';
import { LiveKeys } from '../visit/ask';
import { changed, ERASE, ready } from '../visit/form';
import { NumberCells } from '../visit/number-cells';
import { NumberKeys } from '../visit/number-keys';
import { answersOf, type Given, NOTHING_GIVEN, type QuestionId, questionsFor, SIZES, type SizeKey, sizeOf, stepped, withKind } from './answers';
import { ChoiceGrid } from './choice-grid';
import { Stepper } from './stepper';

const DRAFT = '/new rig';

const TITLES: Readonly<Record<QuestionId, string>> = {
  kind: 'What kind of rig is it?',
  sizes: 'How big is it?',
  year: 'Which model year?',
  skin: 'What is the wall’s skin?',
  construction: 'How is the wall built?',
  roof: 'What covers the roof?',
  axles: 'How many axles?',
  pressure: 'Cold tyre pressure on the label?',
  slides_road: 'Slide-outs on the road side?',
  slides_curb: 'Slide-outs on the curb side?',
  name: 'What do you call it?',
};

const NEXT: Readonly<Record<QuestionId, string>> = {
  kind: 'kind of rig',
  sizes: 'sizes',
  year: 'model year',
  skin: 'wall skin',
  construction: 'how the wall is built',
  roof: 'roof covering',
  axles: 'axles',
  pressure: 'tyre pressure',
  slides_road: 'slide-outs, road side',
  slides_curb: 'slide-outs, curb side',
  name: 'its name',
};

const COUNT_WORDS = ['None', 'One', 'Two', 'Three'] as const;
const SIZE_WORDS: Readonly<Record<SizeKey, string>> = { length_m: 'long with hitch', width_m: 'wide', height_m: 'high with roof unit' };

type Held = { readonly given: Given; readonly at: number };

const isHeld = (saved: unknown): saved is Held => typeof saved === 'object' && saved !== null && 'given' in saved && 'at' in saved;

/** A few answers, and the drawing grows with each of them. Nothing is in the logbook before the last one. */
const NewRig = () => {
  const session = useSession();
  const settings = useSettings();
  const changeSettings = useChangeSettings();
  const [held, setHeld] = useState<Held>({ given: NOTHING_GIVEN, at: 0 });
  const [making, setMaking] = useState(false);
  const { given, at } = held;
  const questions = questionsFor(given);
  const question: QuestionId = questions[Math.min(at, questions.length - 1)] ?? 'kind';
  const following = questions[at + 1];
  const system: UnitSystem = settings.system;

  useEffect(() => {
    session.draft(DRAFT).then(
      (saved) => {
        if (isHeld(saved)) setHeld(saved);
      },
      () => undefined,
    );
  }, [session]);

  const put = (next: Held): void => {
    setHeld(next);
    session.saveDraft(DRAFT, next).catch((cause: unknown) => reportTrouble(keepTrouble(cause)));
  };
  const set = (part: Partial<Given>, on: boolean): void => put({ given: { ...given, ...part }, at: on ? at + 1 : at });
  const replace = (next: Given): void => put({ given: next, at });

  const answers = useMemo(() => answersOf(given, defaultName(given)), [given]);
  const made = useMemo(() => startingLayout(answers), [answers]);
  const drawing = useMemo(() => {
    if (!made.ok || given.kind === undefined) return undefined;
    const rig: Rig = { ...blankRig('new'), ...made.value.layout, name: answers.name, kind: answers.kind };
    return withoutSmallPrint(rigSheet(rig, undefined, { ...PHONE_SHEET, preferences: settings }));
  }, [made, answers, given.kind, settings]);

  const pressure = given.pressure === undefined ? undefined : ready(setPressure, { axle: 'A1', pressure: given.pressure });
  const create = async (): Promise<void> => {
    setMaking(true);
    try {
      const id = await session.newRig(answers, byOf(settings));
      if (pressure?.state === 'complete' && made.ok)
        await session.keep(
          made.value.layout.axles
            .filter((a) => !a.host_vehicle)
            .map((a) => ({
              rig: id,
              kind: setPressure.id,
              version: setPressure.version,
              observed_at: nowText(),
              by: byOf(settings),
              place: WHOLE_RIG,
              body: { ...pressure.body, axle: a.id },
            })),
        );
      await session.saveDraft(DRAFT, undefined);
      announce(`${answers.name} is drawn and kept on this device.`);
      void askPersist();
      go(href('rig', id));
    } catch (cause) {
      setMaking(false);
      reportTrouble(keepTrouble(cause));
    }
  };

  const last = question === 'name';
  const blocked = question === 'kind' ? given.kind === undefined : !made.ok || (question === 'pressure' && pressure?.state === 'refused');
  const next = (): void => {
    if (blocked || making) return;
    if (last) void create();
    else put({ given, at: at + 1 });
  };
  const unknown = (): void => {
    const { [question as keyof Given]: _, ...rest } = given;
    put({ given: { ...NOTHING_GIVEN, ...rest, ...(question === 'sizes' ? { sizes: {} } : {}) }, at: at + 1 });
  };
  const back = (): void => put({ given, at: Math.max(0, at - 1) });
  useKeys({ Enter: next, u: back });

  return (
    <Frame
      cells={[`${Math.min(at, questions.length - 1) + 1} of ${questions.length}`, 'New rig']}
      back={{ to: href('rigs'), name: 'Leave, go on later' }}
      dock={
        <>
          {last ? (
            <Primary
              words={making ? 'Keeping it' : 'Keep this rig'}
              second={made.ok ? `${made.value.layout.stations.length} places to look at` : undefined}
              act={next}
              disabled={blocked || making}
            />
          ) : (
            <Primary words={following === undefined ? 'Next' : `Next: ${NEXT[following]}`} act={next} disabled={blocked} />
          )}
          {!last && (
            <Cell act={unknown} disabled={question === 'kind'}>
              I do not know
            </Cell>
          )}
          <Cell undo wide={last} act={back} disabled={at === 0}>
            <UndoSign /> Back one
          </Cell>
        </>
      }
    >
      {drawing && question !== 'pressure' && <DrawingView drawing={drawing} className="growing" />}
      <Said given={given} system={settings} />
      <PageTitle id={`new ${question}`} title={TITLES[question]} className="question">
        {TITLES[question]}
      </PageTitle>
      {!made.ok && given.kind !== undefined && (
        <p className="refusal" role="alert">
          {made.refusals[0]?.sentence}
        </p>
      )}
      <div className="low group">
        <Answer question={question} given={given} system={system} set={set} replace={replace} by={settings.by} setBy={(by) => changeSettings({ by })} />
      </div>
      {last && made.ok && made.value.left_out.length > 0 && <p>Left out for want of room: {made.value.left_out.join(', ')}. Add what yours has later.</p>}
    </Frame>
  );
};

export default NewRig;

const defaultName = (given: Given): string => (given.kind === undefined ? 'My rig' : `My ${kindLimits(given.kind).word}`);

/** What was said so far, in one strip. */
const Said = ({ given, system }: { readonly given: Given; readonly system: Parameters<typeof show>[2] }) => {
  if (given.kind === undefined) return null;
  const words = [
    upperFirst(kindLimits(given.kind).word),
    ...(given.year ? [given.year] : []),
    `${show(sizeOf(given, 'length_m'), 'length', system)} long`,
    ...(given.axles === undefined ? [] : [given.axles === 1 ? 'one axle' : `${given.axles} axles`]),
  ];
  return (
    <div className="facts">
      {words.map((w) => (
        <span key={w}>{w}</span>
      ))}
    </div>
  );
};

type AnswerProps = {
  readonly question: QuestionId;
  readonly given: Given;
  readonly system: UnitSystem;
  readonly set: (part: Partial<Given>, on: boolean) => void;
  readonly by: string;
  readonly setBy: (by: string) => void;
  readonly replace: (given: Given) => void;
};

const Answer = ({ question, given, system, set, replace, by, setBy }: AnswerProps) => {
  const { fields } = rigDescribed;
  const limits = given.kind === undefined ? undefined : kindLimits(given.kind);
  switch (question) {
    case 'kind':
      return <ChoiceGrid label="Kind" options={fields.kind.options} chosen={given.kind} choose={(kind) => set({ ...withKind(given, kind) }, true)} />;
    case 'sizes':
      return SIZES.map((key) => (
        <Stepper
          key={key}
          label={SIZE_WORDS[key]}
          typical={given.sizes[key] === undefined}
          value_m={sizeOf(given, key)}
          system={system}
          step={(by) => set({ sizes: { ...given.sizes, [key]: stepped(given, key, by, system === 'metric') } }, false)}
          type={(text, unit) => {
            const read = readQuantity(text, 'length', unit);
            if (read.ok) set({ sizes: { ...given.sizes, [key]: read.value.si } }, false);
            return read.ok;
          }}
        />
      ));
    case 'year':
      return (
        <>
          <p className="year-read">
            <b className="figure">{given.year ?? ''}</b> {given.year === undefined ? 'four digits, from the plate beside the door' : ''}
          </p>
          <NumberKeys
            label="Model year"
            press={(key) => {
              const year = key === ERASE ? (given.year ?? '').slice(0, -1) : key === '.' ? (given.year ?? '') : `${given.year ?? ''}${key}`.slice(0, 4);
              const { year: _, ...rest } = given;
              replace(year === '' ? rest : { ...rest, year });
            }}
          />
        </>
      );
    case 'skin':
      return <ChoiceGrid label="Wall skin" options={fields.skin.options.filter((o) => o.id !== 'unknown')} chosen={given.skin} choose={(skin) => set({ skin }, true)} />;
    case 'construction':
      return (
        <ChoiceGrid
          label="Wall construction"
          lines
          options={fields.construction.options.filter((o) => o.id !== 'unknown')}
          chosen={given.construction}
          choose={(construction) => set({ construction }, true)}
        />
      );
    case 'roof':
      return <ChoiceGrid label="Roof covering" options={fields.roof.options.filter((o) => o.id !== 'unknown')} chosen={given.roof} choose={(roof) => set({ roof }, true)} />;
    case 'pressure':
      return <LabelPressure given={given} replace={replace} />;
    case 'axles':
    case 'slides_road':
    case 'slides_curb': {
      const [least, most] = question === 'axles' ? (limits?.axles ?? [1, 3]) : [0, (question === 'slides_road' ? limits?.slides[0] : limits?.slides[1]) ?? 2];
      const options = Array.from({ length: most - least + 1 }, (_, i) => ({ id: String(least + i), word: COUNT_WORDS[least + i] ?? String(least + i) }));
      const chosen = given[question];
      return (
        <ChoiceGrid label={TITLES[question]} options={options} chosen={chosen === undefined ? undefined : String(chosen)} choose={(n) => set({ [question]: Number(n) }, true)} />
      );
    }
    case 'name':
      return (
        <>
          <label className="ask">
            <span className="label">Name of the rig</span>
            <input className="text-in" value={given.name} maxLength={80} placeholder={defaultName(given)} onChange={(e) => set({ name: e.currentTarget.value }, false)} />
          </label>
          <label className="ask">
            <span className="label">
              Your name<small>, written beside what you record</small>
            </span>
            <input className="text-in" value={by} maxLength={80} autoComplete="name" onChange={(e) => setBy(e.currentTarget.value)} />
          </label>
          <p>All sizes are typical until you confirm yours.</p>
        </>
      );
  }
};

/** The number that every later reading is held against: from the label of the rig, not from the tyre's sidewall. */
const LabelPressure = ({ given, replace }: Pick<AnswerProps, 'given' | 'replace'>) => {
  const settings = useSettings();
  const field = setPressure.fields.pressure;
  const answers = given.pressure === undefined ? {} : { pressure: given.pressure };
  const state = ready(setPressure, { axle: 'A1', ...answers });
  const doubt = state.state === 'complete' ? state.doubts[0]?.sentence : state.state === 'refused' ? state.refusals[0]?.sentence : undefined;
  const change = (what: Parameters<typeof changed>[2]): void => {
    const raw = changed(setPressure, answers, what, settings)['pressure'];
    const { pressure: _, ...rest } = given;
    replace(typeof raw === 'object' && 'text' in raw ? { ...rest, pressure: raw } : rest);
  };
  return (
    <>
      <NumberCells fields={[['pressure', field]]} answers={answers} live="pressure" preferences={settings} focus={() => undefined} change={change} />
      {doubt && <p className="refusal">{doubt}</p>}
      <LiveKeys entry={['pressure', field]} change={change} />
    </>
  );
};
