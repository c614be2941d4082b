import { useMemo } from 'react';
import type { Drawing } from '../../../src/drawing';
import type { StationId } from '../../../src/terms';
import { lastDay, parseWhen } from '../../../src/units';
import { reachables } from './drawing-space';
import { useEveryLine } from './logbook-lines';

export type Grades = ReadonlyMap<StationId, string>;

const NONE: Grades = new Map();

/** The last grade of every seal, today or on an earlier day. */
export const useLastGrades = (on: number | undefined, wanted: boolean): Grades => {
  const lines = useEveryLine();
  return useMemo(() => {
    if (!wanted || !lines) return NONE;
    const last = new Map<StationId, { readonly day: number; readonly grade: string }>();
    for (const { entry, body, withdrawn } of lines) {
      const when = parseWhen(entry.observed_at);
      if (entry.kind !== 'seal-grade' || withdrawn || entry.place.at !== 'station' || !when) continue;
      const day = lastDay(when);
      const { grade } = body as { readonly grade: string };
      if (on !== undefined && day > on) continue;
      const known = last.get(entry.place.station);
      if (!known || day > known.day) last.set(entry.place.station, { day, grade });
    }
    return new Map([...last].map(([station, { grade }]) => [station, grade]));
  }, [lines, on, wanted]);
};

/** Each seal's last grade, written on its part. */
export const Grades = ({
  drawing,
  grades,
  marked,
  size,
}: {
  readonly drawing: Drawing;
  readonly grades: Grades;
  /** Stations on which a mark stands: there the grade stands below it. */
  readonly marked: ReadonlySet<StationId>;
  readonly size: number;
}) => (
  <g className="last-graded">
    {reachables(drawing.primitives)
      .filter((r) => grades.has(r.id))
      .map(({ id, box }) => (
        <text key={id} x={box.x + box.w / 2} y={box.y + box.h / 2 + size * (marked.has(id) ? 1.9 : 0.36)} fontSize={size} textAnchor="middle" strokeWidth={size * 0.35}>
          {grades.get(id)}
        </text>
      ))}
  </g>
);
