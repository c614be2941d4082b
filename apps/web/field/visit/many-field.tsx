import type { Option } from '../../../../src/terms';
import { TickSign } from '../../shared/signs';

type Props = { readonly label: string; readonly options: readonly Option[]; readonly chosen: readonly string[]; readonly toggle: (option: string) => void };

/** Several answers: two columns of boxes, each a press. */
export const ManyField = ({ label, options, chosen, toggle }: Props) => (
  <fieldset className="boxes" aria-label={label}>
    {options.map((o) => (
      <button key={o.id} type="button" className="press" aria-pressed={chosen.includes(o.id)} title={o.line} onClick={() => toggle(o.id)}>
        <span className="box">{chosen.includes(o.id) && <TickSign />}</span>
        <span>{o.word}</span>
      </button>
    ))}
  </fieldset>
);
