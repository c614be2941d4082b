import { type ComponentType, useId, useState } from 'react';
import { type HourlyAir, readHourlyAir } from '../../../src/entries';
import type { Refusal } from '../../../src/units';
import { nowText } from '../shared/clock';
import type { Answers } from './field-form';
import { readTable, tableText } from './meter-table';
import { type WhenAnswer, whenOf } from './when-picker';

/** What an input for data is given, and what it may put into the form. */
type DataProps = {
  readonly answers: Answers;
  readonly refusals: readonly Refusal[];
  readonly onChange: (part: { readonly answers: Answers; readonly when?: WhenAnswer }) => void;
};

/** The hours of a logger: the file gives the means and the days as well, and all of them can still be changed. */
const HourlyAirInput = ({ answers, onChange }: DataProps) => {
  const id = useId();
  const [offset, setOffset] = useState(() => nowText().slice(19));
  const [refusals, setRefusals] = useState<readonly Refusal[]>([]);
  const [air, setAir] = useState<HourlyAir & { readonly name: string }>();

  const take = async (file: File | undefined) => {
    if (!file) return;
    const read = readHourlyAir(await file.text(), /^([+-]\d{2}:\d{2}|Z)$/.test(offset.trim()) ? offset.trim() : undefined);
    setRefusals(read.ok ? [] : read.refusals);
    setAir(read.ok ? { ...read.value, name: file.name } : undefined);
    if (!read.ok) return;
    const { body, observed_at } = read.value;
    const { temperature, relative_humidity, hours } = body;
    onChange({
      answers: {
        ...answers,
        temperature: { text: temperature.typed, unit: temperature.unit },
        relative_humidity: { text: relative_humidity.typed, unit: relative_humidity.unit },
        hours,
      },
      when: whenOf(observed_at),
    });
  };

  return (
    <fieldset className="field-row">
      <legend>
        Hourly file of a logger <span className="mut">if you have one</span>
      </legend>
      <div className="options">
        <label className="file-line">
          <span className="unseen">Add hourly air</span>
          <input type="file" accept=".csv,.txt,text/csv,text/plain" aria-describedby={`${id}-how`} onChange={(e) => void take(e.target.files?.[0])} />
        </label>
        <label className="day-field">
          Offset of its clock, where its times name none <input type="text" size={7} value={offset} onChange={(e) => setOffset(e.target.value)} />
        </label>
      </div>
      {air !== undefined && answers['hours'] !== undefined && (
        <p role="status">
          {air.name}: {air.sentence}{' '}
          <button
            type="button"
            className="link"
            onClick={() => {
              setAir(undefined);
              onChange({ answers: { ...answers, hours: undefined } });
            }}
          >
            take it out again
          </button>
        </p>
      )}
      {refusals.length > 0 && (
        <div className="refusal" role="alert">
          {refusals.map((r) => (
            <p key={`${r.path}${r.code}${r.sentence}`}>{r.sentence}</p>
          ))}
          <p>Nothing was taken from the file.</p>
        </div>
      )}
      <p className="mut small" id={`${id}-how`}>
        A text file whose first line is time, temperature_c or temperature_f, relative_humidity_percent. Means and days are filled in from it and can be changed.
      </p>
    </fieldset>
  );
};

/** The table in a meter’s manual, a line a row. What cannot be read stays as it was typed, and is refused when it is to be kept. */
const MeterTableInput = ({ answers, refusals, onChange }: DataProps) => {
  const id = useId();
  const held = answers['table'];
  const scale = answers['scale'];
  if (scale !== 'pin' && scale !== 'pinless') return null;
  const text = typeof held === 'string' ? held : tableText(held);
  const read = readTable(text);
  const own = refusals.filter((r) => r.path.replace(/^body\./, '').startsWith('table'));
  const said = own.length === 0 ? [] : read.ok ? own.map((r) => r.sentence) : read.refusals.map((r) => r.sentence);
  return (
    <div className="field-row">
      <label htmlFor={id}>
        Its table of materials <span className="mut">if its manual has one</span>
      </label>
      <textarea
        id={id}
        rows={4}
        spellCheck={false}
        placeholder={'plywood 10 9\nplywood 20 17'}
        value={text}
        aria-invalid={said.length > 0}
        aria-describedby={`${id}-how`}
        onChange={(e) => {
          const now = readTable(e.target.value);
          // Rows are put away as rows only when leaving the field would change nothing of what was typed.
          onChange({ answers: { ...answers, table: now.ok && tableText(now.value) === e.target.value ? now.value : e.target.value } });
        }}
        onBlur={() => {
          const now = readTable(text);
          if (now.ok) onChange({ answers: { ...answers, table: now.value.length === 0 ? undefined : now.value } });
        }}
      />
      <p className="mut small" id={`${id}-how`}>
        One line a row: softwood, plywood, chipboard or hardwood; what the meter shows; what that is. Both in per cent, each material rising.
      </p>
      {said.map((sentence) => (
        <p key={sentence} className="refusal">
          {sentence}
        </p>
      ))}
    </div>
  );
};

/** Data that a person gives by a file or as a table: the kinds that take such, each with its input. Other data no person gives. */
export const DATA_INPUTS: Readonly<Record<string, ComponentType<DataProps>>> = { 'lived-air': HourlyAirInput, meter: MeterTableInput };
