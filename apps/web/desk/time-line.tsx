import { useId, useMemo } from 'react';
import { civilDay, dateOf, dayOf, showDay } from '../../../src/units';
import type { Overview } from '../session/session';
import { openFindings } from './answers';
import { count } from './desk';

const WIDTH = 1000;
const HEIGHT = 84;
const BASE = 56;
const TOP = 14;

/**
 * Walks back through the logbook: findings open as a stepped line, rounds as rings, care as squares, and a slider over
 * the same days. Moving it plans the rig anew for that day.
 */
export const TimeLine = ({
  overview,
  shown,
  today,
  on,
  onChange,
}: {
  readonly overview: Overview;
  readonly shown: Overview;
  readonly today: number;
  readonly on: number | undefined;
  readonly onChange: (on: number | undefined) => void;
}) => {
  const id = useId();
  const { timeline } = overview;
  const first = timeline[0]?.day;
  const span = useMemo(() => {
    if (first === undefined) return undefined;
    const from = Math.min(first, today - 30) - Math.max(7, Math.round((today - first) * 0.02));
    return { from, to: today };
  }, [first, today]);
  if (!span) return null;
  const x = (day: number): number => ((day - span.from) / (span.to - span.from)) * WIDTH;
  const most = Math.max(1, ...timeline.map((t) => t.open));
  const y = (open: number): number => BASE - 6 - (open / most) * (BASE - 6 - TOP);
  const day = on ?? today;
  // Once that day is planned its own count stands; until then the line's.
  const open = shown.plan.on === day ? openFindings(shown.plan).length : openOn(timeline, day);
  const said = `${count(open, 'finding', 'findings')} open on ${showDay(civilDay(day))}`;
  return (
    <section className="time-line" aria-label="Walk back through the logbook">
      <div className="time-head">
        <label htmlFor={id}>
          <b>Walk back through the logbook</b> <span className="mut small">line: findings open</span>
        </label>
        <span className="mut small">
          <svg width="10" height="10" viewBox="0 0 10 10" aria-hidden="true">
            <circle className="time-round" cx="5" cy="5" r="3.6" />
          </svg>{' '}
          round{' '}
          <svg width="10" height="10" viewBox="0 0 10 10" aria-hidden="true">
            <rect className="time-care" x="1.5" y="1.5" width="7" height="7" />
          </svg>{' '}
          care
        </span>
        <output className="time-said" htmlFor={id}>
          {said}
        </output>
        {on !== undefined && (
          <button type="button" className="link" onClick={() => onChange(undefined)}>
            back to today
          </button>
        )}
      </div>
      <div className="time-plot">
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
          <Years from={span.from} to={span.to} x={x} />
          <path className="time-axis" d={`M0 ${BASE}H${WIDTH}`} />
          <path className="time-open" d={stepPath(timeline, x, y, span.to)} />
          <path className="time-now" d={`M${x(day)} 0V${BASE}`} />
        </svg>
        {timeline
          .filter((t) => t.what !== 'findings')
          .map((t) => (
            <span
              key={`${t.day}${t.what}${t.words}`}
              className={`time-dot time-dot-${t.what}`}
              style={{ left: `${(x(t.day) / WIDTH) * 100}%` }}
              title={`${showDay(civilDay(t.day))}: ${t.words}`}
            />
          ))}
        <YearNames from={span.from} to={span.to} x={x} />
        <input
          id={id}
          type="range"
          min={span.from}
          max={span.to}
          step={1}
          value={day}
          aria-valuetext={said}
          onChange={(e) => onChange(Number(e.target.value) >= today ? undefined : Number(e.target.value))}
        />
      </div>
      {shown.plan.on !== day && <p className="unseen">Planning that day.</p>}
    </section>
  );
};

const openOn = (timeline: Overview['timeline'], day: number): number => {
  let open = 0;
  for (const t of timeline) if (t.day <= day) open = t.open;
  return open;
};

const stepPath = (timeline: Overview['timeline'], x: (d: number) => number, y: (n: number) => number, to: number): string => {
  let d = '';
  let last: number | undefined;
  for (const t of timeline) {
    d += last === undefined ? `M${x(t.day)} ${y(t.open)}` : `H${x(t.day)}V${y(t.open)}`;
    last = t.open;
  }
  return last === undefined ? '' : `${d}H${x(to)}`;
};

const yearsIn = (from: number, to: number): readonly { readonly year: number; readonly day: number }[] => {
  const [a, b] = [dateOf(civilDay(from)).year + 1, dateOf(civilDay(to)).year];
  return Array.from({ length: Math.max(0, b - a + 1) }, (_, i) => ({ year: a + i, day: dayOf(a + i, 1, 1) }));
};

const Years = ({ from, to, x }: { readonly from: number; readonly to: number; readonly x: (d: number) => number }) => (
  <>
    {yearsIn(from, to).map((y) => (
      <path key={y.year} className="time-axis" d={`M${x(y.day)} ${BASE}V${BASE + 12}`} />
    ))}
  </>
);

const YearNames = ({ from, to, x }: { readonly from: number; readonly to: number; readonly x: (d: number) => number }) => (
  <>
    {yearsIn(from, to).map((y) => (
      <span key={y.year} className="time-year" style={{ left: `${(x(y.day) / WIDTH) * 100}%` }}>
        {y.year}
      </span>
    ))}
  </>
);
