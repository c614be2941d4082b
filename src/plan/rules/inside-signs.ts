import type { insideSigns } from '../../entries';
import type { Standing } from '../../logbook';
import { type BodyOf, sooner, type Urgency, type Who } from '../../terms';
import { showDay } from '../../units';
import { defineRule, type Scene, type Verdict } from '../rule';
import { suspectsAt, suspectWords } from '../suspects';
import { REPAIRS } from './repairs';
import { LEAK_PATHS, MOISTURE_BANDS } from './sources';
import { unnamed } from './trade-defect';

type Body = BodyOf<(typeof insideSigns)['fields']>;

const SIGNS: Readonly<Record<string, { readonly title: string; readonly urgency: Urgency; readonly who: Who }>> = {
  'soft-floor': { title: 'Soft floor', urgency: 'before-rain', who: 'professional' },
  'soft-ceiling': { title: 'Soft ceiling', urgency: 'before-rain', who: 'professional' },
  'soft-wall': { title: 'Soft wall inside', urgency: 'before-rain', who: 'professional' },
  water: { title: 'Water inside', urgency: 'before-rain', who: 'yourself' },
  mould: { title: 'Mould inside', urgency: 'before-rain', who: 'yourself' },
  stain: { title: 'Stain inside', urgency: 'before-rain', who: 'yourself' },
  smell: { title: 'Musty smell inside', urgency: 'this-season', who: 'yourself' },
};

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  if (body.verdict === 'sound') return [];
  const found = (body.signs ?? []).flatMap((s) => SIGNS[s] ?? []);
  const [first] = found;
  if (!first) return [unnamed(seen)];
  const here = [seen.entry.id];
  const professional = found.some((f) => f.who === 'professional');
  const suspects = suspectsAt(seen.place, scene.rig);
  return [
    {
      key: '',
      title: found.length === 1 ? first.title : 'Signs of water inside',
      urgency: found.map((f) => f.urgency).reduce(sooner),
      who: professional ? 'professional' : 'yourself',
      because: [
        {
          text: `Found inside on ${showDay(seen.day)}: ${found.map((f) => f.title.toLowerCase().replace(' inside', '')).join(', ')}. ${professional ? 'Structure that gives is for a professional.' : 'Rule out condensation, plumbing and drains first.'}`,
          entries: here,
          source: professional ? MOISTURE_BANDS : LEAK_PATHS,
        },
        {
          text: `Water shows away from where it came in.${suspects.length === 0 ? '' : ` First suspects: ${suspectWords(suspects, scene.rig)}.`}`,
          entries: here,
          source: LEAK_PATHS,
        },
      ],
      remedies: professional ? ['soft-structure', 'wet-inside'] : ['wet-inside'],
      cautions: ['mould', 'mains'],
      suspects,
    },
  ];
};

export const insideSignsRule = defineRule({
  id: 'inside-signs',
  title: 'Signs of water inside',
  says: 'Stain, water, mould: the way in is found before rain. Soft floor, ceiling or wall: before rain, by a professional. A smell alone: this season.',
  sources: [LEAK_PATHS, MOISTURE_BANDS],
  reads: ['inside-signs'],
  example: { kind: 'inside-signs', body: { verdict: 'something-wrong', signs: ['stain'] }, looks: 'window', gives: 'before-rain' },
  judge,
  settles: (care) => REPAIRS.has(care.entry.kind) || care.entry.kind === 'cleaned',
});
