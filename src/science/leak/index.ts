export * from './entry-posterior';
export * from './water-test';
