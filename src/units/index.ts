export * from './brands';
export * from './quantities';
export * from './refusal';
export * from './time';
export * from './typed';
