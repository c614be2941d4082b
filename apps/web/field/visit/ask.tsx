import type { ReactNode } from 'react';
import type { AnyKind, Field, Option } from '../../../../src/terms';
import type { Preferences } from '../../../../src/units';
import { ChoiceField, isShortRow } from './choice-field';
import { DateCode } from './date-code';
import { type Answers, type Change, shownFields } from './form';
import { ManyField } from './many-field';
import { NumberCells } from './number-cells';
import { NumberKeys } from './number-keys';

type Entries<F> = readonly (readonly [key: string, field: F])[];
type NumberField = Extract<Field, { type: 'number' }>;

type Props = {
  readonly kind: AnyKind;
  readonly answers: Answers;
  readonly live: string | undefined;
  readonly opened: string | undefined;
  readonly last: Answers | undefined;
  readonly defects: readonly Option[];
  readonly preferences: Preferences;
  /** Optional fields that are asked only on request are shown too: every one, or only the choices that explain a finding. */
  readonly all: boolean | 'choices';
  /** What the rules say of it; it stands right below the figures, else below the answers. */
  readonly verdict?: ReactNode;
  readonly found?: boolean;
  /** Everything of this kind at once, for forms that are filled in rather than walked through. */
  readonly wide?: boolean;
  readonly change: (change: Change) => void;
  readonly focus: (key: string | undefined) => void;
  readonly open: (key: string | undefined) => void;
};

const isNumber = (e: readonly [string, Field]): e is readonly [string, NumberField] => e[1].type === 'number';

/** The numbers that are read together: the first with its partner. */
export const numberGroups = (fields: Entries<Field>): readonly Entries<NumberField>[] => {
  const numbers = fields.filter(isNumber);
  const partners = new Set(numbers.flatMap(([, f]) => (f.partner === undefined ? [] : [f.partner])));
  return numbers.filter(([key]) => !partners.has(key)).map(([key, field]) => [[key, field], ...numbers.filter(([other]) => other === field.partner)]);
};

/** A choice of two or three short words is one row, and stands beside the figures it explains: cold or warm. */
const isRow = (field: Field): boolean => field.type === 'choice' && field.pictures === undefined && isShortRow(field.options);

/** Fields of a kind that stand on the card without being asked for: what is required, what waits for an answer that was given, and a number's partner. */
export const isPlain = (fields: Entries<Field>, key: string): boolean => {
  const field = fields.find(([k]) => k === key)?.[1];
  if (!field) return false;
  if (!field.optional) return true;
  if (field.type === 'many') return true;
  return fields.some(([, f]) => f.type === 'number' && f.partner === key && !f.optional);
};

/** One kind's questions, laid out by its declaration alone. */
export const Ask = ({ kind, answers, live, opened, last, defects, preferences, all, verdict, found = false, wide = false, change, focus, open }: Props) => {
  const shown = shownFields(kind, answers);
  const plain = shown.filter(([key, f]) => all === true || (all === 'choices' && f.type === 'choice') || isPlain(shown, key));
  const groups = numberGroups(plain);
  const liveField = shown.filter(isNumber).find(([key]) => key === live);
  const liveCode = shown.find(([key, f]) => key === live && f.type === 'code');
  const rows = wide || groups.length === 0 ? [] : shown.filter(([, f]) => isRow(f));
  const others = plain.filter((e) => !isNumber(e) && !rows.some(([key]) => key === e[0]));
  if (wide)
    return plain.map(([key, field]) => {
      const group = groups.find(([first]) => first?.[0] === key);
      if (group) return <NumberCells key={key} fields={group} answers={answers} live={live} preferences={preferences} focus={focus} change={change} />;
      if (field.type === 'number') return null;
      return (
        <div className="ask" key={key}>
          <FieldLabel field={field} />
          <One field={field} id={key} answers={answers} last={last} defects={defects} opened={opened} wide change={change} open={open} />
        </div>
      );
    });
  return (
    <>
      {groups.map((group) => (
        <NumberCells key={group[0]?.[0]} fields={group} answers={answers} live={live} preferences={preferences} focus={focus} change={change} />
      ))}
      {rows.map(([key, field]) => (
        <One key={key} field={field} id={key} answers={answers} last={undefined} defects={defects} opened={opened} wide change={change} open={open} />
      ))}
      {groups.length > 0 && verdict}
      {liveField && <LiveKeys entry={liveField} change={change} />}
      {liveCode && (
        <DateCode verdict={verdict} found={found} id={liveCode[0]} field={liveCode[1]} answers={answers} press={(key) => change({ do: 'key', field: liveCode[0], key })} />
      )}
      {!(liveField || liveCode) &&
        others.map(([key, field]) => (
          <div className="ask" key={key}>
            {needsLabel(field, others.length) && <FieldLabel field={field} />}
            <One field={field} id={key} answers={answers} last={last} defects={defects} opened={opened} wide={false} change={change} open={open} />
          </div>
        ))}
      {groups.length === 0 && !liveCode && verdict}
    </>
  );
};

