import { EraseSign } from '../../shared/signs';
import { ERASE } from './form';

type Props = { readonly press: (key: string) => void; readonly label: string /** A reading that may lie below zero. */; readonly signed?: boolean };

const ROWS = ['1', '2', '3', ERASE, '4', '5', '6', '0', '7', '8', '9', '.'] as const;

/** Twelve keys of 72 px, four in a row; erase, nought and point stand in the last column. */
export const NumberKeys = ({ press, label, signed = false }: Props) => (
  <fieldset className="keys" aria-label={`Keys for ${label.toLowerCase()}`}>
    {ROWS.map((key) => (
      <button key={key} type="button" className="press" aria-label={key === ERASE ? 'Erase' : key === '.' ? 'Decimal point' : key} onClick={() => press(key)}>
        {key === ERASE ? <EraseSign /> : key}
      </button>
    ))}
    {signed && (
      <button type="button" className="press small" onClick={() => press('−')}>
        below 0
      </button>
    )}
  </fieldset>
);
