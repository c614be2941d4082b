export * from './primitives';
