import { showDay } from '../../units';
import { suspectsAt } from '../suspects';
import { type Delamination, reasonsOf } from '../water/delamination';
import { defineWaterRule, type Raised } from '../water/water-rule';
import { DELAMINATION } from './sources';

/** What was drawn or felt is raised look by look by the rule of the skin; here, what only the handle has found. */
const onlyTapped = (d: Delamination): boolean => d.seen.every((s) => s.entry.kind === 'tap-sound');

const raise = (d: Delamination, on: Parameters<typeof suspectsAt>[1]): Raised => {
  const [first] = d.seen;
  if (!first) throw new Error('a patch without a tap');
  const wet = d.core.state === 'wet' || d.core.state === 'wet-through' || d.source.state === 'open';
  const pro = d.advice.word === 'replace' || d.advice.word === 'trade-looks' || d.advice.word === 'inject';
  return {
    place: d.place,
    seen: d.seen,
    since: first.day,
    verdict: {
      key: '',
      title: 'Hollow to the tap',
      urgency: wet ? 'before-rain' : 'this-season',
      who: pro ? 'professional' : 'yourself',
      because: [
        {
          text: `Tapped on ${showDay(d.seen.at(-1)?.day ?? first.day)}: the skin is loose from what is behind it.`,
          entries: d.seen.map((s) => s.entry.id).slice(0, 12),
          source: DELAMINATION,
        },
        ...reasonsOf(d),
        { text: d.advice.sentence, entries: [first.entry.id], source: DELAMINATION },
      ],
      remedies: [d.advice.word === 'replace' ? 'soft-structure' : 'delam-small'],
      cautions: ['mould', 'mains'],
      suspects: wet || d.core.state === 'not-metered' ? suspectsAt(d.place, on) : [],
      steps: d.advice.steps,
    },
  };
};

export const delaminationRule = defineWaterRule({
  id: 'delamination',
  title: 'Hollow to the tap',
  says: 'Three hollow taps or more that hang together on a bonded wall: the skin is loose. Metered before a leak is assumed; injected only by the trade, small, over a core below 15 % with the way in closed; near what carries load, growing, soft or large, it is replaced.',
  sources: [DELAMINATION],
  reads: ['tap-sound'],
  raises: (judged) => {
    const { open, healed } = judged.loose;
    return [
      ...open.filter(onlyTapped).map((d) => raise(d, judged.rig)),
      ...healed.map(({ delamination, by }) => ({ ...raise(delamination, judged.rig), closed: { by, life: 'seen-sound' as const } })),
    ];
  },
});
