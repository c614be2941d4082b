import type { Finding } from '../../../../src/plan';
import { MARK_WORD } from '../../../../src/terms';
import { MarkSign } from '../../shared/mark-sign';

const MOST_REASONS = 2;

/** What the rules say of the answer: mark, word, and the reasons. It comes with the touch that decides it. */
export const Verdict = ({
  findings,
  brief = false,
}: {
  readonly findings: readonly Finding[] /** The keys need the room: the reason is cut to two lines. */;
  readonly brief?: boolean;
}) => {
  const [worst, ...others] = findings;
  if (!worst) return null;
  return (
    <section className={brief ? 'verdict brief' : 'verdict'} aria-label="Verdict">
      <MarkSign mark={worst.urgency} who={worst.who} />
      <div>
        <h2>
          {MARK_WORD[worst.urgency]}: {lowerFirst(worst.title)}
        </h2>
        <p>
          {worst.because
            .slice(0, MOST_REASONS)
            .map((b) => sentence(b.text))
            .join(' ')}
        </p>
        {worst.who === 'professional' && !brief && <p>For a professional.</p>}
        {others.length > 0 && !brief && <p>Also: {others.map((f) => lowerFirst(f.title)).join(', ')}.</p>}
      </div>
    </section>
  );
};

const sentence = (text: string): string => (/[.?]$/.test(text) ? text : `${text}.`);
const lowerFirst = (text: string): string => (/^[A-Z][a-z ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);
