export { mapText } from './map-text';
export { planDocument, waterDocument, windowsDocument } from './plan-document';
export { planText } from './plan-text';
export { conditionRecord, type Paper, type PrintOptions, photosToPrint, planSheet, type RecordOptions, type WalkOptions, type WalkStep, walkSheet } from './print';
export { waterText } from './water-text';
export { type WindowsTold, windowsText } from './windows-text';
