import { heightAboveGround, type Rig, type WaterPath, type WaterSpot } from '../../rig';
import { figure, showIn } from '../../units';

/** A length as both kinds of rule show it, no finer than a hand. */
export const lengthWords = (m: number): string => `${figure(m, 1)} m (${showIn(m, 'length', 'ft')})`;

const HOW: Readonly<Record<WaterPath['legs'][number]['how'], string>> = {
  in: 'in',
  down: 'down',
  aside: 'sideways',
  'along-channel': 'along',
  'over-edge': 'over the edge',
  'driven-aft': 'aft with the wind of the road',
};

/** Legs shorter than this are not worth a word. [m] */
const WORTH_TELLING_M = 0.1;

/** More legs than this are told as a whole. */
const MOST_LEGS = 3;

/** `0.4 m (1.3 ft) down, then 0.2 m (0.7 ft) sideways`. */
const legWords = (path: WaterPath): string => {
  const told: { how: string; length: number }[] = [];
  for (const leg of path.legs) {
    if (leg.how === 'in') continue;
    const how = leg.how === 'along-channel' ? `along the ${leg.channel ?? 'seam'}` : HOW[leg.how];
    const last = told.at(-1);
    if (last?.how === how) last.length += leg.length_m;
    else told.push({ how, length: leg.length_m });
  }
  const worth = told.filter((t) => t.length >= WORTH_TELLING_M || t.how === HOW['over-edge']);
  if (worth.length <= MOST_LEGS) return worth.map((t) => (t.how === HOW['over-edge'] ? t.how : `${lengthWords(t.length)} ${t.how}`)).join(', then ');
  const along = [...new Set(worth.flatMap((t) => (t.how.startsWith('along the ') ? [t.how.slice('along the '.length)] : [])))];
  const over = worth.some((t) => t.how === HOW['over-edge']);
  return `a way of ${lengthWords(path.length_m)} in all${over ? ', over the edge' : ''}${along.length > 0 ? `, along ${along.map((c) => `the ${c}`).join('; ')}` : ''}`;
};

/** The way in words: how far above the wet place it begins, and how it runs. */
export const wayWords = (rig: Rig, path: WaterPath, spot: WaterSpot): string => {
  const above = heightAboveGround(rig, path.from.face, path.from.point_m[1]) - heightAboveGround(rig, spot.face, spot.point_m[1]);
  const where =
    above >= WORTH_TELLING_M
      ? `It lies ${lengthWords(above)} above the wet place that water from it reaches most easily`
      : above > -WORTH_TELLING_M
        ? 'It lies level with the wet place that water from it reaches most easily'
        : 'It lies lower than the wet place, and the wind of the road would have to lift the water';
  const way = legWords(path);
  return `${where}${way === '' ? '' : `: ${way}`}${path.when === 'driving' ? ', on the road' : ''}.`;
};
