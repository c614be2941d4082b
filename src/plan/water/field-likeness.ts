import type { Rig } from '../../rig';
import { median, scaledMad, type Variogram } from '../../science';
import type { MapReading, MapReadings } from './field-readings';
import { pointsOn, SCALES, showOn } from './scales';
import type { Panel, Scale } from './water-types';

/** Along a wall: 24 in, within the 18 to 30 in that the method proposes for so few readings. [m] */
const ALONG_M = 0.6096;
/** Up and down a wall readings stay alike twice as far, because water runs down: an assumption. */
const DOWN_RATIO = 2;
/** No map is drawn farther than this share of the range from every reading it may use: 18 in along a wall; ours. */
export const REACH = 0.75;
/** Threshold of a pin reading with no dry place beside it. [kg/kg] */
const PIN_WET = 0.2;
const SPREADS = 3;

/** A ceiling, a floor: no way there is down. */
const LEVEL = /^(roof|under)$|-top$/;

/** How alike readings of a panel are taken to be, before those of a field give it their spread. */
export const priorLikeness = (rig: Pick<Rig, 'meters'>, panel: Panel): Variogram => {
  const known = rig.meters.find((m) => m.name.toLowerCase() === panel.meter.toLowerCase() && m.scale === panel.scale)?.repeatability;
  const { scatter, dry } = SCALES[panel.scale];
  const level = LEVEL.test(panel.face);
  return {
    model: 'spherical',
    nugget: (known !== undefined && known > 0 ? known : scatter) ** 2,
    partial_sill: dry ** 2,
    range: level ? ALONG_M : ALONG_M * DOWN_RATIO,
    anisotropy: { ratio: level ? 1 : DOWN_RATIO, direction_rad: Math.PI / 2 },
  };
};

/** The same with the spread of a field's own readings, never below what counts as dry: few readings that agree by luck promise nothing. */
export const likenessWith = (prior: Variogram, readings: readonly MapReading[]): Variogram => {
  const mean = readings.reduce((sum, r) => sum + r.value, 0) / readings.length;
  const variance = readings.length < 2 ? 0 : readings.reduce((sum, r) => sum + (r.value - mean) ** 2, 0) / (readings.length - 1);
  return { ...prior, partial_sill: Math.max(prior.partial_sill, variance - prior.nugget) };
};

const inBoth = (m: number): string => `${Math.round(m / 0.0254)} in (${Math.round(m * 100)} cm)`;

export const likenessWords = (prior: Variogram, scale: Scale, known: boolean): readonly string[] => {
  const across = prior.range / (prior.anisotropy?.ratio ?? 1);
  return [
    prior.anisotropy?.ratio === 1
      ? `Readings are taken to be alike up to ${inBoth(across)} apart. This is an assumption: 50 readings or more would be needed to see it in them.`
      : `Readings are taken to be alike up to ${inBoth(across)} along the wall and ${inBoth(prior.range)} up and down it, because water runs down. This is an assumption: 50 readings or more would be needed to see it in them.`,
    `One place read twice is taken to differ by ${pointsOn(scale, Math.sqrt(prior.nugget))}${known ? ', as recorded for this meter' : '; record your own meter’s repeatability to have it used'}. The spread of readings far apart is that of the readings themselves, never below ${pointsOn(scale, Math.sqrt(prior.partial_sill))}.`,
    `Nothing is drawn farther than ${inBoth(across * REACH)}${prior.anisotropy?.ratio === 1 ? '' : ` along the wall, or ${inBoth(prior.range * REACH)} up and down,`} from every reading of the same part.`,
  ];
};

/** From where on a place counts as wet on the map, and in words why there. */
export const thresholdOf = (panel: Panel, { of, readings }: MapReadings, given: number | undefined): { readonly threshold: number; readonly words: string } => {
  const { scale, reference } = panel;
  const { dry, rise } = SCALES[scale];
  if (given !== undefined) return { threshold: given, words: `The threshold of ${of === 'excess' ? pointsOn(scale, given) : showOn(scale, given)} was chosen by you.` };
  if (of === 'excess') {
    const spreads = SPREADS * (reference?.spread ?? 0);
    const threshold = Math.max(spreads, dry);
    const why = spreads > dry ? 'three times the spread of the dry places' : `what still counts as dry; three times the spread of the dry places is less`;
    return { threshold, words: `The map shows the chance of lying more than ${pointsOn(scale, threshold)} above the dry places: ${why}.` };
  }
  if (scale === 'pin')
    return {
      threshold: PIN_WET,
      words: `No dry place was read on the same day. The map shows the chance of lying above ${showOn(scale, PIN_WET)}, where wood begins to be at risk.`,
    };
  const values = readings.map((r) => r.value);
  const threshold = values.length === 0 ? rise : median(values) + Math.max(rise, SPREADS * (values.length < 3 ? 0 : scaledMad(values)));
  return {
    threshold,
    words: `No dry place was read on the same day, and this meter’s scale has no threshold of its own. The map shows the chance of lying above ${showOn(scale, threshold)}, well above the middle of these readings: where most of the wall is wet, this hides it. Read three dry places.`,
  };
};
