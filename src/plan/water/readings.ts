import type { moistureRelative, woodMoisturePin, woodMoisturePinless } from '../../entries';
import type { Standing } from '../../logbook';
import { faceOf, type Meter, pointInside, pointOf, type Rig } from '../../rig';
import { PIN_METER_UNCERTAINTY, pinMeterLinear, pinMeterPfaffGarrahan, pinMeterReading, pinMeterTemperature } from '../../science';
import type { BodyOf, Side } from '../../terms';
import { fromSi, kelvin, moistureContent } from '../../units';
import type { Worked } from '../plan-types';
import { METER_KINDS } from './record';
import { SCALES } from './scales';
import type { Comparable, NoNumber, Scale } from './water-types';

type Body = BodyOf<(typeof woodMoisturePin)['fields']> & BodyOf<(typeof woodMoisturePinless)['fields']> & BodyOf<(typeof moistureRelative)['fields']>;

/** Ice point. [K] */
const FREEZING = kelvin(273.15);
/** Temperature that meters are calibrated at where nobody said otherwise. [K] */
const USUAL_CALIBRATION = kelvin(293.15);
/** Ratio scale of a relative meter: its figures run from 0 to 100. */
const OF_SCALE = 100;

const NO_WOOD: ReadonlySet<string> = new Set(['foam', 'metal', 'no-wood']);

const METAL_WALLS: ReadonlySet<Rig['skin']> = new Set(['corrugated-aluminium', 'sheet-aluminium', 'painted-steel']);
const METAL_ROOFS: ReadonlySet<Rig['roof']> = new Set(['aluminium', 'painted-steel']);

/** Held against a metal skin from outside a meter that needs no pins reads the metal, whatever was said to be behind it. */
const throughMetal = (rig: Rig, face: string, side: Side): boolean =>
  side === 'outside' && (face === 'roof' ? METAL_ROOFS.has(rig.roof) : face !== 'under' && METAL_WALLS.has(rig.skin));

const noNumber = (scale: Scale, body: Body, through_metal: boolean): NoNumber | undefined => {
  if (body.surface === 'frozen' || (body.wood_temperature !== undefined && body.wood_temperature.si <= FREEZING)) return 'frozen';
  if (body.surface === 'wet') return 'surface-wet';
  if (scale !== 'pin' && through_metal) return 'no-wood';
  if (body.material !== undefined && (scale === 'relative' ? body.material === 'metal' : NO_WOOD.has(body.material))) return 'no-wood';
  return undefined;
};

/** The meter as its owner described it; another scale under the same name is another meter. */
const meterOf = (rig: Rig, name: string, scale: Scale): Meter | undefined => rig.meters.find((m) => m.scale === scale && m.name.toLowerCase() === name.toLowerCase());

type Made = { readonly value: number; readonly remark?: string };

/** What the meter's own table makes of a figure, read between its rows; never beyond them. */
const byTable = (shown: number, material: string | undefined, meter: Meter | undefined): Made => {
  const rows = (meter?.table ?? []).filter((r) => r.material === material);
  if (rows.length === 0)
    return meter?.table && material !== undefined ? { value: shown, remark: `The table of ${meter.name} has no ${material}: the figure stands as shown.` } : { value: shown };
  for (let i = 1; i < rows.length; i++) {
    const [a, b] = [rows[i - 1], rows[i]];
    if (!a || !b || shown < a.shown || shown > b.shown || b.shown <= a.shown) continue;
    return { value: a.corrected + ((b.corrected - a.corrected) * (shown - a.shown)) / (b.shown - a.shown) };
  }
  return { value: shown, remark: `The table of ${meter?.name ?? 'the meter'} does not reach this figure: it stands as shown.` };
};

type Corrected = Made & { readonly worked?: Worked };

