import { useState } from 'react';
import type { Field, Option } from '../../../../src/terms';
import { Over } from '../../shared/dialog';
import { Picture } from '../../shared/picture';

type ChoiceDeclared = Extract<Field, { type: 'choice' }>;

type Props = {
  readonly field: ChoiceDeclared;
  readonly chosen: string | undefined;
  readonly last?: string | undefined;
  readonly choose: (option: string) => void;
  /** Folded to the chosen row; a press opens it again. */
  readonly folded?: boolean;
  readonly open?: () => void;
};

/** `S4 Open`: a step's own sign is set in bold before its word. */
export const OptionWord = ({ option }: { readonly option: Option }) => {
  const step = /^([A-Z]\d) (.+)$/.exec(option.word);
  return step ? (
    <>
      <b>{step[1]}</b>&nbsp;{step[2]}
    </>
  ) : (
    option.word
  );
};

/** The pressed picture is gone once it has folded: the row takes its focus, so that the keyboard stays where it was. */
const takeFocus = (row: HTMLButtonElement | null): void => {
  if (document.activeElement === document.body) row?.focus({ preventScroll: true });
};

const LONG_LIST = 6;

/** A choice as its declaration asks: pictured steps, a row of short words, lines, or a long list behind one row. */
export const ChoiceField = ({ field, chosen, last, choose, folded = false, open }: Props) => {
  const [listing, setListing] = useState(false);
  const picked = field.options.find((o) => o.id === chosen);
  if (folded && picked)
    return (
      <button
        type="button"
        ref={takeFocus}
        className={`press chosen folded${field.pictures ? '' : ' wordy'}`}
        onClick={open}
        aria-expanded="false"
        aria-label={`${field.label}: ${picked.word}. Change it`}
      >
        {field.pictures && <Picture set={field.pictures} step={picked.id} />}
        <span>
          <b>{picked.word}</b>
          {picked.line}
        </span>
      </button>
    );
  if (field.pictures)
    return (
      <fieldset className={`pictures of-${field.options.length}`} aria-label={field.label}>
        {field.options.map((o) => (
          <button key={o.id} type="button" className="press" aria-pressed={o.id === chosen} title={o.line} onClick={() => choose(o.id)}>
            <Picture set={field.pictures ?? ''} step={o.id} />
            <span className="word">
              <span>
                <OptionWord option={o} />
              </span>
            </span>
            {o.id === last && <span className="last">last</span>}
          </button>
        ))}
      </fieldset>
    );
  if (field.options.length > LONG_LIST)
    return (
      <>
        <button
          type="button"
          className={`press folded wordy${picked ? ' chosen' : ''}`}
          onClick={() => setListing(true)}
          aria-label={`${field.label}: ${picked ? picked.word : 'choose'}`}
        >
          <span>
            <b>{picked?.word ?? 'Choose'}</b>
            {picked?.line}
          </span>
        </button>
        {listing && (
          <Over label={field.label} close={() => setListing(false)}>
            <h2>{field.label}</h2>
            <Lines
              options={field.options}
              chosen={chosen}
              last={last}
              choose={(o) => {
                setListing(false);
                choose(o);
              }}
              label={field.label}
            />
          </Over>
        )}
      </>
    );
  return <Lines options={field.options} chosen={chosen} last={last} choose={choose} label={field.label} />;
};

const SHORT = 13;
const MOST_IN_ROW = 3;

export const isShortRow = (options: readonly Option[]): boolean => options.length <= MOST_IN_ROW && options.every((o) => o.word.length <= SHORT);

const Lines = ({
  options,
  chosen,
  last,
  choose,
  label,
}: {
  readonly options: readonly Option[];
  readonly chosen: string | undefined;
  readonly last: string | undefined;
  readonly choose: (option: string) => void;
  readonly label: string;
}) => {
  const row = isShortRow(options);
  return (
    <fieldset className={row ? `choices of-${options.length}` : 'choices lines'} aria-label={label}>
      {options.map((o) => (
        <button key={o.id} type="button" className="press" aria-pressed={o.id === chosen} onClick={() => choose(o.id)}>
          {row ? (
            o.word
          ) : (
            <>
              <b>
                {o.word}
                {o.id === last && ' (last round)'}
              </b>
              {o.line}
            </>
          )}
        </button>
      ))}
    </fieldset>
  );
};
