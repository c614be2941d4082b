export * from './entry';
export * from './field';
export * from './kind';
export * from './place';
export * from './source';
export * from './station';
export * from './urgency';
export * from './worksheet';
