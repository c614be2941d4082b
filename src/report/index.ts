export { mapText } from './map-text';
export { planDocument, waterDocument } from './plan-document';
export { planText } from './plan-text';
export { conditionRecord, type Paper, type PrintOptions, photosToPrint, planSheet, type RecordOptions, type WalkOptions, type WalkStep, walkSheet } from './print';
export { waterText } from './water-text';
