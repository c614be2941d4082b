export type { MapLayer } from './bands';
export type { DrawnField } from './drawn-field';
export { looseSkinDrawing } from './loose-skin-drawing';
export { leaveOneOutWords, moistureKey, moistureSheet, thresholdWords } from './map-key';
export { type MapOptions, mapParts, moistureMap } from './moisture-map';
export type { SheetWater } from './sheet-water';
export { type WetThroughTime, wetTrendPlot } from './trend-plot';
export { followedSpot, letterOf } from './ways';
