export * from './ladder';
