export * from './finding';
export * from './plan-types';
