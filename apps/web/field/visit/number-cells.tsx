import type { Field } from '../../../../src/terms';
import { fromSi, type Preferences, quantities, readQuantity, showIn, type UnitSystem, unitOf, usualUnit } from '../../../../src/units';
import type { Answers, Change } from './form';

type NumberField = Extract<Field, { type: 'number' }>;

type Props = {
  readonly fields: readonly (readonly [key: string, field: NumberField])[];
  readonly answers: Answers;
  readonly live: string | undefined;
  readonly preferences: Preferences;
  readonly focus: (key: string) => void;
  readonly change: (change: Change) => void;
};

const typedOf = (answers: Answers, key: string): { readonly text: string; readonly unit: string } | undefined => {
  const raw = answers[key];
  return typeof raw === 'object' && 'text' in raw ? raw : undefined;
};

/** The same figure in the other system, so that a slip of unit is seen at once. */
const otherwise = (field: NumberField, text: string, unit: string): string | undefined => {
  const { usual } = quantities[field.quantity];
  const other = unit === usual.us ? usual.metric : usual.us;
  if (other === unit) return undefined;
  const read = readQuantity(text, field.quantity, unit);
  return read.ok ? showIn(read.value.si, field.quantity, other) : undefined;
};

/** Cells for numbers that are read together: the typed figure large, its unit beside it, the other unit in the line below. */
export const NumberCells = ({ fields, answers, live, preferences, focus }: Props) => (
  <div className={`cells of-${fields.length}`}>
    {fields.map(([key, field]) => {
      const typed = typedOf(answers, key);
      const unit = typed?.unit ?? usualUnit(field.quantity, preferences);
      const second = typed ? otherwise(field, typed.text, unit) : undefined;
      return (
        <button
          key={key}
          type="button"
          className="cell"
          aria-current={live === key}
          aria-label={`${field.label}: ${typed ? `${typed.text} ${unitOf(field.quantity, unit).symbol}` : 'nothing yet'}`}
          onClick={() => focus(key)}
        >
          <span className="figure">
            {typed?.text.replace('-', '−') ?? ''}
            {live === key && <span className="caret" />}
            <small>{unitOf(field.quantity, unit).symbol}</small>
          </span>
          <span>{second ? `${field.label.toLowerCase()}, ${second}` : field.label}</span>
        </button>
      );
    })}
  </div>
);

/** One press changes the unit that stands beside the figure; what was typed stays as typed. */
export const UnitSwitch = ({ field, unit, choose }: { readonly field: NumberField; readonly unit: string; readonly choose: (unit: string) => void }) => {
  const offered = unitsOffered(field);
  if (offered.length < 2) return null;
  return (
    <fieldset className={`choices of-${offered.length}`} aria-label={`Unit of ${field.label.toLowerCase()}`}>
      {offered.map((u) => (
        <button key={u.id} type="button" className="press" aria-pressed={u.id === unit} onClick={() => choose(u.id)}>
          {u.symbol}
        </button>
      ))}
    </fieldset>
  );
};

/** The units a person meets on gauges: the two usual ones first, and only where the declared limits make sense of them. */
export const unitsOffered = (field: NumberField) => {
  const { units, usual } = quantities[field.quantity];
  const first = new Set([usual.us, usual.metric] satisfies readonly string[]);
  const finer = field.limits.most !== undefined && field.quantity === 'length' && field.limits.most <= 3;
  return [...units.filter((u) => first.has(u.id)), ...units.filter((u) => !first.has(u.id) && !tooFine(field, u.id, finer))].slice(0, 3);
};

const tooFine = (field: NumberField, unit: string, finer: boolean): boolean =>
  field.quantity === 'length' ? !finer : Math.abs(fromSi(field.limits.most ?? 1, field.quantity, unit)) > 1e5;

export const systemOf = (unit: string, quantity: NumberField['quantity']): UnitSystem | undefined =>
  quantities[quantity].usual.us === unit ? 'us' : quantities[quantity].usual.metric === unit ? 'metric' : undefined;