/** Kind of wood first, then temperature, as makers do it; the order is kept in what was worked. */
const correct = (body: Body, meter: Meter | undefined, shown: number): Corrected => {
  const wood = byTable(shown, body.material, meter);
  const temperature = body.wood_temperature;
  const rule = meter?.correction ?? 'linear';
  if (rule === 'meter-does-it') return wood;
  if (!temperature) return { ...wood, remark: [wood.remark, 'Not corrected for temperature: that of the wood was not taken.'].filter(Boolean).join(' ') };
  const at = kelvin(temperature.si);
  const calibrated_at = kelvin(meter?.calibrated_at_k ?? USUAL_CALIBRATION);
  const found = rule === 'linear' ? pinMeterLinear(moistureContent(wood.value), at, calibrated_at) : pinMeterPfaffGarrahan(moistureContent(wood.value), at);
  if (!found.ok) {
    const why = at > pinMeterTemperature.most ? 'the wood was too warm for the rule' : `the rule holds for ${pinMeterReading.words.split(';')[0] ?? ''}`;
    return { ...wood, remark: [wood.remark, `Not corrected for temperature: ${why}.`].filter(Boolean).join(' ') };
  }
  const inputs: Record<string, number | string> = {
    reading_percent: fromSi(wood.value, 'moisture-content', 'percent'),
    wood_temperature_c: fromSi(at, 'temperature', 'c'),
    ...(meter?.calibrated_at_k === undefined ? {} : { calibrated_at_c: fromSi(calibrated_at, 'temperature', 'c') }),
    ...(rule === 'linear' ? {} : { rule }),
  };
  return { value: found.value, ...(wood.remark === undefined ? {} : { remark: wood.remark }), worked: { worksheet: 'pin-meter-temperature', inputs } };
};

/** Beyond what resistance tells: above fibre saturation only “wet”, below 7 % only “dry”. */
const isBeyond = (scale: Scale, shown: number): boolean => scale === 'pin' && (shown > (pinMeterReading.most ?? 1) || shown < (pinMeterReading.least ?? 0));

/**
 * One reading made comparable: kind of wood by the meter's own table, then temperature by its rule; or why it gives no number.
 *
 * @returns   undefined where the rig has no such place
 * @assumes   20 °C calibration and the linear rule where the meter's owner gave nothing
 */
export const comparable = (standing: Standing, rig: Rig): Comparable | undefined => {
  const scale = METER_KINDS[standing.entry.kind as keyof typeof METER_KINDS];
  const at = pointOf(rig, standing.place);
  if (scale === undefined || at === undefined || standing.place.at === 'rig') return undefined;
  const body = standing.body as Body;
  const name = (body.meter ?? '').trim();
  const meter = name === '' ? undefined : meterOf(rig, name, scale);
  const as_read = scale === 'relative' ? body.reading.si / OF_SCALE : body.reading.si;
  const none = noNumber(scale, body, throughMetal(rig, at.face, standing.place.side));
  const beyond = none === undefined && isBeyond(scale, as_read);
  const made: Corrected =
    none !== undefined || beyond || scale === 'relative' ? { value: as_read } : scale === 'pin' ? correct(body, meter, as_read) : byTable(as_read, body.material, meter);
  const face = faceOf(rig, at.face);
  return {
    entry: standing.entry.id,
    place: standing.place,
    face: at.face,
    side: standing.place.side,
    point_m: at.point,
    ...('station' in standing.place ? { station: standing.place.station } : {}),
    scale,
    meter: name,
    day: standing.day,
    observed_at: standing.observed_at,
    as_read,
    value: none === undefined ? made.value : undefined,
    ...(none !== undefined ? { no_number: none } : beyond ? { no_number: 'beyond-meter' as const } : {}),
    plus_minus: Math.max(meter?.repeatability ?? 0, scale === 'pin' ? PIN_METER_UNCERTAINTY : SCALES[scale].scatter),
    dry_reference: body.dry_reference === true,
    ...(made.worked ? { worked: made.worked } : {}),
    ...(body.wood_temperature === undefined ? {} : { wood_temperature_k: body.wood_temperature.si }),
    ...(body.material === undefined ? {} : { material: body.material }),
    ...(face && !('station' in standing.place) && !pointInside(at.point, face.outline_m) ? { off_panel: true as const } : {}),
    ...(made.remark === undefined ? {} : { remark: made.remark }),
  };
};

const WHY_NOT: Readonly<Record<NoNumber, string>> = {
  frozen: 'the wood was frozen, and a meter does not take ice for water',
  'surface-wet': 'the surface was wet, and the figure tells of the surface',
  'no-wood': 'there is no wood behind, or metal in reach',
  'beyond-meter': 'beyond what a pin meter tells apart',
};

/** Why a reading gives no number, in words. */
export const whyNoNumber = (why: NoNumber): string => WHY_NOT[why];
