import type { AnyKind, Field } from '../terms';
import { quantities, type Refusal, readQuantity, showIn, showTyped, type Typed, unitOf } from '../units';

/**
 * A question before something is kept: the figure is possible, and unlike what is usual. Never a refusal; whoever answers
 * that it is right keeps it.
 */
export type Doubt = Refusal & {
  /** The same figure in other units, where that would be usual. */
  readonly instead: readonly Typed[];
};

const isTyped = (value: unknown): value is Typed => typeof value === 'object' && value !== null && 'typed' in value;

const inOtherUnits = (value: Typed, field: Extract<Field, { type: 'number' }>): readonly Typed[] =>
  quantities[field.quantity].units.flatMap((unit) => {
    if (unit.id === value.unit) return [];
    const read = readQuantity(value.typed, field.quantity, unit.id, field.usual);
    return read.ok ? [read.value] : [];
  });

const doubtOf = (key: string, field: Field, value: unknown): readonly Doubt[] => {
  if (field.type !== 'number' || field.usual === undefined || !isTyped(value)) return [];
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = field.usual;
  if (value.si >= least && value.si <= most) return [];
  const instead = inOtherUnits(value, field);
  const given = showTyped(value, field.quantity);
  const show = (si: number): string => showIn(si, field.quantity, value.unit);
  const expected =
    least === Number.NEGATIVE_INFINITY
      ? `usually ${show(most)} or less`
      : most === Number.POSITIVE_INFINITY
        ? `usually ${show(least)} or more`
        : `usually ${show(least)} to ${show(most)}`;
  const other = instead.map((t) => showTyped(t, field.quantity)).join(' or ');
  return [
    {
      code: instead.length > 0 ? 'other-unit-likely' : 'unusual',
      path: key,
      expected,
      received: given,
      sentence:
        instead.length > 0
          ? `${given} is unusual here. Did you mean ${other}?`
          : `${given} is unusual here (${expected}). Is the figure right, and the unit ${unitOf(field.quantity, value.unit).symbol}?`,
      instead,
    },
  ];
};

/** Everything in a readable body that should be asked about before it is kept. */
export const doubts = (kind: AnyKind, body: Readonly<Record<string, unknown>>): readonly Doubt[] =>
  Object.entries(kind.fields).flatMap(([key, field]) => doubtOf(key, field, body[key]));
