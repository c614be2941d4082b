import { EraseSign } from '../../shared/signs';
import { ERASE } from './form';

type Props = { readonly press: (key: string) => void; readonly label: string /** A reading that may lie below zero. */; readonly signed?: boolean };

const ROWS = ['1', '2', '3', ERASE, '4', '5', '6', '0', '7', '8', '9'] as const;

/** Twelve keys of 72 px, four in a row; erase, nought and point stand in the last column. Where a reading may lie below zero the last key is its sign. */
export const NumberKeys = ({ press, label, signed = false }: Props) => (
  <fieldset className="keys low" aria-label={`Keys for ${label.toLowerCase()}`}>
    {[...ROWS, signed ? MINUS : '.'].map((key) => (
      <button key={key} type="button" className="press" aria-label={SPOKEN[key] ?? key} onClick={() => press(key)}>
        {key === ERASE ? <EraseSign /> : key === MINUS ? '±' : key}
      </button>
    ))}
  </fieldset>
);

const MINUS = '−';
const SPOKEN: Readonly<Record<string, string>> = { [ERASE]: 'Erase', '.': 'Decimal point', [MINUS]: 'Above or below zero' };
