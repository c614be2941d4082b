import { type FormEvent, type ReactNode, useState } from 'react';
import { type Doubt, doubts as doubtsOf, readBody } from '../../../src/entries';
import { isOpen } from '../../../src/plan';
import type { AnyKind, Fields, PhotoRef, Place } from '../../../src/terms';
import { type Refusal, unitOf } from '../../../src/units';
import { DATA_INPUTS } from './data-inputs';
import { findingStation, placeWords, useDesk } from './desk';
import { type Answers, bodyOf, FieldForm } from './field-form';
import { PhotoInput } from './photo-input';
import { type PlaceAnswer, PlacePicker, readPlace } from './place-picker';
import { useStationView } from './station-view';
import { observedAt, type WhenAnswer, WhenPicker, whenRefusal } from './when-picker';

export type EntryAnswers = {
  readonly place: PlaceAnswer;
  readonly when: WhenAnswer;
  readonly answers: Answers;
  readonly note: string;
  readonly photos: readonly PhotoRef[] /** Findings it settles, or is about. */;
  readonly concerns: readonly string[];
};

/** What a whole form gives once nothing in it is refused. */
export type EntryGiven = {
  readonly place: Place;
  readonly observed_at: string;
  readonly body: Readonly<Record<string, unknown>>;
  readonly note: string;
  readonly photos: readonly PhotoRef[];
  readonly concerns: readonly string[];
};

/**
 * One entry of any kind: where, when, the kind's own questions, a note and photographs. Used to add and to correct.
 * Nothing is kept before the button is pressed; a doubt is asked once before it is kept.
 */
export const EntryForm = ({
  kind,
  start,
  words,
  withNote = true,
  onGiven,
  children,
}: {
  readonly kind: AnyKind;
  readonly start: EntryAnswers;
  readonly words: string;
  readonly withNote?: boolean;
  readonly onGiven: (given: EntryGiven) => Promise<void>;
  readonly children?: ReactNode;
}) => {
  const { overview, preferences, today } = useDesk();
  const [state, setState] = useState(start);
  const [refusals, setRefusals] = useState<readonly Refusal[]>([]);
  const [placeRefusal, setPlaceRefusal] = useState<string>();
  const [tried, setTried] = useState(false);
  const [doubts, setDoubts] = useState<readonly Doubt[]>([]);
  const [busy, setBusy] = useState(false);
  const [concernRefusal, setConcernRefusal] = useState<string>();
  const fields = kind.fields as Fields;
  const set = (part: Partial<EntryAnswers>) => {
    setDoubts([]);
    if (part.place) setPlaceRefusal(undefined);
    if (part.concerns) setConcernRefusal(undefined);
    const { answers } = part;
    // A refusal stands until its own field is touched.
    if (answers) setRefusals((old) => old.filter((r) => answers[fieldOf(r)] === state.answers[fieldOf(r)]));
    setState((s) => ({ ...s, ...part }));
  };
  const view = useStationView(state.place.at === 'station' || state.place.at === 'stretch' ? state.place.station : undefined);

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    const read = bodyOf(fields, state.answers);
    const place = readPlace(state.place, overview.rig);
    const at = observedAt(state.when);
    setPlaceRefusal('refusal' in place ? place.refusal : undefined);
    const whole = read.refusals.length > 0 ? undefined : readBody(kind, read.body, '', today);
    const refused = whole && !whole.ok ? whole.refusals : read.refusals;
    setRefusals(refused);
    if (refused.length > 0 || 'refusal' in place || at === undefined || whenRefusal(state.when, today) !== undefined) {
      requestAnimationFrame(() => document.querySelector<HTMLElement>('.entry-form .refusal')?.scrollIntoView({ block: 'center' }));
      return;
    }
    const needs = withNote && kind.concerns !== undefined && state.concerns.length === 0;
    setConcernRefusal(needs ? 'Choose the finding it is about: this kind of entry never stands alone.' : undefined);
    if (needs) return;
    const asks = doubtsOf(kind, read.body);
    if (asks.length > 0 && doubts.length === 0) {
      setDoubts(asks);
      return;
    }
    setBusy(true);
    await onGiven({ place: place.place, observed_at: at, body: read.body, note: state.note.trim(), photos: state.photos, concerns: state.concerns });
    setBusy(false);
  };

  const DataInput = DATA_INPUTS[kind.id];
  const named = new Set(Object.keys(fields));
  const loose = refusals.filter((r) => !named.has(r.path.replace(/^body\./, '').split('.')[0] ?? ''));

  return (
    <form className="entry-form" onSubmit={submit} noValidate>
      <PlacePicker kind={kind} rig={overview.rig} answer={state.place} refusal={placeRefusal} onChange={(place) => set({ place })} />
      {withNote && <Concerns kind={kind} place={state.place} chosen={state.concerns} refusal={concernRefusal} onChange={(concerns) => set({ concerns })} />}
      <FieldForm fields={fields} answers={state.answers} refusals={refusals} preferences={preferences} defects={view?.defects ?? []} onChange={(answers) => set({ answers })} />
      {DataInput !== undefined && <DataInput answers={state.answers} refusals={refusals} onChange={set} />}
      <WhenPicker when={state.when} today={today} shown={tried} onChange={(when) => set({ when })} />
      {withNote && (
        <div className="field-row">
          <label htmlFor="entry-note">
            Note <span className="mut">if there is more to say</span>
          </label>
          <textarea id="entry-note" rows={3} value={state.note} onChange={(e) => set({ note: e.target.value })} />
        </div>
      )}
      {withNote && <PhotoInput photos={state.photos} onChange={(photos) => set({ photos })} />}
      {children}
      {loose.map((r) => (
        <p key={`${r.path}${r.code}`} className="refusal" role="alert">
          {r.sentence}
        </p>
      ))}
      {doubts.length > 0 && (
        <div className="doubt" role="alert">
          {doubts.map((d) => (
            <div key={`${d.path}${d.code}`}>
              <p>{d.sentence}</p>
              {d.instead.length > 0 && (
                <p className="buttons">
                  {d.instead.map((t) => (
                    <button key={t.unit} type="button" className="button small" onClick={() => set({ answers: { ...state.answers, [d.path]: { text: t.typed, unit: t.unit } } })}>
                      It is {t.typed} {symbolOf(fields, d.path, t.unit)}
                    </button>
                  ))}
                </p>
              )}
            </div>
          ))}
        </div>
      )}
      <p className="buttons">
        <button type="submit" className="button primary" disabled={busy}>
          {doubts.length > 0 ? 'It is right as it stands: keep it' : words}
        </button>
      </p>
    </form>
  );
};

