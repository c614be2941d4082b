import { useState } from 'react';
import type { FacePoint } from '../../../../src/terms';
import type { Preferences } from '../../../../src/units';
import { samePoint } from './series';
import { readPoint, STEPS, type Step, stepWords, type Tapes, tapeSymbol, typedOf } from './wall-measure';

type Props = {
  readonly point: FacePoint | undefined;
  readonly tapes: Tapes;
  readonly step: Step;
  readonly preferences: Preferences;
  readonly setStep: (step: Step) => void;
  /** By steps of the grid, as it is seen: rightward, upward. */
  readonly move: (right: number, up: number) => void;
  readonly place: (point_m: FacePoint) => void;
  /** Enter in one of the two fields. */
  readonly done: () => void;
};

const ARROWS: readonly (readonly [sign: string, name: string, right: number, up: number])[] = [
  ['←', 'Left', -1, 0],
  ['↑', 'Up', 0, 1],
  ['↓', 'Down', 0, -1],
  ['→', 'Right', 1, 0],
];

/** The place in steps and in lengths off a tape: the way to choose it without a touch on the drawing. */
export const PlaceKeys = ({ point, tapes, step, preferences, setStep, move, place, done }: Props) => {
  const shown = point ? typedOf(point, tapes, preferences) : (['', ''] as const);
  const [typed, setTyped] = useState<readonly [string, string]>();
  const read = typed?.every((t) => t.trim() !== '') ? readPoint(typed, tapes, preferences) : undefined;
  // What was typed stands as typed, until the place is moved otherwise.
  const texts = typed && !(read?.ok && point && !samePoint(read.point_m, point)) ? typed : shown;
  const put = (i: 0 | 1, text: string): void => {
    const next: readonly [string, string] = i === 0 ? [text, texts[1]] : [texts[0], text];
    setTyped(next);
    const found = next.every((t) => t.trim() !== '') ? readPoint(next, tapes, preferences) : undefined;
    if (found?.ok) place(found.point_m);
  };
  return (
    <div className="low group place-keys">
      <fieldset className="choices of-3" aria-label="Steps of the grid">
        {STEPS.map((s) => (
          <button key={s} type="button" className="press" aria-pressed={s === step} onClick={() => setStep(s)}>
            {stepWords(s, preferences)}
          </button>
        ))}
      </fieldset>
      <fieldset className="keys" aria-label="Move the place by a step">
        {ARROWS.map(([sign, name, right, up]) => (
          <button
            key={name}
            type="button"
            className="press"
            aria-label={name}
            onClick={() => {
              setTyped(undefined);
              move(right, up);
            }}
          >
            {sign}
          </button>
        ))}
      </fieldset>
      <div className="lengths">
        {tapes.map((tape, i) => (
          <label key={tape.label}>
            <span>
              {tape.label}, {tapeSymbol(preferences)}
            </span>
            <input
              className="text-in"
              type="text"
              inputMode={preferences.system === 'us' ? 'text' : 'decimal'}
              autoComplete="off"
              value={texts[i] ?? ''}
              onKeyDown={(e) => e.key === 'Enter' && done()}
              onChange={(e) => put(i === 0 ? 0 : 1, e.currentTarget.value)}
            />
          </label>
        ))}
      </div>
      {read && !read.ok && <p className="refusal">{read.sentence}</p>}
    </div>
  );
};
