import { useMemo } from 'react';
import { type GradeLook, gradePlot, type Series, timePlot } from '../../../src/drawing';
import { kindById, unitFor } from '../../../src/entries';
import type { Fields, Side } from '../../../src/terms';
import { figure, fromSi, type QuantityId, quantities, type Typed } from '../../../src/units';
import type { StationView } from '../session/session';
import { useDesk } from './desk';
import { Picture } from './picture';
import { useWidth } from './use-width';

const isTyped = (v: unknown): v is Typed => typeof v === 'object' && v !== null && 'si' in v && 'unit' in v;

/** `/32 in` stands behind a figure; by itself it is said in words. */
const unitWords = (symbol: string): string => (symbol === '/32 in' ? 'in 32nds of an inch' : symbol);

/** A step of the axis may be half a unit, where the unit itself is read in whole ones. */
const onWhole = (v: number): boolean => Math.abs(v - Math.round(v)) < 1e-6;

/** One reading through time needs two points to be worth a plot. */
const LEAST_POINTS = 2;

/** What was found here through the years: the grade of the seal with what was done to it, and every reading taken more than once. */
export const GradePlot = ({ view, side }: { readonly view: StationView; readonly side: Side }) => {
  const { preferences, overview } = useDesk();
  const [frame, width] = useWidth<HTMLDivElement>(320, 20);

  const grades = useMemo(() => {
    const looks: GradeLook[] = view.through
      .filter((t) => t.side === side && (t.kind === 'seal-grade' || t.kind === 'could-not-see'))
      .flatMap((t) =>
        t.entries.map((e): GradeLook => {
          const grade = (e.body as { readonly grade?: string }).grade;
          return { day: e.day, grade: grade === undefined ? 'not-seen' : Number(grade.slice(1)) };
        }),
      );
    if (!looks.some((l) => l.grade !== 'not-seen')) return undefined;
    const care = view.through
      .filter((t) => kindById(t.kind)?.group === 'care')
      .flatMap((t) => t.entries.map((e) => ({ day: e.day, words: (kindById(t.kind)?.title ?? t.kind).toLowerCase() })));
    return gradePlot({ title: 'Seal grade through the years', looks, care, to: overview.plan.on, width, height: 230 });
  }, [view, side, width, overview.plan.on]);

  const readings = useMemo(
    () =>
      view.through
        .filter((t) => t.side === side)
        .flatMap((t) => {
          const fields = kindById(t.kind)?.fields as Fields | undefined;
          const first = Object.entries(fields ?? {}).find(([, f]) => f.type === 'number');
          if (first?.[1].type !== 'number' || t.entries.length < LEAST_POINTS) return [];
          const [key, field] = first;
          const quantity: QuantityId = field.quantity;
          const unit = unitFor(field, preferences);
          const points = t.entries.flatMap((e) => {
            const value = (e.body as Readonly<Record<string, unknown>>)[key];
            return isTyped(value) ? [{ day: e.day, value: fromSi(value.si, quantity, unit) }] : [];
          });
          if (points.length < LEAST_POINTS) return [];
          const u = quantities[quantity].units.find((x) => x.id === unit);
          const title = `${kindById(t.kind)?.title ?? t.kind}, as read, ${unitWords(u?.symbol ?? '')}`;
          const series: Series = { words: '', points, one: true };
          return [{ title, drawing: timePlot({ title, series: [series], show: (v) => figure(v, u?.decimals || (onWhole(v) ? 0 : 1)), width, height: 190 }) }];
        }),
    [view, side, preferences, width],
  );

  return (
    <div ref={frame} className="plots">
      {grades && (
        <figure>
          <figcaption>
            <h2>Seal grade through the years</h2>
          </figcaption>
          <Picture drawing={grades} />
        </figure>
      )}
      {readings.map((r) => (
        <figure key={r.title}>
          <figcaption>
            <h2>{r.title}</h2>
          </figcaption>
          <Picture drawing={r.drawing} />
        </figure>
      ))}
    </div>
  );
};
