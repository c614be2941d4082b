import type { CivilDay } from '../units';
import { flat, type Point } from './path';
import { penOn } from './pen';
import { dateAxis, framed, type PlotSize } from './plot-frame';
import type { Drawing, Primitive } from './primitives';
import { widthOf } from './type-width';

const p = penOn(flat);

/** One look at a seal: its grade 0 to 5, or not seen. */
export type GradeLook = { readonly day: CivilDay; readonly grade: number | 'not-seen' };

export type GradeHistory = PlotSize & {
  readonly title: string;
  readonly looks: readonly GradeLook[];
  /** Work on it: it starts again from what was seen next. */
  readonly care: readonly { readonly day: CivilDay; readonly words: string }[];
  readonly to?: CivilDay;
};

const GRADE_WORDS = ['as new', 'dull', 'crazed', 'cracked', 'open', 'failed'] as const;
/** From S3 on a seal is to be settled before rain. */
const LETS_WATER_IN = 3;

/**
 * A seal's grade through the years: steps down as it ages, squares where work was done, dotted circles where
 * nobody saw it. A grade holds until the next look; between two looks the drop is drawn at the later one.
 */
export const gradePlot = (history: GradeHistory): Drawing => {
  const { width = 340, height = 230, type_px: type = 11 } = history;
  const looks = [...history.looks].sort((a, b) => a.day - b.day);
  const days = [...looks.map((l) => l.day), ...history.care.map((c) => c.day), ...(history.to === undefined ? [] : [history.to])];
  const [from, to] = days.length > 0 ? [Math.min(...days), Math.max(...days)] : [0, 1];
  const pad = Math.max(20, (to - from) * 0.04);
  const f = framed(type * 7, type * 2, width - type, height - type * 2, [from - pad, to + pad], [5, 0]);
  const grid = GRADE_WORDS.flatMap((word, g): readonly Primitive[] => [
    p.line('grid', [f.x0, f.yAt(g)], [f.x1, f.yAt(g)]),
    p.text('text-bold', 0, f.yAt(g) + type * 0.36, `S${g}`, type),
    p.text('text-small', type * 2, f.yAt(g) + type * 0.36, word, type),
  ]);
  const shade = [
    p.box('band', f.x0, f.yAt(LETS_WATER_IN), f.x1 - f.x0, f.yAt(5) - f.yAt(LETS_WATER_IN)),
    p.line('axis', [f.x0, f.yAt(LETS_WATER_IN)], [f.x1, f.yAt(LETS_WATER_IN)]),
  ];
  const graded = looks.filter((l): l is GradeLook & { readonly grade: number } => l.grade !== 'not-seen');
  const line: Primitive[] = [];
  graded.forEach((l, i) => {
    const next = graded[i + 1];
    if (!next) return;
    const work = history.care.find((c) => c.day > l.day && c.day <= next.day);
    if (work) {
      line.push(
        p.line('data', [f.xAt(l.day), f.yAt(l.grade)], [f.xAt(work.day), f.yAt(l.grade)]),
        p.line('fold', [f.xAt(work.day), f.yAt(l.grade)], [f.xAt(work.day), f.yAt(next.grade)]),
        p.line('data', [f.xAt(work.day), f.yAt(next.grade)], [f.xAt(next.day), f.yAt(next.grade)]),
      );
    } else line.push(p.line('data', [f.xAt(l.day), f.yAt(l.grade)], [f.xAt(next.day), f.yAt(l.grade)], [f.xAt(next.day), f.yAt(next.grade)]));
  });
  const last = graded.at(-1);
  const points = graded.map((l) => p.disc(l === last ? 'point' : 'point-open', f.xAt(l.day), f.yAt(l.grade), l === last ? 4.5 : 3.6));
  const gradeAt = (day: number): number => [...graded].reverse().find((l) => l.day <= day)?.grade ?? graded[0]?.grade ?? 0;
  const unseen = looks
    .filter((l) => l.grade === 'not-seen')
    .map((l) =>
      p.dots(
        'mark',
        Array.from({ length: 10 }, (_, i): Point => [f.xAt(l.day) + 5.5 * Math.cos((i * Math.PI) / 5), f.yAt(gradeAt(l.day)) + 5.5 * Math.sin((i * Math.PI) / 5)]),
        0.9,
      ),
    );
  const care = history.care.flatMap((c): readonly Primitive[] => {
    const after = graded.find((l) => l.day >= c.day)?.grade ?? gradeAt(c.day);
    const x = f.xAt(c.day);
    const left = x + widthOf(c.words, type) > f.x1;
    return [p.box('point', x - 4.5, f.yAt(after) - 4.5, 9, 9), p.text('text', left ? x + 4 : x - 4, f.yAt(0) - type * 0.9, c.words, type, left ? 'end' : 'start')];
  });
  return {
    width,
    height,
    title: history.title,
    px: 1,
    primitives: [...shade, ...grid, ...dateAxis(f, Math.ceil(from - pad) as CivilDay, Math.floor(to + pad) as CivilDay, type), ...line, ...points, ...unseen, ...care],
  };
};
