import type { Plan, ReadyToRoll } from '../../../src/plan';
import type { Mark } from '../../../src/terms';

export const readyHead = ({ answer }: ReadyToRoll): string => (answer === 'yes' ? 'Ready to roll' : answer === 'no' ? 'Not ready to roll' : 'Ready to roll: not known');

export const readyMark = (plan: Plan): Mark => {
  if (plan.ready.answer === 'yes') return 'sound';
  if (plan.ready.answer === 'not-known') return 'not-seen';
  return plan.findings.some((f) => f.urgency === 'do-not-use' && OPEN.includes(f.life)) ? 'do-not-use' : 'before-moving';
};

/** Lives in which a finding still asks for something. */
export const OPEN: readonly string[] = ['open', 'reopened'];

/** The answer's reason in one line; how many more there are is said. */
export const readyLine = ({ because, answer }: ReadyToRoll): string => {
  const [first] = because;
  if (!first) return answer === 'yes' ? 'Everything that must be right was seen in time.' : '';
  const more = because.length - 1;
  return `${/[.?]$/.test(first.text) ? first.text : `${first.text}.`}${more > 0 ? ` And ${more} more.` : ''}`;
};
