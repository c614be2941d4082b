export * from './air';
export * from './geometry';
export * from './kriging';
export * from './sealant';
export * from './tyre';
export type { Validity } from './validity';
export * from './wood';
