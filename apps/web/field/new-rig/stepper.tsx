import { useState } from 'react';
import { quantities, type UnitSystem } from '../../../../src/units';
import { Over } from '../../shared/dialog';
import { Primary } from '../frame';
import { bothSystems } from './both-systems';

type Props = {
  readonly label: string;
  readonly value_m: number;
  /** The layout's own size, not yet said by anyone. */
  readonly typical: boolean;
  readonly system: UnitSystem;
  readonly step: (by: 1 | -1) => void;
  /** Whether the text could be read. */
  readonly type: (text: string, unit: string) => boolean;
};

/** A size: one press less, one press more, or typed in either system. */
export const Stepper = ({ label, value_m, typical, system, step, type }: Props) => {
  const [typing, setTyping] = useState(false);
  const [first, second] = bothSystems(value_m, system);
  return (
    <div className="stepper">
      <button type="button" className="press" aria-label={`Less ${label}`} onClick={() => step(-1)}>
        −
      </button>
      <button type="button" className="press value" onClick={() => setTyping(true)} aria-label={`${first} ${label}${typical ? ', typical' : ''}. Type it`}>
        <b>{first}</b>
        {label}, {second}
        {typical && <span className="unseen">, typical</span>}
      </button>
      <button type="button" className="press" aria-label={`More ${label}`} onClick={() => step(1)}>
        +
      </button>
      {typing && <TypeSize label={label} system={system} type={type} close={() => setTyping(false)} />}
    </div>
  );
};

/** The sheet was opened to type this one figure. */
const focusOnce = (input: HTMLInputElement | null): void => input?.focus();

const UNITS: readonly string[] = ['ft', 'in', 'm', 'cm'];

const TypeSize = ({ label, system, type, close }: { readonly label: string; readonly system: UnitSystem; readonly type: Props['type']; readonly close: () => void }) => {
  const [text, setText] = useState('');
  const [unit, setUnit] = useState<string>(quantities.length.usual[system]);
  const [wrong, setWrong] = useState(false);
  const done = (): void => {
    if (type(text, unit)) close();
    else setWrong(true);
  };
  return (
    <Over label={`Type how ${label}`} close={close}>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          done();
        }}
      >
        <label className="ask">
          <span className="label">How {label}</span>
          <input
            className="text-in"
            inputMode={unit === 'ft' ? 'text' : 'decimal'}
            ref={focusOnce}
            value={text}
            onChange={(e) => setText(e.currentTarget.value)}
            placeholder={unit === 'ft' ? '24 ft 6 in' : ''}
          />
        </label>
        {wrong && (
          <p className="refusal" role="alert">
            That is not a length. Type figures, such as 24 ft 6 in or 7.5.
          </p>
        )}
        <fieldset className="choices of-4" aria-label="Unit">
          {UNITS.map((u) => (
            <button key={u} type="button" className="press" aria-pressed={u === unit} onClick={() => setUnit(u)}>
              {u}
            </button>
          ))}
        </fieldset>
      </form>
      <Primary words="Use this size" act={done} disabled={text.trim() === ''} />
    </Over>
  );
};
