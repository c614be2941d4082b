import type { AnyWorksheet } from '../terms';
import { applicationGateSheet } from './application-gate';
import { beadDemandSheet } from './bead-demand';
import { beadLengthSheet } from './bead-length';
import { beadSectionSheet } from './bead-section';
import { chanceAboveSheet } from './chance-above';
import { clearSky } from './clear-sky';
import { clearSkySum } from './clear-sky-sum';
import { condensationSheet } from './condensation';
import { cureThroughSheet } from './cure-through';
import { dewPointSheet } from './dew-point';
import { drivingRainPressure } from './driving-rain-pressure';
import { dryReference } from './dry-reference';
import { dryingLeft } from './drying-left';
import { dryingTimeSheet } from './drying-time';
import { entryPointsSheet } from './entry-points';
import { humidityFromDewPointSheet } from './humidity-from-dew-point';
import { inverseDistanceSheet } from './inverse-distance';
import { jointDepthSheet } from './joint-depth';
import { jointMovementSheet } from './joint-movement';
import { jointWidthSheet } from './joint-width';
import { krigingEstimate } from './kriging-estimate';
import { ladderSheet } from './ladder';
import { mapCheck } from './map-check';
import { mayItTouch } from './may-it-touch';
import { mouldIndexSheet } from './mould-index';
import { mouldLimits } from './mould-limits';
import { outlineAreaSheet } from './outline-area';
import { outlineGrowthSheet } from './outline-growth';
import { ovenDryMoistureSheet } from './oven-dry-moisture';
import { packagesNeeded } from './packages-needed';
import { pinMeterTemperatureSheet } from './pin-meter-temperature';
import { pullTest } from './pull-test';
import { rainThroughPlaneSheet } from './rain-through-plane';
import { saturationPressureSheet } from './saturation-pressure';
import { solAirSheet } from './sol-air';
import { standardAtmosphere } from './standard-atmosphere';
import { sunOnFace } from './sun-on-face';
import { sunOnRig } from './sun-on-rig';
import { sunPosition } from './sun-position';
import { sunriseSunset } from './sunrise-sunset';
import { surfaceTemperatureSheet } from './surface-temperature';
import { tapeRolls } from './tape-rolls';
import { tapeSqueeze } from './tape-squeeze';
import { trendChance } from './trend-chance';
import { trendInterval } from './trend-interval';
import { trendSlope } from './trend-slope';
import { trendTest } from './trend-test';
import { typicalDifference } from './typical-difference';
import { tyreDateCode } from './tyre-date-code';
import { tyreLoadIndex } from './tyre-load-index';
import { tyrePressureAfterChange } from './tyre-pressure-after-change';
import { tyreRunFlat } from './tyre-run-flat';
import { tyreSize } from './tyre-size';
import { waterTestInformation } from './water-test-information';
import { waterTestUpdate } from './water-test-update';
import { whichSealantSheet } from './which-sealant';
import { woodEquilibriumHumidity } from './wood-equilibrium-humidity';
import { woodEquilibriumMoisture } from './wood-equilibrium-moisture';

export { type Evaluation, evaluate, keysFor, type Worked, work } from './evaluate';
export { howMany } from './read-input';

/** Every calculation of the house, each declared once. The command line, the page behind a figure and the docs read this list. */
export const worksheets: readonly AnyWorksheet[] = [
  woodEquilibriumMoisture,
  woodEquilibriumHumidity,
  saturationPressureSheet,
  dewPointSheet,
  humidityFromDewPointSheet,
  condensationSheet,
  pinMeterTemperatureSheet,
  ovenDryMoistureSheet,
  dryReference,
  trendSlope,
  trendInterval,
  trendTest,
  trendChance,
  dryingTimeSheet,
  dryingLeft,
  mouldLimits,
  mouldIndexSheet,
  standardAtmosphere,
  tyreDateCode,
  tyreSize,
  tyreLoadIndex,
  tyrePressureAfterChange,
  tyreRunFlat,
  whichSealantSheet,
  mayItTouch,
  beadSectionSheet,
  beadLengthSheet,
  packagesNeeded,
  tapeRolls,
  tapeSqueeze,
  jointMovementSheet,
  jointWidthSheet,
  beadDemandSheet,
  jointDepthSheet,
  cureThroughSheet,
  pullTest,
  ladderSheet,
  outlineAreaSheet,
  outlineGrowthSheet,
  entryPointsSheet,
  waterTestUpdate,
  waterTestInformation,
  drivingRainPressure,
  rainThroughPlaneSheet,
  krigingEstimate,
  chanceAboveSheet,
  mapCheck,
  inverseDistanceSheet,
  typicalDifference,
  sunPosition,
  sunriseSunset,
  clearSky,
  sunOnFace,
  sunOnRig,
  clearSkySum,
  solAirSheet,
  surfaceTemperatureSheet,
  applicationGateSheet,
];

export const worksheetById = (id: string): AnyWorksheet | undefined => worksheets.find((w) => w.id === id);
