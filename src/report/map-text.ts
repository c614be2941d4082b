import type { MoistureField, Panel } from '../plan';
import { type Preferences, show } from '../units';
import { wrap } from './lines';

const points = (panel: Panel, value: number): string => `${(value * 100).toFixed(panel.scale === 'relative' ? 0 : 1)} points`;

const threshold = (panel: Panel, map: MoistureField): string =>
  map.of === 'excess'
    ? `${points(panel, map.threshold)} above the dry places`
    : panel.scale === 'relative'
      ? `${Math.round(map.threshold * 100)} of 100`
      : `${(map.threshold * 100).toFixed(1)} %`;

/** The highest chance and where it is, so that a text tells as much as a glance at the drawing. */
const highest = ({ grid }: MoistureField['parts'][number]): { readonly chance: number; readonly x_m: number; readonly y_m: number } | undefined => {
  let best: { chance: number; x_m: number; y_m: number } | undefined;
  grid?.chance.forEach((chance, i) => {
    if (chance !== undefined && (best === undefined || chance > best.chance))
      best = { chance, x_m: grid.x0_m + (i % grid.columns) * grid.step_m, y_m: grid.y0_m + Math.floor(i / grid.columns) * grid.step_m };
  });
  return best;
};

/** Never certain: a map is a guess between readings. */
const chanceWords = (chance: number): string => (chance > 0.99 ? 'above 99 %' : chance < 0.01 ? 'below 1 %' : `${Math.round(chance * 100)} %`);

/** The map of one panel in words: what was mapped, part by part, with the check that leaves readings out, and where to read next. */
export const mapText = (panel: Panel, map: MoistureField, preferences: Preferences): string => {
  const at = (x: number, y: number): string => `${show(x, 'length', preferences)} along, ${show(y, 'length', preferences)} up`;
  const parts = map.parts.map((part, i) => {
    const loo = part.leave_one_out;
    const check = loo ? ` Leaving readings out one by one it misses by ${points(panel, loo.error)}, their mean by ${points(panel, loo.of_the_mean)}.` : '';
    const top = highest(part);
    const most = top ? ` Highest chance ${chanceWords(top.chance)} at ${at(top.x_m, top.y_m)}.` : '';
    return wrap(
      `Part ${i + 1}, ${part.readings} ${part.readings === 1 ? 'reading' : 'readings'}: ${part.drawn === 'map' ? 'mapped' : 'readings only'}.${part.why === undefined ? '' : ` ${part.why}`}${check}${most}`,
      2,
    );
  });
  return `${[
    wrap(`${panel.words}: chance of more than ${threshold(panel, map)}`, 0),
    wrap(map.because.text, 2),
    ...parts,
    ...(map.next_places.length === 0 ? [] : ['  Read next', ...map.next_places.map((n, i) => wrap(`${i + 1}. ${n.words}`, 4))]),
    '  It rests on',
    ...map.assumes.map((a) => wrap(`- ${a}`, 4)),
  ].join('\n')}\n`;
};
