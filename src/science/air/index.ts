export * from './condensation';
export * from './dew-point';
export * from './humidity-from-dew-point';
export * from './saturation-pressure';
export * from './standard-atmosphere';
