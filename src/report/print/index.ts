export { conditionRecord, type RecordOptions } from './condition-record';
export { planSheet } from './plan-sheet';
export type { PrintOptions } from './print-words';
export type { Paper } from './sheet-page';
export { type WalkOptions, type WalkStep, walkSheet } from './walk-sheet';
