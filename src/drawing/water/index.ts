export type { MapLayer } from './bands';
export type { DrawnField } from './drawn-field';
export { looseSkinDrawing } from './loose-skin-drawing';
export { moistureKey, moistureSheet } from './map-key';
export { type MapOptions, moistureMap, moistureNotes } from './moisture-map';
export type { SheetWater } from './sheet-water';
export { type WetThroughTime, wetTrendPlot } from './trend-plot';
export { followedSpot, letterOf } from './ways';
