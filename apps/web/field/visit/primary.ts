import type { AnyKind, Field, Option } from '../../../../src/terms';
import { type CivilDay, unitOf } from '../../../../src/units';
import { isPlain } from './ask';
import { isShortRow } from './choice-field';
import { type Answers, ready, shownFields } from './form';
import { isTyped, type Visit } from './visit';

/** What the large button says and does now. */
export type Doing = {
  readonly does: 'same' | 'sound' | 'focus' | 'close-keys' | 'agree' | 'on';
  readonly words: string;
  readonly second?: string;
  readonly field?: string;
  readonly disabled?: boolean;
};

type Situation = {
  readonly kind: AnyKind;
  readonly answers: Answers;
  readonly visit: Visit;
  readonly agreed: boolean;
  /** What this place answered before this round. */
  readonly before: { readonly words: string; readonly repeatable: boolean } | undefined;
  readonly nextKind: string | undefined;
  readonly next: { readonly name: string; readonly same: boolean; readonly group: string } | undefined;
  readonly by: string;
  /** Whether the rules found something in what was given: then the questions that explain it are asked too. */
  readonly found: boolean;
  readonly today?: CivilDay;
};

const lower = (text: string): string => (/^[A-Z][a-z' ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);

const soundOption = (kind: AnyKind): Option | undefined => {
  const field: Field | undefined = kind.sound ? kind.fields[kind.sound.field] : undefined;
  return field?.type === 'choice' ? field.options.find((o) => o.id === kind.sound?.answer) : undefined;
};

const onward = ({ nextKind, next }: Situation): Pick<Doing, 'words' | 'second'> => {
  if (nextKind !== undefined) return { words: `Next: ${lower(nextKind)}`, second: 'same place' };
  if (!next) return { words: 'Finish the round', second: 'this was the last stop' };
  return { words: `Next: ${lower(next.name)}`, ...(next.same ? {} : { second: next.group }) };
};

/** The number to type next: the partner of the one that was typed, where it is still empty and has not been passed over. */
export const partnerOf = (kind: AnyKind, live: string, answers: Answers): string | undefined => {
  const field: Field | undefined = kind.fields[live];
  const partner = field?.type === 'number' ? field.partner : undefined;
  return partner !== undefined && answers[partner] === undefined ? partner : undefined;
};

const otherNumber = (kind: AnyKind, live: string, answers: Answers): string | undefined => {
  const shown = shownFields(kind, answers);
  return shown.find(([key, f]) => key !== live && f.type === 'number' && answers[key] === undefined && !f.optional && isPlain(shown, key))?.[0];
};

/** Three figures were used until 2000, four since: with fewer the code is not finished, and nothing is wrong with it yet. */
const SHORTEST_CODE = 3;

const typing = (s: Situation, live: string): Doing => {
  const field: Field | undefined = s.kind.fields[live];
  const raw = s.answers[live];
  const label = lower(field?.label ?? live);
  const state = ready(s.kind, s.answers, s.today);
  if (raw === undefined && !field?.optional) return { does: 'focus', field: live, words: `Type the ${label}`, second: 'a number is measured or not given', disabled: true };
  if (field?.type === 'code' && typeof raw === 'string' && raw.length < SHORTEST_CODE)
    return { does: 'focus', field: live, words: `Type the ${label}`, second: 'all figures of the last group', disabled: true };
  if (state.state === 'refused') return { does: 'focus', field: live, words: 'Check the figure', second: state.refusals[0]?.sentence ?? '', disabled: true };
  if (state.state === 'complete' && !s.agreed) return doubtful(s, state.doubts[0]?.path ?? live);
  const next = partnerOf(s.kind, live, s.answers) ?? otherNumber(s.kind, live, s.answers);
  if (next !== undefined) return { does: 'focus', field: next, words: `Next: ${lower(s.kind.fields[next]?.label ?? next)}` };
  if (state.state === 'unfinished' || (state.state === 'complete' && s.found && hasMore(s)))
    return { does: 'close-keys', words: `Next: ${lower(openChoice(s) ?? 'what goes with it')}`, second: s.kind.title };
  return { does: 'on', ...onward(s) };
};

/** The first choice that could still explain what was found. */
const openChoice = ({ kind, answers }: Situation): string | undefined =>
  shownFields(kind, answers).find(([key, f]) => f.type === 'choice' && !isShortRow(f.options) && answers[key] === undefined)?.[1].label;

const hasMore = (s: Situation): boolean => openChoice(s) !== undefined;

const doubtful = ({ answers, kind }: Situation, path: string): Doing => {
  const raw = answers[path];
  const field: Field | undefined = kind.fields[path];
  const given = typeof raw === 'object' && 'text' in raw && field?.type === 'number' ? `${raw.text} ${unitOf(field.quantity, raw.unit).symbol}` : 'it';
  return { does: 'agree', words: `Yes, ${given} is right`, second: 'or change figure or unit above' };
};

export const primaryOf = (s: Situation): Doing => {
  const { kind, answers, visit, before, by } = s;
  if (visit.live !== undefined) return typing(s, visit.live);
  const state = ready(kind, answers, s.today);
  switch (state.state) {
    case 'empty': {
      if (before?.repeatable) return { does: 'same', words: 'Same as last round', second: `${before.words}, looked at today${by === '' ? '' : ` by ${by}`}` };
      const sound = soundOption(kind);
      if (sound) return { does: 'sound', words: sound.word, second: sound.line ?? 'nothing wrong' };
      const first = shownFields(kind, answers).find(([, f]) => isTyped(f));
      if (first) return { does: 'focus', field: first[0], words: `Type the ${lower(first[1].label)}` };
      return { does: 'on', words: 'Choose above', second: kind.title, disabled: true };
    }
    case 'unfinished':
      return { does: 'on', words: `Still to answer: ${lower(state.missing[0] ?? '')}`, disabled: true };
    case 'refused':
      return { does: 'on', words: 'Check the answer', second: state.refusals[0]?.sentence ?? '', disabled: true };
    case 'complete':
      return s.agreed ? { does: 'on', ...onward(s) } : doubtful(s, state.doubts[0]?.path ?? '');
  }
};
