import type { outOfTheOrdinary } from '../../entries';
import type { Standing } from '../../logbook';
import type { BodyOf, Source, Who } from '../../terms';
import { showDay } from '../../units';
import { defineRule, type Verdict } from '../rule';
import { sourceOf } from '../trade';
import { SOUND_LOOKS } from './sound-looks';
import { GAS_SMELL, PRACTICE } from './sources';

type Body = BodyOf<(typeof outOfTheOrdinary)['fields']>;
type Danger = NonNullable<Body['danger']>[number];

const LIVE_WIRE = sourceOf('NEC551');

const DANGERS: Readonly<
  Record<
    Danger,
    { readonly title: string; readonly text: string; readonly source: Source; readonly who: Who; readonly remedies: readonly string[]; readonly cautions: readonly string[] }
  >
> = {
  'gas-smell': {
    title: 'Smell of gas',
    text: 'Shut the cylinder if that is safe, leave, touch no switch and light nothing, call from away. Nothing that burns gas is used until a qualified person has tested it.',
    source: GAS_SMELL,
    who: 'professional',
    remedies: ['lp-stop'],
    cautions: ['lp-gas'],
  },
  'wet-wire': {
    title: 'A live wire bare or wet',
    text: 'Keep away, switch off and unplug from where it is dry. It is not switched on again until a qualified electrician has seen it.',
    source: LIVE_WIRE,
    who: 'professional',
    remedies: ['shore-stop'],
    cautions: ['mains'],
  },
  'may-drop-someone': {
    title: 'Something that may drop someone',
    text: 'Nobody steps on it until it is mended; hang a tag on it.',
    source: PRACTICE,
    who: 'yourself',
    remedies: [],
    cautions: [],
  },
};

const LONGEST = 80;
const short = (text: string): string => (text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1).trimEnd()}…`);

const judge = (seen: Standing): readonly Verdict[] => {
  const body = seen.body as Body;
  const here = [seen.entry.id];
  const noticed = `Noticed on ${showDay(seen.day)}: ${short(body.what)}`;
  const dangers = body.danger ?? [];
  if (dangers.length === 0)
    return [
      {
        key: seen.entry.id,
        title: short(body.what),
        urgency: 'watch',
        who: 'yourself',
        because: [{ text: `${noticed}. No rule judges it: look closer, and record what it is or judge it yourself.`, entries: here, source: PRACTICE }],
        remedies: [],
      },
    ];
  return dangers.map((danger) => {
    const { title, text, source, who, remedies, cautions } = DANGERS[danger];
    return { key: `${danger}.${seen.entry.id}`, title, urgency: 'do-not-use', who, because: [{ text: `${noticed}. ${text}`, entries: here, source }], remedies, cautions };
  });
};

export const outOfTheOrdinaryRule = defineRule({
  id: 'out-of-the-ordinary',
  title: 'Anything out of the ordinary',
  says: 'A smell of gas, a live wire bare or wet, and what may drop someone: do not use. Everything else stays under watch until a person has judged it.',
  sources: [GAS_SMELL, LIVE_WIRE, PRACTICE],
  reads: ['out-of-the-ordinary'],
  example: { kind: 'out-of-the-ordinary', body: { what: 'smells of gas by the tongue', danger: ['gas-smell'] }, gives: 'do-not-use' },
  judge,
  closes: () => false,
  provedBy: SOUND_LOOKS,
  settles: (care, { key }) => (key.startsWith('gas-smell') || key.startsWith('wet-wire') ? care.entry.kind === 'professional-work' : true),
});
