import type { tyreTread } from '../../entries';
import type { Standing } from '../../logbook';
import type { BodyOf } from '../../terms';
import { showDay, showIn, showTyped, toSi } from '../../units';
import { defineRule, type Scene, type Verdict } from '../rule';
import { TYRE_TREAD } from './sources';
import { defectVerdict } from './trade-defect';

type Body = BodyOf<(typeof tyreTread)['fields']>;

/** A groove measured to a whole 32nd is at the limit when it reads it. [m] */
const SLACK = 1e-6;
const OTHERS = toSi(2, 'small-length', '32in');
const STEERED = toSi(4, 'small-length', '32in');

const MOTORHOMES: ReadonlySet<string> = new Set(['class-a', 'class-b', 'class-c']);

/** The front tyres of a motorhome steer it: its foremost axle. */
const steers = ({ rig, station }: Scene): boolean => {
  if (!MOTORHOMES.has(rig.kind) || station?.axle === undefined) return false;
  const foremost = [...rig.axles].sort((a, b) => a.x_m - b.x_m)[0];
  return foremost?.id === station.axle;
};

const WEAR: Readonly<Record<string, string>> = { 'one-edge': 'one edge worn', 'both-edges': 'both edges worn', middle: 'middle worn', patches: 'patches or cups' };

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  const here = [seen.entry.id];
  const limit = steers(scene) ? STEERED : OTHERS;
  const verdicts: Verdict[] = [];
  if (body.depth.si <= limit + SLACK)
    verdicts.push({
      key: 'depth',
      title: 'Tyre tread worn out',
      urgency: 'before-moving',
      who: 'professional',
      because: [
        {
          text: `${showTyped(body.depth, 'small-length')} of tread on ${showDay(seen.day)}; the least is ${showIn(limit, 'small-length', '32in')}${limit === STEERED ? ' on steered tyres' : ''}. The rule binds commercial vehicles; for others the state decides, and it is good practice.`,
          entries: here,
          source: TYRE_TREAD,
        },
      ],
      defect: 'tyre.tread-low',
    });
  const wear = body.wear === undefined ? undefined : WEAR[body.wear];
  const uneven = wear === undefined ? undefined : defectVerdict('tyre.wear-uneven', seen);
  if (uneven && wear) verdicts.push({ ...uneven, title: `Uneven wear: ${wear}` });
  return verdicts;
};

export const tyreTreadRule = defineRule({
  id: 'tyre-tread',
  title: 'Tread of a tyre',
  says: 'At or under 2/32 in, on steered tyres of a motorhome 4/32 in, the tyre is replaced before moving; uneven wear is looked into this season.',
  sources: [TYRE_TREAD],
  reads: ['tyre-tread'],
  example: { kind: 'tyre-tread', body: { depth: { typed: '2', unit: '32in', si: 0.0015875 } }, looks: 'tyre', gives: 'before-moving' },
  judge,
  endedBy: ['tyre-fitted'],
});
