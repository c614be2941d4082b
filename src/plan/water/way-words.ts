import { heightAboveGround, type Rig, type WaterPath, type WaterSpot } from '../../rig';
import { figure, fromSi, showIn } from '../../units';

/** Shorter than this a tape is read in inches, or in centimetres. [m] */
const SHORT_M = 0.9;

const to = (step: number, n: number): number => Math.round(n / step) * step;

/** A length as both kinds of rule show it, no finer than a hand: `16 in (40 cm)`, `4.2 ft (1.3 m)`. */
export const lengthWords = (m: number): string =>
  m < SHORT_M ? `${to(2, fromSi(m, 'length', 'in'))} in (${to(5, m * 100)} cm)` : `${showIn(m, 'length', 'ft')} (${figure(m, 1)} m)`;

const HOW: Readonly<Record<WaterPath['legs'][number]['how'], string>> = {
  in: 'in',
  down: 'down',
  aside: 'sideways',
  'along-channel': 'along',
  'over-edge': 'over the edge',
  'driven-aft': 'rearward, driven by the wind of the road',
};

/** Legs shorter than this are not worth a word. [m] */
const WORTH_TELLING_M = 0.1;

/** More legs than this are told as a whole. */
const MOST_LEGS = 3;

/** `16 in (40 cm) down, then 8 in (20 cm) sideways`. */
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
      ? `It lies ${lengthWords(above)} above the wet place its water reaches first`
      : above > -WORTH_TELLING_M
        ? 'It lies level with the wet place its water reaches first'
        : 'It lies lower than the wet place, and the wind of the road would have to lift the water';
  const way = legWords(path);
  return `${where}${way === '' ? '' : `: ${way}`}${path.when === 'driving' && !way.includes(HOW['driven-aft']) ? ', on the road' : ''}.`;
};
