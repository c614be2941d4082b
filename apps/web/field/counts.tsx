import type { Counts } from '../../../src/plan';
import { MARK_WORD, type Mark } from '../../../src/terms';
import { MarkSign } from '../shared/mark-sign';

const ORDER = ['do-not-use', 'before-moving', 'before-rain', 'this-season', 'watch', 'sound', 'not-seen'] as const satisfies readonly Mark[];
/** Shown even when there is none of it. */
const ALWAYS: readonly Mark[] = ['before-moving', 'before-rain', 'this-season', 'watch', 'sound', 'not-seen'];

/** How many of each, mark and word and number. */
export const CountsTable = ({ counts }: { readonly counts: Counts }) => (
  <dl className="counts">
    {ORDER.filter((m) => ALWAYS.includes(m) || counts[m] > 0).map((m) => (
      <div key={m}>
        <MarkSign mark={m} />
        <dt>{MARK_WORD[m]}</dt>
        <dd>{counts[m]}</dd>
      </div>
    ))}
  </dl>
);