const FieldLabel = ({ field }: { readonly field: Field }) => (
  <p className="label">
    {field.label}
    {field.optional && field.type !== 'many' ? <small>, if you like</small> : ''}
  </p>
);

const needsLabel = (field: Field, count: number): boolean =>
  (count > 1 && field.type !== 'many' && !('pictures' in field && field.pictures)) || field.type === 'text' || field.type === 'code' || field.type === 'day';

export const LiveKeys = ({ entry: [key, field], change }: { readonly entry: readonly [string, NumberField]; readonly change: (change: Change) => void }) => (
  <NumberKeys label={field.label} signed={field.quantity === 'temperature'} press={(k) => change({ do: 'key', field: key, key: k })} />
);

type OneProps = {
  readonly id: string;
  readonly field: Field;
  readonly answers: Answers;
  readonly last: Answers | undefined;
  readonly defects: readonly Option[];
  readonly opened: string | undefined;
  readonly wide: boolean;
  readonly change: (change: Change) => void;
  readonly open: (key: string | undefined) => void;
};

const text = (answers: Answers, key: string): string => (typeof answers[key] === 'string' ? (answers[key] as string) : '');

const One = ({ id, field, answers, last, defects, opened, wide, change, open }: OneProps) => {
  switch (field.type) {
    case 'choice': {
      const chosen = text(answers, id) || undefined;
      const before = last?.[id];
      return (
        <ChoiceField
          field={field}
          chosen={chosen}
          last={typeof before === 'string' ? before : undefined}
          folded={!wide && chosen !== undefined && opened !== id && (field.pictures !== undefined || field.options.length > 3)}
          open={() => open(id)}
          choose={(option) => change({ do: 'choose', field: id, option })}
        />
      );
    }
    case 'many': {
      const chosen = Array.isArray(answers[id]) ? (answers[id] as readonly string[]) : [];
      const options = field.options === 'defects-of-station' ? defects : field.options;
      return <ManyField label={field.label} options={options} chosen={chosen} toggle={(option) => change({ do: 'toggle', field: id, option })} />;
    }
    case 'flag':
      return (
        <ManyField
          label={field.label}
          options={[{ id, word: field.label, ...(field.meaning === undefined ? {} : { line: field.meaning }) }]}
          chosen={answers[id] === true ? [id] : []}
          toggle={() => change({ do: 'flag', field: id, value: answers[id] !== true })}
        />
      );
    case 'code':
      return (
        <input
          className="text-in"
          aria-label={field.label}
          inputMode={field.code === 'tyre-date' ? 'numeric' : 'text'}
          maxLength={24}
          autoComplete="off"
          autoCapitalize="characters"
          value={text(answers, id)}
          onChange={(e) => change({ do: 'text', field: id, text: e.currentTarget.value })}
        />
      );
    case 'day':
      return (
        <input
          className="text-in"
          aria-label={field.label}
          type="date"
          value={text(answers, id)}
          onChange={(e) => change({ do: 'text', field: id, text: e.currentTarget.value })}
        />
      );
    case 'text':
      return (
        <textarea
          className="text-in"
          aria-label={field.label}
          maxLength={field.most ?? 4000}
          value={text(answers, id)}
          onChange={(e) => change({ do: 'text', field: id, text: e.currentTarget.value })}
        />
      );
    default:
      return null;
  }
};
