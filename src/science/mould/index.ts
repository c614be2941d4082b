export * from './mould-classes';
export { criticalHumidity, largestMouldIndex, mouldHumidity, mouldTemperature, weeksToFirstMould } from './mould-growth';
export * from './mould-index';
