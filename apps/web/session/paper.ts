import { digestOf, type Line, type State } from '../../../src/logbook';
import { conditionRecord, planSheet, walkSheet } from '../../../src/report';
import { type Rig, walkingOrder } from '../../../src/rig';
import type { Answer } from './planning';
import type { PaperWish } from './session';

/**
 * A sheet of paper as HTML that stands alone: what to walk by, what was found, what is to be done.
 * Its title block bears the digest of the very logbook it was made from, as the closing line of a copy and `verify` say it.
 */
export const paper = (
  state: State<Rig>,
  lines: readonly Line[],
  { plan, marks }: Pick<Answer, 'plan' | 'marks'>,
  { what, paper: size, preferences, by, form = 'full' }: PaperWish,
): string => {
  const rig = state.subject;
  const options = { paper: size, on: plan.on, preferences, digest: digestOf(lines.map((l) => l.hash)), ...(by === undefined ? {} : { by }) };
  if (what === 'plan') return planSheet(rig, plan, options);
  if (what === 'condition-record') return conditionRecord(rig, state, plan, { ...options, marks });
  return walkSheet(rig, walkingOrder(rig, { form, inside: [] }), plan, { ...options, state, form });
};
