import { useMemo, useState } from 'react';
import type { AnyWorksheet, Input, Output, Step, WorksheetValue } from '../../../src/terms';
import { fromSi, type Preferences, quantities, type Refusal, readQuantities, readQuantity, show, showIn } from '../../../src/units';
import { work, worksheetById } from '../../../src/worksheets';
import { upperFirst } from './desk';
import { fittingUnit } from './fitting-unit';
import { SourceLine } from './source-line';
import { type InputField, InputRow } from './worksheet-input';

type Given = Readonly<Record<string, WorksheetValue>>;

/**
 * One calculation laid open, with its own inputs to play with. The same in the box behind a figure and on its own page.
 * Nothing that is typed here is kept.
 */
export const WorksheetSheet = ({
  id,
  given,
  preferences,
  boxed = false,
  onClose,
}: {
  readonly id: string;
  readonly preferences: Preferences;
  readonly given?: Given;
  readonly boxed?: boolean;
  readonly onClose?: () => void;
}) => {
  const worksheet = worksheetById(id);
  if (!worksheet)
    return (
      <div className="worksheet">
        <h2 id="worksheet-title">This worksheet is not known here</h2>
        <p>The figure came from “{id}”. A newer version of Seamward may hold it; the figure itself stays as it was recorded.</p>
        {onClose && (
          <button type="button" className="link" onClick={onClose}>
            close
          </button>
        )}
      </div>
    );
  return <Laid worksheet={worksheet} given={given ?? {}} preferences={preferences} boxed={boxed} {...(onClose ? { onClose } : {})} />;
};

/** Hours and days belong to no system of units: a worksheet asks for time in the unit it names. */
const startUnit = (input: Extract<Input, { type: 'number' | 'numbers' }>, si: number, preferences: Preferences): string =>
  input.quantity === 'duration' ? input.unit : fittingUnit(input.quantity, si, preferences);

const fieldOf = (input: Input, value: WorksheetValue | undefined, preferences: Preferences): InputField => {
  if (input.type === 'numbers') {
    const list = (typeof value === 'object' ? value : (input.otherwise ?? [])).map((n) => toSiOf(n, input));
    const unit = startUnit(input, list.length > 0 ? Math.max(...list.map(Math.abs)) : (input.limits.most ?? 1), preferences);
    return { text: list.map((si) => tidy(fromSi(si, input.quantity, unit))).join('; '), unit };
  }
  if (input.type !== 'number') return { text: String(value ?? input.otherwise ?? (input.type === 'text' ? input.example : (input.words[0] ?? ''))), unit: '' };
  const own = typeof value === 'number' ? value : input.otherwise;
  const si = own === undefined ? undefined : toSiOf(own, input);
  const unit = startUnit(input, si ?? input.limits.most ?? 1, preferences);
  if (si === undefined) return { text: '', unit };
  return { text: tidy(fromSi(si, input.quantity, unit)), unit };
};

const toSiOf = (n: number, input: Extract<Input, { type: 'number' | 'numbers' }>): number => {
  const u = quantities[input.quantity].units.find((x) => x.id === input.unit);
  return n * (u?.scale ?? 1) + (u?.offset ?? 0);
};

/** Enough figures to mean the same, no more. */
const tidy = (n: number): string => String(Number(n.toPrecision(4)));

