import { useId } from 'react';
import { askedFields, unitFor } from '../../../src/entries';
import type { Field, Fields, Option } from '../../../src/terms';
import { type Preferences, type Refusal, readQuantity, type Typed } from '../../../src/units';
import { UnitChoice } from './worksheet-input';

/** A figure as it stands in its field, before it is read. */
export type Writing = { readonly text: string; readonly unit: string };

/** What a form holds while it is being filled in: choices as they will be kept, figures as typed. */
export type Answers = Readonly<Record<string, unknown>>;

const isWriting = (v: unknown): v is Writing => typeof v === 'object' && v !== null && 'text' in v && 'unit' in v;
const isTyped = (v: unknown): v is Typed => typeof v === 'object' && v !== null && 'typed' in v && 'si' in v;

/** A kept body as a form shows it again. */
export const answersOf = (fields: Fields, body: Readonly<Record<string, unknown>>): Answers =>
  Object.fromEntries(Object.entries(body).map(([key, value]) => [key, fields[key]?.type === 'number' && isTyped(value) ? { text: value.typed, unit: value.unit } : value]));

/** Reads every figure. What cannot be read is refused beside its field; what was left empty is left out. */
export const bodyOf = (fields: Fields, answers: Answers): { readonly body: Readonly<Record<string, unknown>>; readonly refusals: readonly Refusal[] } => {
  const body: Record<string, unknown> = {};
  const refusals: Refusal[] = [];
  for (const [key, field] of askedFields(fields, answers)) {
    const value = answers[key];
    if (field.type === 'number') {
      if (!isWriting(value) || value.text.trim() === '') continue;
      const typed = readQuantity(value.text, field.quantity, value.unit, field.limits, key);
      if (typed.ok) body[key] = typed.value;
      else refusals.push(...typed.refusals);
    } else if (typeof value === 'string') {
      if (value.trim() !== '') body[key] = value.trim();
    } else if (Array.isArray(value)) {
      if (value.length > 0) body[key] = value;
    } else if (value !== undefined) body[key] = value;
  }
  return { body, refusals };
};

type FormProps = {
  readonly fields: Fields;
  readonly answers: Answers;
  readonly refusals: readonly Refusal[];
  readonly preferences: Preferences;
  /** Typical defects of the chosen station, for fields that ask for them. */
  readonly defects: readonly Option[];
  /** Choices as lists that open, for a narrow column. */
  readonly compact?: boolean;
  readonly onChange: (answers: Answers) => void;
};

/** Every question of a kind, made from its declaration. No kind has a form of its own. */
export const FieldForm = ({ fields, answers, refusals, preferences, defects, compact = false, onChange }: FormProps) => (
  <>
    {askedFields(fields, answers)
      .filter(([, field]) => field.type !== 'data')
      .map(([key, field]) => (
        <FieldRow
          key={key}
          name={key}
          field={field}
          value={answers[key]}
          refusals={refusals.filter((r) => r.path === key || r.path === `body.${key}` || r.path.startsWith(`${key}.`) || r.path.startsWith(`body.${key}.`))}
          preferences={preferences}
          defects={defects}
          compact={compact}
          onChange={(value) => onChange({ ...answers, [key]: value })}
        />
      ))}
  </>
);

type RowProps = {
  readonly name: string;
  readonly field: Field;
  readonly value: unknown;
  readonly refusals: readonly Refusal[];
  readonly preferences: Preferences;
  /** Typical defects of the chosen station, for fields that ask for them. */
  readonly defects: readonly Option[];
  readonly compact: boolean;
  readonly onChange: (value: unknown) => void;
};

const FieldRow = (props: RowProps) => {
  const { field, refusals, compact } = props;
  const id = useId();
  const wrong = refusals.length > 0;
  const grouped = (field.type === 'choice' && !compact) || field.type === 'many';
  const label = (
    <>
      {field.label}
      {field.optional && <span className="mut"> if you know it</span>}
    </>
  );
  const below = (
    <>
      {field.meaning !== undefined && (
        <p className="mut small" id={`${id}-meaning`}>
          {field.meaning}
        </p>
      )}
      {wrong && (
        <p className="refusal" id={`${id}-wrong`}>
          {refusals.map((r) => (r.code === 'missing' ? `${field.label} is missing.` : r.sentence)).join(' ')}
        </p>
      )}
    </>
  );
  const describedBy = [field.meaning !== undefined ? `${id}-meaning` : '', wrong ? `${id}-wrong` : ''].filter((x) => x !== '').join(' ') || undefined;
  if (grouped)
    return (
      <fieldset className="field-row" aria-describedby={describedBy}>
        <legend>{label}</legend>
        <Choices {...props} id={id} />
        {below}
      </fieldset>
    );
  return (
    <div className="field-row">
      <label htmlFor={id}>{label}</label>
      <Control {...props} id={id} wrong={wrong} describedBy={describedBy} />
      {below}
    </div>
  );
};

