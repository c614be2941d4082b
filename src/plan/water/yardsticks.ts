import { ours } from '../../terms';
import { figure, showDay } from '../../units';
import type { Because } from '../finding';
import { type Band, bandOf, inWood, TRADE_BANDS, TRADE_SOURCE, WOOD_BANDS, WOOD_SOURCE } from './bands';
import type { AirMoisture } from './lived-air';
import { whyNoNumber } from './readings';
import { ENOUGH_DRY } from './reference';
import { pointsOn, SCALE_WORD, SCALES, showOn } from './scales';
import { DRY_REFERENCE, FROZEN, HYSTERESIS, METER_MANUAL, SCORE, WOOD_FREE } from './sources';
import type { Sweating } from './sweating';
import type { Comparable, DryReference, SpotState, Yardsticks } from './water-types';

/** Spreads above the dry places from which a place is suspicious, and from which it is wet, where it is not near enough to count as dry. Our proposal, not a standard. */
const DAMP_SCORE = 3;
const WET_SCORE = 6;
/** Above equilibrium: within 2 points dry, above 4 more than its scatter explains (ours, from a hysteresis of 1 to 4 points). [kg/kg] */
const NEAR_AIR = 0.02;
const FAR_FROM_AIR = 0.04;
/** Limits of the trade's bands that change what is done. [kg/kg] */
const NOTED = 0.15;
const EARLY = 0.2;
const SAME = 1e-9;

/** One reading held against everything that it may be held against. */
export type Weighed = {
  readonly reading: Comparable;
  readonly yardsticks: Yardsticks;
  readonly state: SpotState;
  readonly sweat?: Sweating;
  readonly because: readonly Because[];
  /** Those of the reasons that tell it from its surroundings. */
  readonly beside: readonly Because[];
};

export type Beside = { readonly reference?: DryReference | undefined; readonly air?: AirMoisture | undefined; readonly sweat?: Sweating | undefined };

const WEAK = ours('with fewer than three dry places the meter’s own scatter stands for their spread: a yardstick, but a weaker one');

const yardsticksOf = (reading: Comparable, { reference, air }: Beside): Yardsticks => {
  const { value } = reading;
  if (value === undefined) return {};
  const pinInWood = reading.scale === 'pin' && inWood(reading.material);
  const excess = reference && value - reference.median;
  return {
    ...(reference && excess !== undefined ? { reference: { excess, score: excess / reference.spread, reference } } : {}),
    ...(pinInWood && air ? { equilibrium: { moisture: air.moisture, excess: value - air.moisture, entry: air.entry, ...(air.worked ? { worked: air.worked } : {}) } } : {}),
    ...(pinInWood ? { bands: { trade: bandOf(TRADE_BANDS, value).id, wood: bandOf(WOOD_BANDS, value).id } } : {}),
  };
};

const NO_NUMBER_SOURCE = { frozen: FROZEN, 'surface-wet': FROZEN, 'no-wood': WOOD_FREE, 'beyond-meter': METER_MANUAL } as const;

const readingLine = (reading: Comparable): Because => {
  const { scale, value, worked, plus_minus, no_number } = reading;
  const typed = `${showOn(scale, reading.as_read)} by ${SCALE_WORD[scale]}${reading.meter === '' ? '' : ` (${reading.meter})`} on ${showDay(reading.day)}`;
  const entries = [reading.entry];
  const remark = reading.remark === undefined ? '' : ` ${reading.remark}`;
  if (no_number === 'beyond-meter')
    return { text: `${typed}: ${(value ?? 0) > EARLY ? 'above 30 % a pin meter tells only that wood is wet' : 'below 7 % only that it is dry'}.`, entries, source: METER_MANUAL };
  if (no_number !== undefined) return { text: `${typed} gives no number: ${whyNoNumber(no_number)}.`, entries, source: NO_NUMBER_SOURCE[no_number] };
  if (worked && value !== undefined)
    return {
      text: `${typed}, ${showOn(scale, value)} at calibration temperature, give or take ${showOn(scale, plus_minus)}.${remark}`,
      entries,
      source: METER_MANUAL,
      worksheet: { id: worked.worksheet, inputs: worked.inputs },
    };
  const table = value !== undefined && Math.abs(value - reading.as_read) > SAME ? `, ${showOn(scale, value)} by the meter’s own table` : '';
  return { text: `${typed}${table}.${remark}`, entries, source: METER_MANUAL };
};

