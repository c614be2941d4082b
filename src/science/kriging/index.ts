export * from './chance-above';
export * from './inverse-distance';
export * from './leave-one-out';
export * from './next-places';
export * from './ordinary-kriging';
export type { Sample } from './samples';
export { semivariance, type Variogram, type VariogramModel } from './variogram';