const Choices = ({ name, field, value, defects, onChange, id }: RowProps & { readonly id: string }) => {
  if (field.type === 'choice')
    return (
      <div className="options">
        {field.options.map((o) => (
          <label key={o.id} className="option">
            <input type="radio" name={`${id}-${name}`} checked={value === o.id} onChange={() => onChange(o.id)} />
            <span>
              <b>{o.word}</b>
              {o.line !== undefined && <span className="mut">{o.line}</span>}
            </span>
          </label>
        ))}
        {field.optional && value !== undefined && (
          <button type="button" className="link" onClick={() => onChange(undefined)}>
            leave it open
          </button>
        )}
      </div>
    );
  if (field.type !== 'many') return null;
  const options: readonly Option[] = field.options === 'defects-of-station' ? defects : field.options;
  const chosen = Array.isArray(value) ? (value as readonly string[]) : [];
  if (options.length === 0) return <p className="mut">No usual defects are listed for this place. Say it in the note.</p>;
  return (
    <div className="options">
      {options.map((o) => (
        <label key={o.id} className="option">
          <input type="checkbox" checked={chosen.includes(o.id)} onChange={(e) => onChange(e.target.checked ? [...chosen, o.id] : chosen.filter((c) => c !== o.id))} />
          <span>
            <b>{o.word}</b>
            {o.line !== undefined && <span className="mut">{o.line}</span>}
          </span>
        </label>
      ))}
    </div>
  );
};

const Control = ({
  name,
  field,
  value,
  preferences,
  onChange,
  id,
  wrong,
  describedBy,
}: RowProps & { readonly id: string; readonly wrong: boolean; readonly describedBy: string | undefined }) => {
  const shared = { id, name, 'aria-invalid': wrong, 'aria-describedby': describedBy };
  switch (field.type) {
    case 'choice':
      return (
        <select {...shared} value={typeof value === 'string' ? value : ''} onChange={(e) => onChange(e.target.value === '' ? undefined : e.target.value)}>
          {typeof value !== 'string' && <option value="">Choose</option>}
          {field.options.map((o) => (
            <option key={o.id} value={o.id}>
              {o.word}
            </option>
          ))}
        </select>
      );
    case 'number': {
      const writing: Writing = isWriting(value) ? value : { text: '', unit: unitFor(field, preferences) };
      return (
        <span className="input-with-unit">
          <input {...shared} type="text" inputMode="decimal" autoComplete="off" value={writing.text} onChange={(e) => onChange({ ...writing, text: e.target.value })} />
          <UnitChoice quantity={field.quantity} label={field.label} unit={writing.unit} onChange={(unit) => onChange({ ...writing, unit })} />
        </span>
      );
    }
    case 'text':
      return (field.most ?? 0) > 160 ? (
        <textarea {...shared} rows={3} maxLength={field.most} value={String(value ?? '')} onChange={(e) => onChange(e.target.value)} />
      ) : (
        <input {...shared} type="text" maxLength={field.most} value={String(value ?? '')} onChange={(e) => onChange(e.target.value)} />
      );
    case 'code':
      return (
        <input
          {...shared}
          type="text"
          inputMode={field.code === 'tyre-date' ? 'numeric' : 'text'}
          autoCapitalize="characters"
          autoComplete="off"
          value={String(value ?? '')}
          placeholder={field.code === 'tyre-date' ? '2319' : 'ST225/75R15'}
          onChange={(e) => onChange(e.target.value.trim())}
        />
      );
    case 'day':
      return <input {...shared} type="date" value={String(value ?? '')} onChange={(e) => onChange(e.target.value)} />;
    case 'flag':
      return <input {...shared} type="checkbox" checked={value === true} onChange={(e) => onChange(e.target.checked)} />;
    default:
      return null;
  }
};