const referenceLine = (reading: Comparable, { excess, score, reference }: NonNullable<Yardsticks['reference']>): Because => {
  const by = pointsOn(reading.scale, excess);
  const dry = reference.readings === 1 ? 'the one dry place' : `the ${reference.readings} dry places`;
  const side = excess < 0 ? 'below' : 'above';
  const spreads = excess > 0 ? `: ${figure(score, 1)} of their spreads` : '';
  return {
    text: `${by} ${side} ${dry} of that day (${showOn(reading.scale, reference.median)})${spreads}.${reference.readings < ENOUGH_DRY ? ' Read three dry places or more: so few are a weak yardstick.' : ''}`,
    entries: [reading.entry, ...reference.entries.filter((e) => e !== reading.entry)],
    source: reference.readings < ENOUGH_DRY ? WEAK : excess > 0 ? SCORE : DRY_REFERENCE,
    ...(reference.worked ? { worksheet: { id: reference.worked.worksheet, inputs: reference.worked.inputs } } : {}),
  };
};

const bandLine = (reading: Comparable, bands: NonNullable<Yardsticks['bands']>): readonly Because[] => {
  const word = (table: readonly Band[], id: string): string => table.find((b) => b.id === id)?.text ?? id;
  const doubt =
    reading.material === 'plywood'
      ? ' Some plywoods read high.'
      : reading.material === undefined || reading.material === 'not-known'
        ? ' What the pins stood in is not recorded; the bands hold for wood only.'
        : '';
  return [
    { text: `Bands of the trade, ${word(TRADE_BANDS, bands.trade)}.${doubt}`, entries: [reading.entry], source: TRADE_SOURCE },
    { text: `For wood itself, ${word(WOOD_BANDS, bands.wood)}.`, entries: [reading.entry], source: WOOD_SOURCE },
  ];
};

/** No more than the air it has lived in explains. */
const explainedByAir = (y: Yardsticks): boolean => y.equilibrium !== undefined && y.equilibrium.excess <= NEAR_AIR + SAME;

const byBand = (reading: Comparable): SpotState => {
  const { value } = reading;
  if (value === undefined || reading.scale !== 'pin' || !inWood(reading.material)) return 'not-known';
  return value >= EARLY - SAME ? 'wet' : value >= NOTED - SAME ? 'damp' : 'dry';
};

/** High, as its surroundings are. */
const highOrDry = (reading: Comparable): SpotState => (reading.scale === 'pin' && inWood(reading.material) && (reading.value ?? 0) >= NOTED - SAME ? 'weather' : 'dry');

const stateOf = (reading: Comparable, y: Yardsticks, sweat: Sweating | undefined): SpotState => {
  if (reading.value === undefined) return 'not-known';
  const { reference } = y;
  // As near as counts as dry is not damp, however alike the dry places read.
  const standsOut = reference !== undefined && reference.score > DAMP_SCORE && reference.excess > SCALES[reading.scale].dry + SAME;
  const state = standsOut ? (reference.score > WET_SCORE ? 'wet' : 'damp') : explainedByAir(y) ? highOrDry(reading) : beside(reading, y);
  return sweat?.skin === 'sweats' && (state === 'wet' || state === 'damp') ? 'condensation' : state;
};

/** A place that does not stand out from the dry ones, or has none beside it. */
const beside = (reading: Comparable, { reference, equilibrium }: Yardsticks): SpotState => {
  const absolute = byBand(reading);
  // The dry places themselves may be wet: where the air explains neither, the place is as wet as it reads.
  if (equilibrium && equilibrium.excess > FAR_FROM_AIR) return absolute;
  if (reference && (reference.reference.readings >= ENOUGH_DRY || equilibrium)) return highOrDry(reading);
  if (reference && absolute === 'not-known') return 'dry';
  if (equilibrium) return absolute === 'wet' ? 'damp' : absolute;
  return absolute;
};

const STATE_LINE: Readonly<Partial<Record<SpotState, string>>> = {
  weather: 'High, but no more than its surroundings: the weather, not a leak.',
};

const airLine = (reading: Comparable, excess: number, { because }: AirMoisture): Because => ({
  ...because,
  text: `${because.text} This reads ${pointsOn('pin', excess)} ${excess < 0 ? 'less' : 'more'}.`,
  entries: [reading.entry, ...because.entries],
});

/** A reading held against the dry places of its day, the air it has lived in, and the bands; and what that amounts to. */
export const weigh = (reading: Comparable, given: Beside): Weighed => {
  const yardsticks = yardsticksOf(reading, given);
  const state = stateOf(reading, yardsticks, given.sweat);
  const { reference, equilibrium, bands } = yardsticks;
  const said = STATE_LINE[state];
  const beside: readonly Because[] = [
    ...(reference ? [referenceLine(reading, reference)] : []),
    ...(equilibrium && given.air ? [airLine(reading, equilibrium.excess, given.air)] : []),
    ...(given.sweat ? [given.sweat.because] : []),
    ...(said === undefined ? [] : [{ text: said, entries: [reading.entry], source: equilibrium ? HYSTERESIS : DRY_REFERENCE }]),
  ];
  return {
    reading,
    yardsticks,
    state,
    ...(given.sweat ? { sweat: given.sweat } : {}),
    because: [readingLine(reading), ...beside, ...(bands ? bandLine(reading, bands) : [])],
    beside,
  };
};
