export * from './brands';
export * from './figures';
export * from './quantities';
export * from './refusal';
export * from './time';
export * from './typed';
export * from './typed-list';
