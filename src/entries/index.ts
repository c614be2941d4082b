import type { Rig } from '../rig';
import type { AnyKind, Entry } from '../terms';
import type { Refusal } from '../units';
import { asksOf } from './asks-at';
import { cleaned } from './care/cleaned/kind';
import { covered } from './care/covered/kind';
import { lubricated } from './care/lubricated/kind';
import { pressureSet } from './care/pressure-set/kind';
import { professionalWork } from './care/professional-work/kind';
import { proofSeen } from './care/proof-seen/kind';
import { rebedded } from './care/rebedded/kind';
import { replaced } from './care/replaced/kind';
import { resealed } from './care/resealed/kind';
import { spotPainted } from './care/spot-painted/kind';
import { tyreFitted } from './care/tyre-fitted/kind';
import { correction } from './decisions/correction/kind';
import { declined } from './decisions/declined/kind';
import { handedOver } from './decisions/handed-over/kind';
import { judgedOtherwise } from './decisions/judged-otherwise/kind';
import { putOff } from './decisions/put-off/kind';
import { withdrawal } from './decisions/withdrawal/kind';
import { layoutPlaced } from './descriptions/layout-placed/kind';
import { meter } from './descriptions/meter/kind';
import { rigDescribed } from './descriptions/rig-described/kind';
import { rigFacts } from './descriptions/rig-facts/kind';
import { setPressure } from './descriptions/set-pressure/kind';
import { sizesConfirmed } from './descriptions/sizes-confirmed/kind';
import { stationAdded } from './descriptions/station-added/kind';
import { stationFacts } from './descriptions/station-facts/kind';
import { stationMoved } from './descriptions/station-moved/kind';
import { stationRenamed } from './descriptions/station-renamed/kind';
import { stationRetired } from './descriptions/station-retired/kind';
import { accidentDamage } from './observations/accident-damage/kind';
import { airAndSkin } from './observations/air-and-skin/kind';
import { awningCondition } from './observations/awning-condition/kind';
import { couldNotSee } from './observations/could-not-see/kind';
import { insideSigns } from './observations/inside-signs/kind';
import { lampCondition } from './observations/lamp-condition/kind';
import { latchCondition } from './observations/latch-condition/kind';
import { leakClue } from './observations/leak-clue/kind';
import { look } from './observations/look/kind';
import { moistureRelative } from './observations/moisture-relative/kind';
import { openedState } from './observations/opened-state/kind';
import { otherCause } from './observations/other-cause/kind';
import { outOfTheOrdinary } from './observations/out-of-the-ordinary/kind';
import { roofSoftSpot } from './observations/roof-soft-spot/kind';
import { roundBegun } from './observations/round-begun/kind';
import { roundEnded } from './observations/round-ended/kind';
import { sealGrade } from './observations/seal-grade/kind';
import { skinCondition } from './observations/skin-condition/kind';
import { slideSeal } from './observations/slide-seal/kind';
import { stepCondition } from './observations/step-condition/kind';
import { stowed } from './observations/stowed/kind';
import { sunDamage } from './observations/sun-damage/kind';
import { tapSound } from './observations/tap-sound/kind';
import { tyreDateCode } from './observations/tyre-date-code/kind';
import { tyrePressure } from './observations/tyre-pressure/kind';
import { tyreSidewall } from './observations/tyre-sidewall/kind';
import { tyreTread } from './observations/tyre-tread/kind';
import { undersideCondition } from './observations/underside-condition/kind';
import { waterTest } from './observations/water-test/kind';
import { woodMoisturePin } from './observations/wood-moisture-pin/kind';
import { woodMoisturePinless } from './observations/wood-moisture-pinless/kind';
import { refuseEntry } from './read-entry';
import { leg } from './whereabouts/leg/kind';
import { livedAir } from './whereabouts/lived-air/kind';
import { rainFell } from './whereabouts/rain-fell/kind';
import { stay } from './whereabouts/stay/kind';

