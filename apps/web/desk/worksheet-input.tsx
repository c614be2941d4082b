import { useId } from 'react';
import type { Input } from '../../../src/terms';
import { quantities, type Refusal } from '../../../src/units';
import { howMany } from '../../../src/worksheets';
import { upperFirst } from './desk';

/** What stands in one field: the characters and the unit beside them. */
export type InputField = { readonly text: string; readonly unit: string };

/** One input of a worksheet, with its unit and what is wrong with it. */
export const InputRow = ({
  name,
  input,
  field,
  refusals,
  onChange,
}: {
  readonly name: string;
  readonly input: Input;
  readonly field: InputField;
  readonly refusals: readonly Refusal[];
  readonly onChange: (field: InputField) => void;
}) => {
  const id = useId();
  const wrong = refusals.length > 0;
  return (
    <div className={input.type === 'numbers' ? 'input-row list-row' : 'input-row'}>
      <label htmlFor={id}>{upperFirst(input.meaning)}</label>
      <span className="input-with-unit">
        {input.type === 'word' ? (
          <select id={id} value={field.text} onChange={(e) => onChange({ ...field, text: e.target.value })}>
            {input.words.map((w) => (
              <option key={w} value={w}>
                {w}
              </option>
            ))}
          </select>
        ) : input.type === 'numbers' ? (
          <textarea
            id={id}
            name={name}
            rows={2}
            autoComplete="off"
            spellCheck={false}
            value={field.text}
            placeholder="61; 63.5; 64"
            aria-invalid={wrong}
            aria-describedby={wrong ? `${id}-hint ${id}-wrong` : `${id}-hint`}
            onChange={(e) => onChange({ ...field, text: e.target.value })}
          />
        ) : (
          <input
            id={id}
            name={name}
            type="text"
            inputMode={input.type === 'number' ? 'decimal' : 'text'}
            autoComplete="off"
            value={field.text}
            placeholder={input.type === 'text' ? input.example : undefined}
            aria-invalid={wrong}
            aria-describedby={wrong ? `${id}-wrong` : undefined}
            onChange={(e) => onChange({ ...field, text: e.target.value })}
          />
        )}
        {(input.type === 'number' || input.type === 'numbers') && (
          <UnitChoice quantity={input.quantity} label={input.meaning} unit={field.unit} onChange={(unit) => onChange({ ...field, unit })} />
        )}
      </span>
      {input.type === 'numbers' && (
        <p className="mut small list-hint" id={`${id}-hint`}>
          {upperFirst(howMany(input))}, with a semicolon or a space between them.
        </p>
      )}
      {wrong && (
        <p className="refusal" id={`${id}-wrong`}>
          {refusals.map((r) => r.sentence).join(' ')}
        </p>
      )}
    </div>
  );
};

/** The unit beside a figure. One that has no choice stands as text. */
export const UnitChoice = ({
  quantity,
  label,
  unit,
  onChange,
}: {
  readonly quantity: keyof typeof quantities;
  readonly label: string;
  readonly unit: string;
  readonly onChange: (unit: string) => void;
}) => {
  const { units } = quantities[quantity];
  const only = units[0];
  if (units.length === 1 && only) return only.symbol === '' ? null : <span className="unit">{only.symbol}</span>;
  return (
    <select className="unit" aria-label={`Unit: ${label}`} value={unit} onChange={(e) => onChange(e.target.value)}>
      {units.map((u) => (
        <option key={u.id} value={u.id}>
          {u.symbol || 'as a fraction'}
        </option>
      ))}
    </select>
  );
};
