export * from './dew-point';
export * from './saturation-pressure';
export * from './standard-atmosphere';
