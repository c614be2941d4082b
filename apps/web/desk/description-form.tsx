import { type FormEvent, useState } from 'react';
import { kindById, readBody } from '../../../src/entries';
import type { Fields, Place } from '../../../src/terms';
import type { Refusal } from '../../../src/units';
import { useDesk } from './desk';
import { type Answers, bodyOf, FieldForm } from './field-form';

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * A kind that describes, filled in with what stands already. Only what was changed is written, unless the kind needs
 * the whole; then what stands is said again.
 */
export const DescriptionForm = ({
  kindId,
  place,
  stands,
  whole = false,
  hidden = [],
  words,
  said,
}: {
  readonly kindId: string;
  readonly place: Place;
  readonly stands: Answers;
  readonly whole?: boolean;
  /** Answers that stand fixed and are not asked. */
  readonly hidden?: readonly string[];
  readonly words: string;
  readonly said: string;
}) => {
  const { preferences, keep, today } = useDesk();
  const kind = kindById(kindId);
  const [answers, setAnswers] = useState<Answers>(stands);
  const [refusals, setRefusals] = useState<readonly Refusal[]>([]);
  if (!kind) return null;
  const fields = kind.fields as Fields;
  const changed = Object.keys(fields).some((key) => !same(answers[key], stands[key]));

  const save = async (event: FormEvent) => {
    event.preventDefault();
    const touched = whole ? answers : Object.fromEntries(Object.entries(answers).filter(([key, value]) => !same(value, stands[key])));
    const { body, refusals: unread } = bodyOf(fields, touched);
    if (unread.length > 0) {
      setRefusals(unread);
      return;
    }
    const read = readBody(kind, body, '', today);
    setRefusals(read.ok ? [] : read.refusals);
    if (read.ok) await keep([{ kind: kindId, place, body }], said);
  };

  const named = new Set(Object.keys(fields));
  return (
    <form className="description-form" onSubmit={save} noValidate>
      <FieldForm
        fields={Object.fromEntries(Object.entries(fields).filter(([key]) => !hidden.includes(key)))}
        answers={answers}
        refusals={refusals}
        preferences={preferences}
        defects={[]}
        compact
        onChange={setAnswers}
      />
      {refusals
        .filter((r) => !named.has(r.path))
        .map((r) => (
          <p key={r.code} className="refusal" role="alert">
            {r.sentence}
          </p>
        ))}
      <p className="buttons">
        <button type="submit" className="button" disabled={!changed}>
          {words}
        </button>
      </p>
    </form>
  );
};
