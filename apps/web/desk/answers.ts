import { standing } from '../../../src/drawing';
import type { Finding, Job, Life, Plan, ReadyToRoll } from '../../../src/plan';
import { MARK_WORD, type Urgency, type Who } from '../../../src/terms';
import { showDay } from '../../../src/units';
import { count } from './desk';

/** The sentence a page opens with. It says what the record says, never more. */
export const readySentence = (ready: ReadyToRoll): string => {
  const n = ready.because.length;
  if (ready.answer === 'yes') return 'Ready to roll: yes';
  if (ready.answer === 'no') return `Ready to roll: no, ${count(n, 'thing stands', 'things stand')} against it`;
  return n === 0 ? 'Ready to roll: not known' : `Ready to roll: not known, ${count(n, 'thing has', 'things have')} not been seen in time`;
};

const ROUND: Readonly<Record<Urgency, string>> = {
  'do-not-use': 'not to be used',
  'before-moving': 'to be settled before moving',
  'before-rain': 'to be settled before rain',
  'this-season': 'to be settled this season',
  watch: 'to be watched',
};

export const urgencyPhrase = (urgency: Urgency): string => ROUND[urgency];

const LIFE: Readonly<Record<Life, string>> = {
  open: 'Open',
  'proof-due': 'Mended, proof due',
  proved: 'Proved to hold',
  'seen-sound': 'Seen sound since',
  reopened: 'Reopened: it did not hold',
  'put-off': 'Put off',
  declined: 'Declined by the owner',
  'judged-otherwise': 'Judged otherwise',
  'handed-over': 'Handed over',
};

/** "Mended, proof due 3 May 2026". */
export const lifeWords = (finding: Finding): string => {
  const word = LIFE[finding.life];
  if (finding.due === undefined) return word;
  if (finding.life === 'put-off') return `${word} until ${showDay(finding.due)}`;
  return finding.life === 'proof-due' ? `${word} ${showDay(finding.due)}` : `${word}, look again ${showDay(finding.due)}`;
};

/** Findings that still stand, as the drawing numbers them. */
export const openFindings = (plan: Plan): readonly Finding[] => standing(plan);

export const whoWords = (who: Who): string => (who === 'professional' ? 'For a professional' : 'Yourself');

const hours = (minutes: number): string => {
  if (minutes < 60) return `${minutes} min`;
  const h = Math.floor(minutes / 60);
  const rest = minutes % 60;
  return rest === 0 ? `${h} h` : `${h} h ${rest} min`;
};

export const minutesWords = (minutes: readonly [number, number] | undefined): string => {
  if (!minutes) return '';
  const [low, high] = minutes;
  return low === high ? `about ${hours(low)}` : high < 60 ? `${low} to ${high} min` : `${hours(low)} to ${hours(high)}`;
};

/** Jobs by urgency, the most urgent first, groups that hold nothing left out. */
export const byUrgencyGroups = <T extends { readonly urgency: Urgency }>(
  items: readonly T[],
): readonly { readonly urgency: Urgency; readonly word: string; readonly items: readonly T[] }[] => {
  const order: readonly Urgency[] = ['do-not-use', 'before-moving', 'before-rain', 'this-season', 'watch'];
  return order.map((urgency) => ({ urgency, word: MARK_WORD[urgency], items: items.filter((i) => i.urgency === urgency) })).filter((g) => g.items.length > 0);
};

export const jobOf = (plan: Plan, finding: string): Job | undefined => plan.jobs.find((j) => j.findings.includes(finding));

/** The number that stands beside a finding everywhere: its place in the list that the drawing is numbered by. */
export const numberOf = (plan: Plan, finding: string): number | undefined => {
  const index = openFindings(plan).findIndex((f) => f.id === finding);
  return index < 0 ? undefined : index + 1;
};
