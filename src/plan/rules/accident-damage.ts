import type { accidentDamage } from '../../entries';
import type { Standing } from '../../logbook';
import type { BodyOf, Urgency, Who } from '../../terms';
import { showDay } from '../../units';
import type { Because } from '../finding';
import { defineRule, type Scene, type Verdict } from '../rule';
import { isA } from '../trade';
import { SOUND_LOOKS } from './sound-looks';
import { PRACTICE } from './sources';

type Body = BodyOf<(typeof accidentDamage)['fields']>;

const ORDER = ['missing', 'crushed', 'torn', 'broken', 'dented'] as const;
const WORDS: Readonly<Record<(typeof ORDER)[number], string>> = { crushed: 'crushed', torn: 'torn', broken: 'broken', missing: 'torn off', dented: 'dented' };

/** What carries the rig or a person, lights it or holds it to the towing vehicle: settled before the wheels turn. */
const ROAD: readonly string[] = [
  'tyre',
  'wheel-fastener',
  'hub-bearing',
  'suspension',
  'step',
  'lamp',
  'coupler',
  'kingpin',
  'safety-chain',
  'breakaway',
  'tow-plug',
  'frame',
  'stabiliser',
  'tongue-leg',
  'tie-down',
  'awning-fabric',
  'awning-arm',
  'lp-compartment',
  'exhaust',
  'drain-outlet',
];
/** Of these the ones that are the trade's. */
const TRADE: readonly string[] = ['tyre', 'hub-bearing', 'suspension', 'coupler', 'kingpin', 'frame', 'lp-compartment', 'exhaust', 'awning-arm'];

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  const here = [seen.entry.id];
  const worst = ORDER.find((d) => body.damage.some((x) => x === d)) ?? 'broken';
  const looks = scene.station?.looks;
  const road = looks !== undefined && ROAD.some((k) => isA(looks, k));
  const who: Who = looks !== undefined && worst !== 'dented' && TRADE.some((k) => isA(looks, k)) ? 'professional' : 'yourself';
  const urgency: Urgency = worst === 'dented' ? (road ? 'this-season' : 'watch') : road ? 'before-moving' : 'before-rain';
  const reason =
    worst === 'dented'
      ? 'Look for a split or bare metal in it.'
      : road
        ? 'It is needed on the road.'
        : 'A broken part may let water in, and may come off on the road: make sure that it is fast before moving.';
  const because: Because[] = [
    {
      text: `Recorded on ${showDay(seen.day)}: ${body.damage.map((d) => WORDS[d]).join(', ')}${body.cause === 'slide' ? ', by a slide moving' : ''}. ${reason}`,
      entries: here,
      source: PRACTICE,
    },
  ];
  if (body.cause === 'slide') because.push({ text: 'What was crushed before is named first, before the slide moves again.', entries: here, source: PRACTICE });
  return [
    {
      key: '',
      title: `Part ${WORDS[worst]}`,
      urgency,
      who,
      because,
      remedies: worst === 'dented' ? [] : road ? [] : ['cover-loose'],
      worse_if: 'Loose or hanging: before moving',
      cautions: body.cause === 'slide' ? ['slide-pinch'] : [],
    },
  ];
};

export const accidentDamageRule = defineRule({
  id: 'accident-damage',
  title: 'Damage by accident',
  says: 'What is needed on the road is settled before moving, everything else that is crushed, torn, broken or gone before rain; dents are watched.',
  sources: [PRACTICE],
  reads: ['accident-damage'],
  example: { kind: 'accident-damage', body: { damage: ['torn'] }, looks: 'vent-hatch', gives: 'before-rain' },
  judge,
  closes: () => false,
  provedBy: SOUND_LOOKS,
});
