import type { sunDamage } from '../../entries';
import type { Standing } from '../../logbook';
import type { BodyOf, Urgency } from '../../terms';
import { showDay, showTyped } from '../../units';
import { defineRule, type Scene, type Verdict } from '../rule';
import { defect, defectTitle, firstSource, isA } from '../trade';
import { SOUND_LOOKS } from './sound-looks';
import { PRACTICE } from './sources';

type Body = BodyOf<(typeof sunDamage)['fields']>;
type Sign = Body['signs'][number];

/** Row of the defects table by kind of station, the narrower first. */
const ROWS: readonly (readonly [kind: string, Partial<Record<Sign, string>>])[] = [
  ['roof-epdm', { chalking: 'roof-epdm.chalk-streak' }],
  ['roof-tpo', { cracking: 'roof-tpo.crazed' }],
  ['roof-coated', { peeling: 'roof-coated.peeling' }],
  ['roof-fibreglass', { cracking: 'roof-fibreglass.star-craze' }],
  ['skylight', { cracking: 'skylight.crazed', brittle: 'skylight.crazed', fading: 'skylight.crazed' }],
  ['decal', { cracking: 'decal.cracked', fading: 'decal.cracked', peeling: 'decal.lifting', chalking: 'decal.cracked' }],
  ['gelcoat', { chalking: 'gelcoat.chalk', cracking: 'gelcoat.craze', fading: 'gelcoat.chalk' }],
  ['paint', { peeling: 'paint.clear-peel' }],
  ['plastic-cover', { brittle: 'plastic-cover.brittle', cracking: 'plastic-cover.brittle', chalking: 'plastic-cover.brittle' }],
  ['awning-fabric', { brittle: 'awning-fabric.pinholes', cracking: 'awning-fabric.pinholes' }],
  ['slide-seals', { brittle: 'slide-seals.stiff', cracking: 'slide-seals.stiff' }],
  ['wall-laminated', { chalking: 'gelcoat.chalk', fading: 'gelcoat.chalk', cracking: 'gelcoat.craze' }],
  ['wall-moulded', { chalking: 'gelcoat.chalk', fading: 'gelcoat.chalk', cracking: 'gelcoat.craze' }],
];

/** Where the table has no row: looks only are watched; what will break or cannot be sealed on is settled this season (our choice). */
const OTHERWISE: Readonly<Record<Sign, { readonly title: string; readonly word: string; readonly urgency: Urgency }>> = {
  fading: { title: 'Surface faded', word: 'faded', urgency: 'watch' },
  chalking: { title: 'Surface chalky', word: 'chalky', urgency: 'this-season' },
  cracking: { title: 'Sun cracks', word: 'cracked by the sun', urgency: 'this-season' },
  brittle: { title: 'Material brittle', word: 'brittle', urgency: 'this-season' },
  peeling: { title: 'Surface peeling', word: 'peeling', urgency: 'watch' },
};

const rowFor = (sign: Sign, looks: string | undefined): string | undefined =>
  looks === undefined ? undefined : ROWS.find(([kind, rows]) => isA(looks, kind) && rows[sign] !== undefined)?.[1][sign];

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  const here = [seen.entry.id];
  const share = body.share ? `, on ${showTyped(body.share, 'share')} of the part` : '';
  return body.signs.map((sign): Verdict => {
    const id = rowFor(sign, scene.station?.looks);
    const row = id === undefined ? undefined : defect(id);
    const otherwise = OTHERWISE[sign];
    const text = `Seen on ${showDay(seen.day)}: ${otherwise.word}${share}.`;
    return row
      ? {
          key: sign,
          title: defectTitle(row),
          urgency: row.urgency,
          who: row.who,
          because: [{ text: `${text} ${row.why}.`, entries: here, source: firstSource(row.sources) }],
          defect: row.id,
        }
      : {
          key: sign,
          title: otherwise.title,
          urgency: otherwise.urgency,
          who: 'yourself',
          because: [{ text, entries: here, source: PRACTICE }],
          remedies: sign === 'fading' ? [] : ['craze-watch'],
        };
  });
};

export const sunDamageRule = defineRule({
  id: 'sun-damage',
  title: 'Sun damage',
  says: 'As the defects table has it for this kind of part; where it has no row, fading and peeling are watched, chalking, cracking and brittleness are settled this season.',
  sources: [PRACTICE],
  reads: ['sun-damage'],
  example: { kind: 'sun-damage', body: { signs: ['brittle'] }, looks: 'plastic-cover', gives: 'this-season' },
  judge,
  provedBy: SOUND_LOOKS,
});
