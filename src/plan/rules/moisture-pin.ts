import type { woodMoisturePin } from '../../entries';
import type { Standing } from '../../logbook';
import { PIN_METER_UNCERTAINTY, pinMeterLinear } from '../../science';
import { type BodyOf, ours, type Urgency, type Who } from '../../terms';
import { fromSi, kelvin, moistureContent, showDay, showIn, showTyped } from '../../units';
import type { Because } from '../finding';
import { defineRule, type Scene, type Verdict } from '../rule';
import { suspectsAt } from '../suspects';
import { REPAIRS } from './repairs';
import { MOISTURE_BANDS } from './sources';

type Body = BodyOf<(typeof woodMoisturePin)['fields']>;

/** Bands of the leisure-vehicle trade, by pin meter in wood. [kg/kg] */
const BANDS: readonly {
  readonly from: number;
  readonly title: string;
  readonly urgency: Urgency;
  readonly who: Who;
  readonly text: string;
  readonly remedies: readonly string[];
}[] = [
  {
    from: 0.3,
    title: 'Wood wet through',
    urgency: 'before-rain',
    who: 'professional',
    text: '30 % and above: structural damage is under way; it is stripped down.',
    remedies: ['soft-structure'],
  },
  {
    from: 0.25,
    title: 'Wood wet',
    urgency: 'before-rain',
    who: 'professional',
    text: '25 to 30 %: moisture is evident; remedial work, and stripping where it is stained or soft.',
    remedies: ['soft-structure', 'wet-inside'],
  },
  { from: 0.2, title: 'Wood damp', urgency: 'before-rain', who: 'yourself', text: '20 to 25 %: water may be coming in; find where.', remedies: ['wet-inside'] },
  {
    from: 0.15,
    title: 'Wood a little damp',
    urgency: 'watch',
    who: 'yourself',
    text: '15 to 20 %: written down and read again in about three months. In air of 85 % humidity sound wood reads as much everywhere.',
    remedies: [],
  },
];

/** Percentages mean something in wood only. */
const NOT_WOOD: ReadonlySet<string> = new Set(['foam', 'chipboard']);

/** What the meter would have shown at its calibration temperature; the reading itself where that cannot be worked out. */
export const pinMoisture = (body: Body): { readonly value: number; readonly corrected: boolean; readonly inputs: Readonly<Record<string, number>> } => {
  const { reading, wood_temperature } = body;
  if (!wood_temperature) return { value: reading.si, corrected: false, inputs: {} };
  const found = pinMeterLinear(moistureContent(reading.si), kelvin(wood_temperature.si), kelvin(293.15));
  const inputs = { reading_percent: fromSi(reading.si, 'moisture-content', 'percent'), wood_temperature_c: fromSi(wood_temperature.si, 'temperature', 'c') };
  return found.ok ? { value: found.value, corrected: true, inputs } : { value: reading.si, corrected: false, inputs: {} };
};

const PLY = ours('makers of meters give no correction for plywood that was read: its percentages are compared, not trusted');

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  if (body.material !== undefined && NOT_WOOD.has(body.material)) return [];
  const { value, corrected, inputs } = pinMoisture(body);
  const band = BANDS.find((b) => value >= b.from - 1e-9);
  if (!band) return [];
  const here = [seen.entry.id];
  const typed = showTyped(body.reading, 'moisture-content');
  const because: Because[] = [
    corrected
      ? {
          text: `${typed} by pin meter on ${showDay(seen.day)}, ${showIn(value, 'moisture-content', 'percent')} at calibration temperature, give or take ${showIn(PIN_METER_UNCERTAINTY, 'moisture-content', 'percent')}. ${band.text}`,
          entries: here,
          source: MOISTURE_BANDS,
          worksheet: { id: 'pin-meter-temperature', inputs },
        }
      : { text: `${typed} by pin meter on ${showDay(seen.day)}, not corrected for the temperature of the wood. ${band.text}`, entries: here, source: MOISTURE_BANDS },
  ];
  if (body.material === 'plywood' || body.material === undefined || body.material === 'not-known')
    because.push({
      text:
        body.material === 'plywood'
          ? 'Some plywoods read high: compare with a dry place of the same build.'
          : 'What the pins stood in is not recorded; the bands hold for wood only. Compare with a dry place of the same build.',
      entries: here,
      source: PLY,
    });
  return [
    {
      key: '',
      title: band.title,
      urgency: band.urgency,
      who: band.who,
      because,
      remedies: band.remedies,
      cautions: band.remedies.length > 0 ? ['mould', 'mains'] : ['mains'],
      suspects: band.from >= 0.2 ? suspectsAt(seen.place, scene.rig) : [],
      proof_days: 7,
    },
  ];
};

export const moisturePinRule = defineRule({
  id: 'moisture-pin',
  title: 'Moisture by pin meter',
  says: 'In wood, corrected for its temperature: from 15 % watched, from 20 % the way in is found before rain, from 25 % for a professional. Pinless and relative readings are never banded.',
  sources: [MOISTURE_BANDS, PLY],
  reads: ['wood-moisture-pin'],
  example: { kind: 'wood-moisture-pin', body: { reading: { typed: '26', unit: 'percent', si: 0.26 }, material: 'softwood' }, looks: 'window', gives: 'before-rain' },
  judge,
  settles: (care) => REPAIRS.has(care.entry.kind),
});
