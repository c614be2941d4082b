export { conditionRecord, type RecordOptions } from './condition-record';
export { photosToPrint } from './photos-block';
export { planSheet } from './plan-sheet';
export type { PrintOptions } from './print-words';
export type { Paper } from './sheet-page';
export { type WalkOptions, type WalkStep, walkSheet } from './walk-sheet';
