export * from './ladder';
export * from './outline';
