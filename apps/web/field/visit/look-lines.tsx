import { useState } from 'react';
import type { StationView } from '../../session/session';

/** About one line beside its verb. [characters] */
const SHORT = 36;

/** The first clauses that fit on one line; the whole text is one press away. */
export const shortLook = (text: string, most = SHORT): string => {
  if (text.length <= most) return text;
  const cut = text.slice(0, most + 1);
  const at = Math.max(cut.lastIndexOf('; '), cut.lastIndexOf(', '), cut.lastIndexOf(': '), cut.lastIndexOf(' ('));
  return at > most / 3 ? text.slice(0, at) : `${text.slice(0, text.lastIndexOf(' ', most))} …`;
};

const MOST_LINES = 3;

export const LookLines = ({ looks }: { readonly looks: StationView['looks'] }) => {
  const [whole, setWhole] = useState(false);
  const shown = looks.filter((l) => whole || l.verb !== 'Sound').slice(0, whole ? looks.length : MOST_LINES);
  if (shown.length === 0) return null;
  return (
    <button type="button" className={whole ? 'looks-button whole' : 'looks-button'} aria-expanded={whole} onClick={() => setWhole(!whole)}>
      {shown.map((l) => (
        <span key={l.verb} className="look-line">
          <b>{l.verb}</b> <span>{lower(whole ? l.line : shortLook(l.line))}</span>
        </span>
      ))}
      {!whole && looks.some((l) => l.verb === 'Sound' || l.line.length > SHORT) && <span className="more-looks">more</span>}
    </button>
  );
};

const lower = (text: string): string => (/^[A-Z][a-z' ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);
