export * from './air';
export * from './geometry';
export * from './kriging';
export * from './leak';
export * from './rain';
export * from './sealant';
export * from './tyre';
export type { Validity } from './validity';
export * from './wood';
