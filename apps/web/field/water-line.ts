import type { Leak, Plan } from '../../../src/plan';

const isStopped = (leak: Leak): boolean => leak.stop.state === 'stopped' || leak.other_causes.some((c) => c.state === 'it-is-this');

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** Where a rig stands with water, in a few words on its home. */
export const waterLine = (plan: Plan): string => {
  const { leaks, panels } = plan.water;
  const open = leaks.filter((l) => !isStopped(l));
  if (open.some((l) => l.stop.state === 'open' || l.stop.state === 'reopened')) return count(open.length, 'leak open', 'leaks open');
  if (open.length > 0) return 'repaired, to be proved';
  if (leaks.some((l) => l.stop.state === 'stopped' && l.dryness.state !== 'dry')) return 'stopped, not dry yet';
  if (leaks.some((l) => l.stop.state === 'stopped')) return 'stopped, dry again';
  return panels.length === 0 ? 'nothing metered yet' : 'no leak known';
};
