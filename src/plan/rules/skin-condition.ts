import type { skinCondition } from '../../entries';
import type { Standing } from '../../logbook';
import type { BodyOf } from '../../terms';
import { showDay, showTyped } from '../../units';
import { builtAs } from '../built-as';
import { defineRule, type Scene, type Verdict } from '../rule';
import { suspectsAt, suspectWords } from '../suspects';
import { isA } from '../trade';
import { REPAIRS } from './repairs';
import { DELAMINATION, LEAK_PATHS, PRACTICE } from './sources';
import { defectVerdict, unnamed } from './trade-defect';

type Body = BodyOf<(typeof skinCondition)['fields']>;

const LOOSE: readonly string[] = ['bubble', 'moves-under-hand', 'ripple'];
const SIGN_WORDS: Readonly<Record<string, string>> = { ripple: 'ripple', bubble: 'bubble', 'moves-under-hand': 'moves under the hand', soft: 'soft', stain: 'stain' };

const CRACK: Readonly<Record<string, string>> = {
  corrugated: 'wall-corrugated.split',
  sheet: 'wall-sheet.dent-split',
  moulded: 'wall-moulded.crack',
  other: 'wall-laminated.stress-crack',
};

const skinOf = ({ station, rig }: Scene): string => {
  const looks = station?.looks ?? '';
  if (isA(looks, 'wall-corrugated') || rig.skin === 'corrugated-aluminium') return 'corrugated';
  if (isA(looks, 'wall-sheet') || rig.skin === 'sheet-aluminium' || rig.skin === 'painted-steel') return 'sheet';
  return isA(looks, 'wall-moulded') || rig.skin === 'moulded-fibreglass' ? 'moulded' : 'other';
};

/** Signs that are rows of the table, whatever the wall is made of. */
const rowsOf = (body: Body, seen: Standing, scene: Scene): readonly Verdict[] => {
  const skin = skinOf(scene);
  const rows: readonly (readonly [sign: string, defect: string])[] = [
    ['crack', CRACK[skin] ?? 'wall-laminated.stress-crack'],
    ['dent', skin === 'corrugated' || skin === 'sheet' ? 'wall-sheet.dent-split' : 'wall-laminated.stress-crack'],
    ['corrosion', 'wall-sheet.filiform'],
    ['fasteners-out', skin === 'corrugated' ? 'wall-corrugated.staples-out' : 'wall-sheet.rivet-loose'],
  ];
  const found = new Map<string, Verdict>();
  for (const [sign, id] of rows) {
    const verdict = body.signs?.some((s) => s === sign) ? defectVerdict(id, seen) : undefined;
    if (verdict) found.set(id, verdict);
  }
  return [...found.values()];
};

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  if (body.verdict === 'sound') return [];
  const signs: readonly string[] = body.signs ?? [];
  if (signs.length === 0) return [unnamed(seen)];
  const here = [seen.entry.id];
  const built = builtAs(scene.station, scene.rig);
  const told = `${signs.map((s) => SIGN_WORDS[s] ?? s.replaceAll('-', ' ')).join(', ')}${body.across ? `, ${showTyped(body.across, 'length')} across` : ''}, seen on ${showDay(seen.day)}.`;
  const sentence = `${told.charAt(0).toUpperCase()}${told.slice(1)}`;
  const suspects = suspectsAt(seen.place, scene.rig);
  const whence = suspects.length === 0 ? [] : [{ text: `First suspects, above and up-slope: ${suspectWords(suspects, scene.rig)}.`, entries: here, source: LEAK_PATHS }];
  const verdicts: Verdict[] = [...rowsOf(body, seen, scene)];
  const soft = signs.includes('soft');
  if (soft)
    verdicts.push({
      key: 'soft',
      title: 'Soft wall',
      urgency: 'before-rain',
      who: 'professional',
      because: [{ text: `${sentence} What is behind the skin has gone soft: each rain feeds it.`, entries: here, source: DELAMINATION }, ...whence],
      defect: built === 'hung' ? 'wall-corrugated.bottom-rot' : 'wall-laminated.soft',
      suspects,
    });
  if (signs.includes('stain'))
    verdicts.push({
      key: 'stain',
      title: 'Stain on the wall',
      urgency: 'before-rain',
      who: 'yourself',
      because: [{ text: `${sentence} Water has been here: find where it comes in.`, entries: here, source: LEAK_PATHS }, ...whence],
      remedies: ['wet-inside'],
      suspects,
    });
  if (!signs.some((s) => LOOSE.includes(s)) || built === 'hung') return verdicts;
  const heat = body.warmth === 'hot' && !signs.includes('moves-under-hand') && !soft;
  if (heat)
    verdicts.push({
      key: 'delamination',
      title: 'Bubble in the heat, to be looked at when cool',
      urgency: 'watch',
      who: 'yourself',
      because: [{ text: `${sentence} The skin was hot from the sun, which raises bubbles of its own: look again when it is cool.`, entries: here, source: DELAMINATION }],
      remedies: [],
      weak: true,
    });
  else
    verdicts.push({
      key: 'delamination',
      title: 'Skin has let go of the wall',
      urgency: 'before-rain',
      who: 'professional',
      because: [
        { text: `${sentence} On a bonded wall the skin has come away from what is behind it: delamination.`, entries: here, source: DELAMINATION },
        ...(built === 'unknown' ? [{ text: 'How this wall is built is not recorded; it is judged as bonded.', entries: here, source: PRACTICE }] : []),
        ...whence,
      ],
      defect: 'wall-laminated.bubble',
      suspects,
    });
  return verdicts;
};

export const skinConditionRule = defineRule({
  id: 'skin-condition',
  title: 'Skin of a wall',
  says: 'On a bonded wall a bubble or a skin that moves is delamination; on a hung wall movement is normal, and soft backing or a stain counts. A bubble in the heat is looked at again when cool.',
  sources: [DELAMINATION, LEAK_PATHS, PRACTICE],
  reads: ['skin-condition'],
  example: { kind: 'skin-condition', body: { verdict: 'something-wrong', signs: ['bubble'], warmth: 'cool' }, looks: 'wall-laminated', gives: 'before-rain' },
  judge,
  closes: (seen) => (seen.body as Body).verdict === 'sound',
  settles: (care, { key }) =>
    (key === 'delamination' || key === 'soft' ? care.entry.kind !== 'resealed' : true) && (REPAIRS.has(care.entry.kind) || care.entry.kind === 'spot-painted'),
});
