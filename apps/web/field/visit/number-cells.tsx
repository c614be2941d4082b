import { unitFor } from '../../../../src/entries';
import type { Field } from '../../../../src/terms';
import { fromSi, type Preferences, quantities, readQuantity, showIn, unitOf } from '../../../../src/units';
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
  const usual = field.units ?? quantities[field.quantity].usual;
  const other = unit === usual.us ? usual.metric : usual.us;
  if (other === unit) return undefined;
  const read = readQuantity(text, field.quantity, unit);
  return read.ok ? showIn(read.value.si, field.quantity, other) : undefined;
};

/** Cells for numbers that are read together: the typed figure large, its unit beside it, the other unit in the line below. */
export const NumberCells = ({ fields, answers, live, preferences, focus, change }: Props) => {
  const now = fields.find(([key]) => key === live);
  return (
    <div className={`cells of-${fields.length}${now ? ' live' : ''}`}>
      {fields.map(([key, field]) => {
        const typed = typedOf(answers, key);
        const unit = typed?.unit ?? unitFor(field, preferences);
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
            <span>{second ?? field.label}</span>
          </button>
        );
      })}
      {now && <UnitSwitch entry={now} answers={answers} preferences={preferences} change={change} />}
    </div>
  );
};

/** One press changes the unit that stands beside the figure; what was typed stays as typed. */
const UnitSwitch = ({
  entry: [key, field],
  answers,
  preferences,
  change,
}: { readonly entry: readonly [string, NumberField] } & Pick<Props, 'answers' | 'preferences' | 'change'>) => {
  const offered = unitsOffered(field);
  const unit = typedOf(answers, key)?.unit ?? unitFor(field, preferences);
  const next = offered[(offered.findIndex((u) => u.id === unit) + 1) % offered.length];
  if (!next || offered.length < 2) return null;
  return (
    <button type="button" className="press unit" aria-label={`${field.label} in ${next.symbol} instead`} onClick={() => change({ do: 'unit', field: key, unit: next.id })}>
      in
      <br />
      {next.symbol}
    </button>
  );
};

/** The units a person meets on gauges: the field's own or the usual two first, and a third only where its figures stay readable. */
export const unitsOffered = (field: NumberField) => {
  const { units, usual } = quantities[field.quantity];
  const own = field.units ?? usual;
  const first = [own.us, own.metric];
  const more = units.filter((u) => !first.includes(u.id) && readable(field, u.id)).map((u) => u.id);
  return [...new Set([...first, ...more])].slice(0, MOST_UNITS).map((id) => unitOf(field.quantity, id));
};

const MOST_UNITS = 3;
/** More digits than this before the point are nobody's unit for the thing. */
const MOST_FIGURE = 1e5;
const LEAST_FIGURE = 1;

const readable = (field: NumberField, unit: string): boolean => {
  const most = Math.abs(fromSi(field.usual?.most ?? field.limits.most ?? 1, field.quantity, unit));
  return most < MOST_FIGURE && most >= LEAST_FIGURE;
};
