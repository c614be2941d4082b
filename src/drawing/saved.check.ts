import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Rig } from '../rig';
import { civilDay } from '../units';
import { faceDrawing } from './face-drawing';
import { gradePlot } from './grade-plot';
import { locator } from './locator';
import { markPicture } from './marks';
import { choicePicture, dateCodePicture, ladderPicture } from './pictures';
import type { Drawing } from './primitives';
import { rigSheet } from './rig-sheet';
import { stationDrawing } from './station-drawing';
import { type SvgOptions, svgText } from './svg-text';
import { KINDS, trialRig } from './trial-rig';
import { looseSkinDrawing, moistureMap, moistureSheet, wetTrendPlot } from './water';
import { trialField, trialLeak, trialPanel, trialSkin, trialTrend } from './water/trial-water';
import { wheelPlan } from './wheel-plan';

/**
 * Drawings as they were when a person last looked at them. A changed line is not wrong, but somebody must look:
 * run with UPDATE_DRAWINGS=1, look at the files under saved/, and keep them.
 */
const rig = trialRig('travel-trailer');
const framed: Rig = { ...rig, construction: 'hung' };
const station = (id: string) => {
  const found = rig.stations.find((s) => s.id === id);
  if (!found) throw new Error(`the trial rig has no ${id}`);
  return found;
};

type Saved = readonly [name: string, drawing: () => Drawing, options?: SvgOptions];

const drawings: readonly Saved[] = [
  ...KINDS.map((kind): Saved => [`net-${kind}`, () => rigSheet(trialRig(kind))]),
  ['underside', () => rigSheet(rig, undefined, { sheet: 'underside' })],
  ['face-rear-inside', () => faceDrawing(rig, 'rear', 'inside')],
  ['station-window', () => stationDrawing(rig, station('curb.window-36x22'))],
  ['station-roof-vent', () => stationDrawing(rig, station('roof.roof-vent-14'))],
  ['locator', () => locator(rig, station('roof.skylight')), { theme: 'field' }],
  ['wheels', () => wheelPlan(rig)],
  ['seal-s4', () => choicePicture('seal', 'S4') as Drawing, { theme: 'paper' }],
  ['date-code', () => dateCodePicture({ code: '2319' })],
  ['ladder', () => ladderPicture({ edge_m: 2.8, foot_m: 0.7, above_m: 0.9 })],
  ['mark-do-not-use', () => markPicture('do-not-use', 'Do not use', 28, { professional: true })],
  ['moisture-map', () => moistureSheet(rig, trialPanel(), trialField(rig), { leak: trialLeak(rig) })],
  ['moisture-map-framed', () => moistureSheet(framed, trialPanel(), trialField(framed))],
  ['moisture-map-night', () => moistureMap(rig, trialPanel(), trialField(rig), { leak: trialLeak(rig) }), { theme: 'night' }],
  ['moisture-map-paper', () => moistureSheet(rig, trialPanel(), trialField(rig), { leak: trialLeak(rig), fit_px: 520 }), { theme: 'paper' }],
  ['moisture-error', () => moistureSheet(rig, trialPanel(), trialField(rig), { layer: 'error' })],
  ['net-with-water', () => rigSheet(rig, undefined, { water: { leaks: [trialLeak(rig)], fields: [{ face: 'curb', field: trialField(rig) }] } })],
  ['loose-skin', () => looseSkinDrawing(rig, trialSkin)],
  ['wet-trend', () => wetTrendPlot(trialTrend)],
  ['wet-trend-narrow', () => wetTrendPlot({ ...trialTrend, width: 360 })],
  [
    'grades',
    () =>
      gradePlot({
        title: 'Seal grade through the years',
        looks: [0, 1, 3].map((grade, i) => ({ day: civilDay(19_700 + i * 200), grade })),
        care: [{ day: civilDay(19_950), words: 'resealed' }],
      }),
  ],
];

describe('saved drawings', () => {
  for (const [name, draw, options] of drawings)
    it(`${name} is as it was saved`, () => {
      const file = new URL(`./saved/${name}.svg`, import.meta.url);
      const text = svgText(draw(), options);
      if (process.env.UPDATE_DRAWINGS === '1') writeFileSync(file, text);
      expect(existsSync(file), `saved/${name}.svg is missing: run with UPDATE_DRAWINGS=1 and look at it`).toBe(true);
      expect(text === readFileSync(file, 'utf8'), `${name} has changed: run with UPDATE_DRAWINGS=1 and look at saved/${name}.svg`).toBe(true);
    });
});