/** Which findings a piece of work settles, or a decision is about: those at the chosen place, and those already chosen. */
const Concerns = ({
  kind,
  place,
  chosen,
  refusal,
  onChange,
}: {
  readonly kind: AnyKind;
  readonly place: PlaceAnswer;
  readonly chosen: readonly string[];
  readonly refusal: string | undefined;
  readonly onChange: (concerns: readonly string[]) => void;
}) => {
  const { overview } = useDesk();
  if (kind.group !== 'care' && kind.concerns === undefined) return null;
  const here = place.at === 'station' || place.at === 'stretch' ? place.station : '';
  const unplaced = kind.group === 'care' && here === '' && place.at !== 'rig' && chosen.length === 0;
  const open = overview.plan.findings.filter((f) => isOpen(f) && (chosen.includes(f.id) || here === '' || findingStation(f) === here));
  return (
    <fieldset className="field-row">
      <legend>{kind.group === 'care' ? 'Findings that it settles' : 'Findings that it is about'}</legend>
      {unplaced && <p className="mut">Say where first; what stands open there is then listed.</p>}
      {!unplaced && open.length === 0 && <p className="mut">No finding stands open here.</p>}
      <div className="options">
        {(unplaced ? [] : open).map((f) => (
          <label key={f.id} className="option">
            <input type="checkbox" checked={chosen.includes(f.id)} onChange={(e) => onChange(e.target.checked ? [...chosen, f.id] : chosen.filter((c) => c !== f.id))} />
            <span>
              <b>{f.title}</b>
              <span className="mut">
                {placeWords(overview.rig, f.place)}. {f.because[0]?.text}
              </span>
            </span>
          </label>
        ))}
      </div>
      {refusal !== undefined && <p className="refusal">{refusal}</p>}
    </fieldset>
  );
};

const fieldOf = (refusal: Refusal): string => refusal.path.split('.')[0] ?? '';

const symbolOf = (fields: Fields, path: string, unit: string): string => {
  const field = fields[path];
  return field?.type === 'number' ? unitOf(field.quantity, unit).symbol : '';
};
