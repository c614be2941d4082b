import { type ReactNode, useMemo } from 'react';
import { dateCodePicture } from '../../../../src/drawing';
import { readDateCode } from '../../../../src/science';
import type { Field } from '../../../../src/terms';
import { dateOf, showDay } from '../../../../src/units';
import { today } from '../../shared/clock';
import { DrawingView } from '../../shared/drawing-view';
import type { Answers } from './form';
import { NumberKeys } from './number-keys';

type Props = {
  readonly id: string;
  readonly field: Field;
  readonly answers: Answers;
  readonly press: (key: string) => void;
  readonly verdict?: ReactNode /** Something was found: the reason takes the place of the drawing. */;
  readonly found?: boolean;
};

const LEAST_DIGITS = 3;

/** Where the date code stands on a tyre, drawn; what was typed, read out in words. */
export const DateCode = ({ id, field, answers, press, verdict, found = false }: Props) => {
  const raw = answers[id];
  const code = typeof raw === 'string' ? raw : '';
  const drawing = useMemo(() => dateCodePicture({ code }), [code]);
  return (
    <>
      {!found && <DrawingView drawing={drawing} className="date-code" silent />}
      <p className="code-read">
        <b className="figure">{code || '····'}</b> {inWords(code)}
      </p>
      {verdict}
      <NumberKeys label={field.label} press={press} />
    </>
  );
};

const inWords = (code: string): string => {
  if (code.length < LEAST_DIGITS) return 'week and year, the last group after DOT. Missing? Look on the inner side.';
  const now = today();
  const read = readDateCode(code, now);
  if (!read.ok) return read.refusals[0]?.sentence ?? '';
  if (read.value.form !== 'four-digit') return 'three digits. If there is no fourth, it was made before the year 2000: out of service.';
  const first = read.value.first_day;
  return `the week from ${showDay(first)}, ${ageWords(dateOf(first).year, dateOf(now).year)}`;
};

const ageWords = (made: number, year: number): string => (year - made < 1 ? 'this year’s' : year - made === 1 ? 'about a year old' : `about ${year - made} years old`);
