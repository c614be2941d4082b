import type { Field } from '../../terms';

/** The first question at most stations. It is about this part at this time, and never about what was not looked at. */
export const verdict = {
  type: 'choice',
  label: 'What you found',
  options: [
    { id: 'sound', word: 'Sound', line: 'looked at and tried, nothing wrong' },
    { id: 'something-wrong', word: 'Something wrong', line: 'say what below, or in the note' },
  ],
} as const satisfies Field;

export const SOUND = { field: 'verdict', answer: 'sound' } as const;

/** Shown only when something is wrong. */
export const WHEN_WRONG = { field: 'verdict', in: ['something-wrong'] } as const;