const Laid = ({
  worksheet,
  given,
  preferences,
  boxed,
  onClose,
}: {
  readonly worksheet: AnyWorksheet;
  readonly given: Given;
  readonly preferences: Preferences;
  readonly boxed: boolean;
  readonly onClose?: () => void;
}) => {
  const inputs = Object.entries(worksheet.inputs as Readonly<Record<string, Input>>);
  const [fields, setFields] = useState<Readonly<Record<string, InputField>>>(() =>
    Object.fromEntries(inputs.map(([key, input]) => [key, fieldOf(input, given[key], preferences)])),
  );
  const [touched, setTouched] = useState<ReadonlySet<string>>(new Set());

  const { values, refusals } = useMemo(() => read(inputs, fields, touched, given), [inputs, fields, touched, given]);
  const outcome = useMemo(() => (refusals.length === 0 ? work(worksheet, values) : undefined), [worksheet, values, refusals]);
  const waiting = inputs.some(([key, input]) => (input.type === 'number' || input.type === 'numbers') && input.otherwise === undefined && fields[key]?.text === '');
  const shownRefusals: readonly Refusal[] = waiting ? refusals.filter((r) => touched.has(inputOf(r))) : [...refusals, ...(outcome && !outcome.ok ? outcome.refusals : [])];

  const Head = boxed ? 'h3' : 'h2';
  const change = (key: string, field: InputField) => {
    setTouched((t) => new Set(t).add(key));
    setFields((f) => ({ ...f, [key]: field }));
  };

  return (
    <div className={boxed ? 'worksheet boxed' : 'worksheet'}>
      <div className="worksheet-head">
        {boxed ? <h2 id="worksheet-title">Worksheet: {worksheet.title}</h2> : <h1 id="worksheet-title">{worksheet.title}</h1>}
        {onClose && (
          <button type="button" className="link" onClick={onClose}>
            close
          </button>
        )}
      </div>
      <div className="worksheet-answer" aria-live="polite">
        {outcome?.ok ? (
          <Answer worksheet={worksheet} result={outcome.value.outcome.result} preferences={preferences} />
        ) : (
          <p className="worksheet-figure mut">{waiting ? 'Waiting for a figure' : 'No answer'}</p>
        )}
        <p className="mut">{worksheet.tells}</p>
      </div>
      <div className="worksheet-parts">
        <section className="worksheet-inputs">
          <Head className="unseen">Inputs</Head>
          {inputs.map(([key, input]) => (
            <InputRow
              key={key}
              name={key}
              input={input}
              field={fields[key] ?? { text: '', unit: '' }}
              refusals={shownRefusals.filter((r) => inputOf(r) === key)}
              onChange={(f) => change(key, f)}
            />
          ))}
        </section>
        {shownRefusals
          .filter((r) => !inputs.some(([key]) => key === inputOf(r)))
          .map((r) => (
            <p key={r.code} className="refusal" role="alert">
              {r.sentence}
            </p>
          ))}
        {outcome?.ok && (
          <>
            <Working Head={Head} steps={[...outcome.value.usual, ...outcome.value.outcome.working]} />
            {(outcome.value.outcome.remarks ?? []).map((r) => (
              <p key={r} className="remark">
                {r}
              </p>
            ))}
            <Changes Head={Head} worksheet={worksheet} values={values} result={outcome.value.outcome.result} preferences={preferences} />
          </>
        )}
        <section className="worksheet-foot">
          {worksheet.cautions.map((c) => (
            <p key={c} className="caution">
              {c}
            </p>
          ))}
          {worksheet.limits.length > 0 && <Head>Where it holds</Head>}
          {worksheet.limits.map((l) => (
            <p key={l} className="mut small">
              {l}
            </p>
          ))}
          <Head>Where it comes from</Head>
          {worksheet.sources.map((s) => (
            <SourceLine key={s.text} source={s} />
          ))}
        </section>
      </div>
    </div>
  );
};

/** The input that a refusal speaks of: `times_d[3]` is about `times_d`. */
const inputOf = (refusal: Refusal): string => refusal.path.replace(/\[\d+\]$/, '');

/** Reads every field at once. What was not touched keeps the very figure it was opened with. */
const read = (
  inputs: readonly (readonly [string, Input])[],
  fields: Readonly<Record<string, InputField>>,
  touched: ReadonlySet<string>,
  given: Given,
): { readonly values: Given; readonly refusals: readonly Refusal[] } => {
  const values: Record<string, WorksheetValue> = {};
  const refusals: Refusal[] = [];
  for (const [key, input] of inputs) {
    const field = fields[key] ?? { text: '', unit: '' };
    const untouched = given[key];
    if (!touched.has(key) && untouched !== undefined) values[key] = untouched;
    else if (input.type !== 'number' && input.type !== 'numbers') values[key] = field.text;
    else if (field.text.trim() === '' && input.otherwise !== undefined) continue;
    else if (input.type === 'numbers') {
      const typed = readQuantities(field.text, input.quantity, field.unit, input.limits, key);
      if (typed.ok) values[key] = typed.value.map((t) => fromSi(t.si, input.quantity, input.unit));
      else refusals.push(...typed.refusals);
    } else {
      const typed = readQuantity(field.text, input.quantity, field.unit, input.limits, key);
      if (typed.ok) values[key] = fromSi(typed.value.si, input.quantity, input.unit);
      else refusals.push(...typed.refusals);
    }
  }
  return { values, refusals };
};

