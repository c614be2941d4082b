import type { roofSoftSpot } from '../../entries';
import type { Standing } from '../../logbook';
import type { BodyOf } from '../../terms';
import { showDay, showTyped } from '../../units';
import { defineRule, type Scene, type Verdict } from '../rule';
import { suspectsAt } from '../suspects';
import { isA } from '../trade';
import { REPAIRS } from './repairs';
import { MOISTURE_BANDS, PRACTICE } from './sources';

type Body = BodyOf<(typeof roofSoftSpot)['fields']>;

const defectAt = (looks: string | undefined): string =>
  looks !== undefined && isA(looks, 'cap-seam') ? 'cap-seam.soft' : looks !== undefined && isA(looks, 'roof-edge') ? 'roof-edge.soft' : 'roof-field.soft-deck';

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  if (body.deck === 'firm') return [];
  const here = [seen.entry.id];
  const bySeam = body.near === 'front-or-rear-seam' || (scene.station !== undefined && isA(scene.station.looks, 'cap-seam'));
  const how = body.deck === 'soft' ? 'soft or springy' : 'gives a little';
  const across = body.across ? `, ${showTyped(body.across, 'length')} across` : '';
  return [
    {
      key: '',
      title: bySeam ? 'Soft roof near the front or rear seam' : 'Soft roof deck',
      urgency: 'before-rain',
      who: 'professional',
      because: [
        { text: `The deck ${how}${across}, felt on ${showDay(seen.day)}. Wood under the covering is failing, and each rain feeds it.`, entries: here, source: MOISTURE_BANDS },
        ...(bySeam
          ? [{ text: 'Near the front or rear seam it carries the cap and lies in the wind of the road: before rain, and for a professional.', entries: here, source: PRACTICE }]
          : []),
      ],
      defect: defectAt(scene.station?.looks),
      suspects: suspectsAt(seen.place, scene.rig),
    },
  ];
};

export const roofSoftSpotRule = defineRule({
  id: 'roof-soft-spot',
  title: 'Roof deck',
  says: 'A deck that gives or is soft is settled before rain by a professional, above all near the front or rear seam.',
  sources: [MOISTURE_BANDS, PRACTICE],
  reads: ['roof-soft-spot'],
  example: { kind: 'roof-soft-spot', body: { deck: 'gives', near: 'front-or-rear-seam' }, looks: 'roof-epdm', gives: 'before-rain' },
  judge,
  settles: (care) => REPAIRS.has(care.entry.kind),
});
