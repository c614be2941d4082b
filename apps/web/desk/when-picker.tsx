import { useId } from 'react';
import { type CivilDay, isoDay, parseDay, parseWhen, showDay } from '../../../src/units';
import { nowText } from '../shared/clock';

/** When it was so: now, on a day that is gone, or some time within a span. */
export type WhenAnswer =
  | { readonly form: 'now' }
  | { readonly form: 'day'; readonly day: string }
  | { readonly form: 'span'; readonly from: string; readonly to: string }
  | { readonly form: 'as-written'; readonly text: string };

/** The answer as the logbook writes it; undefined while it names no real time. */
export const observedAt = (when: WhenAnswer): string | undefined => {
  switch (when.form) {
    case 'now':
      return nowText();
    case 'as-written':
      return when.text;
    case 'day':
      return parseDay(when.day) === undefined ? undefined : `${when.day}/${when.day}`;
    case 'span':
      return parseWhen(`${when.from}/${when.to}`) ? `${when.from}/${when.to}` : undefined;
  }
};

/** What is wrong with it, beside the fields. */
export const whenRefusal = (when: WhenAnswer, today: CivilDay): string | undefined => {
  if (when.form === 'now' || when.form === 'as-written') return undefined;
  const [from, to] = when.form === 'day' ? [parseDay(when.day), parseDay(when.day)] : [parseDay(when.from), parseDay(when.to)];
  if (from === undefined || to === undefined) return 'Give a day that is in the calendar.';
  if (to < from) return 'The span ends before it begins. Change one of the two days.';
  if (from > today) return `${showDay(from)} has not come yet. Give the day on which it was seen.`;
  return undefined;
};

/** `2022-03-01/2022-05-31` in words. */
export const whenWords = (text: string): string => {
  const when = parseWhen(text);
  if (!when) return text;
  if (when.form === 'instant') return `${showDay(when.day, true)}, ${text.slice(11, 16)}`;
  return when.from === when.to ? showDay(when.from, true) : `between ${showDay(when.from, true)} and ${showDay(when.to, true)}`;
};

/** A time that lasted from its first day to its last: a stay, a leg. */
export const whileWords = (text: string): string => {
  const when = parseWhen(text);
  return when?.form === 'span' && when.from !== when.to ? `${showDay(when.from, true)} to ${showDay(when.to, true)}` : whenWords(text);
};

/** The day alone, without the hour. */
export const dayWords = (text: string): string => {
  const when = parseWhen(text);
  return when?.form === 'instant' ? showDay(when.day, true) : whenWords(text);
};

/** The shape a kept time takes in the form again. */
export const whenOf = (text: string): WhenAnswer => {
  const when = parseWhen(text);
  if (when?.form !== 'span') return { form: 'as-written', text };
  return when.from === when.to ? { form: 'day', day: isoDay(when.from) } : { form: 'span', from: isoDay(when.from), to: isoDay(when.to) };
};

export const WhenPicker = ({
  when,
  today,
  shown,
  onChange,
}: {
  readonly when: WhenAnswer;
  readonly today: CivilDay;
  readonly shown: boolean;
  readonly onChange: (when: WhenAnswer) => void;
}) => {
  const id = useId();
  const last = isoDay(today);
  const refusal = shown ? whenRefusal(when, today) : undefined;
  return (
    <fieldset className="field-row">
      <legend>When it was so</legend>
      <div className="options inline">
        {when.form === 'as-written' ? (
          <label className="option">
            <input type="radio" name={id} checked readOnly />
            <span>
              <b>{whenWords(when.text)}</b>
            </span>
          </label>
        ) : null}
        <label className="option">
          <input type="radio" name={id} checked={when.form === 'now'} onChange={() => onChange({ form: 'now' })} />
          <span>
            <b>Now</b>
          </span>
        </label>
        <label className="option">
          <input type="radio" name={id} checked={when.form === 'day'} onChange={() => onChange({ form: 'day', day: last })} />
          <span>
            <b>On a day</b>
          </span>
        </label>
        <label className="option">
          <input type="radio" name={id} checked={when.form === 'span'} onChange={() => onChange({ form: 'span', from: last, to: last })} />
          <span>
            <b>Some time between two days</b>
          </span>
        </label>
      </div>
      {when.form === 'day' && (
        <label className="day-field">
          Day <input type="date" max={last} value={when.day} onChange={(e) => onChange({ form: 'day', day: e.target.value })} />
        </label>
      )}
      {when.form === 'span' && (
        <span className="day-fields">
          <label className="day-field">
            From <input type="date" max={last} value={when.from} onChange={(e) => onChange({ ...when, from: e.target.value })} />
          </label>
          <label className="day-field">
            to <input type="date" value={when.to} onChange={(e) => onChange({ ...when, to: e.target.value })} />
          </label>
        </span>
      )}
      {when.form !== 'now' && when.form !== 'as-written' && <p className="mut small">For old papers. The day on which it is written down here is kept beside it.</p>}
      {refusal !== undefined && <p className="refusal">{refusal}</p>}
    </fieldset>
  );
};