/** Every kind of logbook entry; observations stand in the order in which a round asks. Adding a kind is one folder and one line here. */
export const kinds: readonly AnyKind<Rig>[] = [
  // observations
  sealGrade,
  tyrePressure,
  tyreSidewall,
  tyreTread,
  tyreDateCode,
  stepCondition,
  slideSeal,
  lampCondition,
  awningCondition,
  latchCondition,
  undersideCondition,
  skinCondition,
  roofSoftSpot,
  insideSigns,
  look,
  woodMoisturePin,
  woodMoisturePinless,
  moistureRelative,
  airAndSkin,
  leakClue,
  otherCause,
  waterTest,
  tapSound,
  sunDamage,
  accidentDamage,
  openedState,
  outOfTheOrdinary,
  couldNotSee,
  stowed,
  roundBegun,
  roundEnded,
  // care
  resealed,
  replaced,
  rebedded,
  lubricated,
  spotPainted,
  tyreFitted,
  pressureSet,
  cleaned,
  covered,
  professionalWork,
  proofSeen,
  // decisions
  putOff,
  declined,
  judgedOtherwise,
  handedOver,
  correction,
  withdrawal,
  // whereabouts
  stay,
  leg,
  livedAir,
  rainFell,
  // descriptions
  rigDescribed,
  layoutPlaced,
  stationAdded,
  stationMoved,
  stationRenamed,
  stationRetired,
  stationFacts,
  sizesConfirmed,
  setPressure,
  rigFacts,
  meter,
];

const byId: ReadonlyMap<string, AnyKind<Rig>> = new Map(kinds.map((kind) => [kind.id, kind]));

export const kindById = (id: string): AnyKind<Rig> | undefined => byId.get(id);

/** What a round asks at a station, and what may be added there. */
export const asksAt = asksOf(kinds, look);

/** What is wrong with an entry whose envelope was read by the logbook: its place, what it concerns, its body. Unknown kinds pass. */
export const checkEntry = (entry: Entry): readonly Refusal[] => refuseEntry(kindById, entry);

export { askedFields, isAsked, keepAsked, soundBody, unitFor } from './asked';
export type { Asks, RoundForm } from './asks-at';
export { rigKindWord } from './descriptions/rig-described/kind';
export { type Doubt, doubts } from './doubts';
export { type HourlyAir, readHourlyAir } from './hourly-air';
export { type JsonSchema, jsonSchema } from './json-schema';
export { readBody } from './read-body';
export { type ReadEntry, readEntry, refuseEntry, upcast } from './read-entry';
export { SEALANTS, SURFACES } from './sealing';
export {
  accidentDamage,
  airAndSkin,
  awningCondition,
  cleaned,
  correction,
  couldNotSee,
  covered,
  declined,
  handedOver,
  insideSigns,
  judgedOtherwise,
  lampCondition,
  latchCondition,
  layoutPlaced,
  leakClue,
  leg,
  livedAir,
  look,
  lubricated,
  meter,
  moistureRelative,
  openedState,
  otherCause,
  outOfTheOrdinary,
  pressureSet,
  professionalWork,
  proofSeen,
  putOff,
  rainFell,
  rebedded,
  replaced,
  resealed,
  rigDescribed,
  rigFacts,
  roofSoftSpot,
  roundBegun,
  roundEnded,
  sealGrade,
  setPressure,
  sizesConfirmed,
  skinCondition,
  slideSeal,
  spotPainted,
  stationAdded,
  stationFacts,
  stationMoved,
  stationRenamed,
  stationRetired,
  stay,
  stepCondition,
  stowed,
  sunDamage,
  tapSound,
  tyreDateCode,
  tyreFitted,
  tyrePressure,
  tyreSidewall,
  tyreTread,
  undersideCondition,
  waterTest,
  withdrawal,
  woodMoisturePin,
  woodMoisturePinless,
};
