import type { Option } from '../../../../src/terms';

type Props<Id extends string> = {
  readonly label: string;
  readonly options: readonly (Option & { readonly id: Id })[];
  readonly chosen: string | undefined;
  readonly choose: (id: Id) => void;
  /** One below the other with the line that says when it is right. */
  readonly lines?: boolean;
};

/** A question with a few answers; a press answers it and goes on. */
export const ChoiceGrid = <Id extends string>({ label, options, chosen, choose, lines = false }: Props<Id>) => (
  <fieldset className={lines ? 'choices lines' : `choices of-${options.length <= 3 ? options.length : 2}`} aria-label={label}>
    {options.map((o) => (
      <button key={o.id} type="button" className="press" aria-pressed={o.id === chosen} title={o.line} onClick={() => choose(o.id)}>
        {lines ? (
          <>
            <b>{o.word}</b>
            {o.line}
          </>
        ) : (
          o.word
        )}
      </button>
    ))}
  </fieldset>
);
