import type { Rig } from '../rig';
import type { AnyKind } from '../terms';
import { asksOf } from './asks-at';
import { resealed } from './care/resealed/kind';
import { correction } from './decisions/correction/kind';
import { withdrawal } from './decisions/withdrawal/kind';
import { layoutPlaced } from './descriptions/layout-placed/kind';
import { rigDescribed } from './descriptions/rig-described/kind';
import { couldNotSee } from './observations/could-not-see/kind';
import { look } from './observations/look/kind';
import { roundBegun } from './observations/round-begun/kind';
import { roundEnded } from './observations/round-ended/kind';
import { sealGrade } from './observations/seal-grade/kind';
import { tyrePressure } from './observations/tyre-pressure/kind';
import { woodMoisturePin } from './observations/wood-moisture-pin/kind';

/** Every kind of logbook entry, in the order in which a round asks. Adding a kind is one folder and one line here. */
export const kinds: readonly AnyKind<Rig>[] = [
  sealGrade,
  tyrePressure,
  look,
  woodMoisturePin,
  couldNotSee,
  roundBegun,
  roundEnded,
  resealed,
  correction,
  withdrawal,
  rigDescribed,
  layoutPlaced,
];

const byId: ReadonlyMap<string, AnyKind<Rig>> = new Map(kinds.map((kind) => [kind.id, kind]));

export const kindById = (id: string): AnyKind<Rig> | undefined => byId.get(id);

export { correction, couldNotSee, layoutPlaced, look, resealed, rigDescribed, roundBegun, roundEnded, sealGrade, tyrePressure, withdrawal, woodMoisturePin };

/** What a round asks at a station, and what may be added there. */
export const asksAt = asksOf(kinds, look);

export { askedFields, isAsked, keepAsked, soundBody } from './asked';
export type { Asks, RoundForm } from './asks-at';
export { type Doubt, doubts } from './doubts';
export { bodyJsonSchema, type JsonSchema, jsonSchema } from './json-schema';
export { readBody } from './read-body';
export { type ReadEntry, readEntry, refuseEntry, upcast } from './read-entry';
export { SEALANTS, SURFACES } from './sealing';