const resultWords = (output: Output, value: WorksheetValue | undefined, preferences: Preferences): string => {
  if (value === undefined) return '';
  if (output.type === 'text' || typeof value === 'string') return String(value);
  if (typeof value === 'object') return value.map((n) => resultWords(output, n, preferences)).join('; ');
  const unit = output.quantity === 'duration' ? output.unit : fittingUnit(output.quantity, value, preferences);
  if (unit !== output.unit) return showIn(value, output.quantity, unit);
  const u = quantities[output.quantity].units.find((x) => x.id === output.unit);
  const text = fromSi(value, output.quantity, output.unit).toFixed(output.decimals).replace('-', '−');
  return u && u.symbol !== '' ? `${text} ${u.symbol}` : text;
};

const Answer = ({
  worksheet,
  result,
  preferences,
}: {
  readonly worksheet: AnyWorksheet;
  readonly result: Readonly<Record<string, WorksheetValue>>;
  readonly preferences: Preferences;
}) => {
  const outputs = Object.entries(worksheet.results as Readonly<Record<string, Output>>);
  // Programs are given some results in two units; a person reads each once, in their own.
  const [first, ...rest] = outputs.filter(([, output]) => output.meaning !== 'the same');
  if (!first) return null;
  return (
    <>
      <p className="worksheet-figure">{upperFirst(resultWords(first[1], result[first[0]], preferences))}</p>
      <p className="worksheet-meaning">{upperFirst(first[1].meaning)}</p>
      {rest.length > 0 && (
        <dl className="facts">
          {rest.map(([key, output]) => (
            <div key={key}>
              <dt>{upperFirst(output.meaning)}</dt>
              <dd>{resultWords(output, result[key], preferences)}</dd>
            </div>
          ))}
        </dl>
      )}
    </>
  );
};

const Working = ({ Head, steps }: { readonly Head: 'h2' | 'h3'; readonly steps: readonly Step[] }) =>
  steps.length === 0 ? null : (
    <section className="working">
      <Head>How it is worked out</Head>
      <ol>
        {steps.map((s) => (
          <li key={`${s.what}${s.numbers}`}>
            <span className="working-what">{s.what}</span>
            <span className="working-formula">{s.formula}</span>
            <span className="working-numbers">
              {s.numbers} = <b>{s.gives}</b>
            </span>
          </li>
        ))}
      </ol>
    </section>
  );

const NUDGE = 0.1;
const WARMER_K = 5;

/** One input at a time, a little more of it: what the first figure becomes. Worked out by the worksheet itself. */
const Changes = ({
  Head,
  worksheet,
  values,
  result,
  preferences,
}: {
  readonly Head: 'h2' | 'h3';
  readonly worksheet: AnyWorksheet;
  readonly values: Given;
  readonly result: Readonly<Record<string, WorksheetValue>>;
  readonly preferences: Preferences;
}) => {
  const first = Object.entries(worksheet.results as Readonly<Record<string, Output>>)[0];
  if (first?.[1].type !== 'number') return null;
  const [key, output] = first;
  const now = result[key];
  if (typeof now !== 'number') return null;
  const lines = Object.entries(worksheet.inputs as Readonly<Record<string, Input>>).flatMap(([name, input]) => {
    const value = values[name] ?? (input.type === 'number' ? input.otherwise : undefined);
    if (input.type !== 'number' || typeof value !== 'number' || value === 0) return [];
    const warm = input.quantity === 'temperature';
    const si = toSiOf(value, input) + (warm ? WARMER_K : Math.abs(toSiOf(value, input)) * NUDGE);
    const other = work(worksheet, { ...values, [name]: fromSi(si, input.quantity, input.unit) });
    const then = other.ok ? other.value.outcome.result[key] : undefined;
    if (typeof then !== 'number' || resultWords(output, then, preferences) === resultWords(output, now, preferences)) return [];
    const more = warm ? `${show(WARMER_K, 'temperature-difference', preferences)} warmer` : 'a tenth more';
    return [{ name, words: `${upperFirst(input.meaning)}: ${more}`, then, weight: Math.abs(then - now) }];
  });
  if (lines.length === 0) return null;
  const strongest = [...lines].sort((a, b) => b.weight - a.weight).slice(0, 4);
  return (
    <section className="changes">
      <Head>What would change it</Head>
      <dl className="facts">
        {strongest.map((l) => (
          <div key={l.name}>
            <dt>{l.words}</dt>
            <dd>{resultWords(output, l.then, preferences)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
};
