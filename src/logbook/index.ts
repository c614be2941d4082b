export * from './ports';
export * from './state';
