export { planDocument } from './plan-document';
export { planText } from './plan-text';
export { conditionRecord, type Paper, planSheet, type PrintOptions, type RecordOptions, type WalkOptions, type WalkStep, walkSheet } from './print';
