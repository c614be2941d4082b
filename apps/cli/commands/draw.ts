import { writeFileSync } from 'node:fs';
import type { Command } from 'commander';
import { type Drawing, faceDrawing, knownFrom, numberedMarks, rigSheet, type SheetWater, svgText } from '../../../src/drawing';
import { moistureField, planAfter, type Water } from '../../../src/plan';
import type { Rig } from '../../../src/rig';
import type { Preferences } from '../../../src/units';
import { openLogbook } from '../logbook-file';
import { EXIT, print, Stop } from '../outcome';
import { dayFrom, unitSystem } from './plan';

type Options = { readonly face: string; readonly inside?: boolean; readonly water?: boolean; readonly out: string; readonly on?: string; readonly units: string };

/** Drawings of more than one face. */
const SHEETS = ['net', 'underside'] as const;

const write = (path: string, text: string): void => {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw new Stop(`${path} cannot be written: ${(error as NodeJS.ErrnoException).code}.`);
  }
};

/** Leaks with the maps of the walls they were metered on. */
const waterOn = (rig: Rig, water: Water): SheetWater => ({
  leaks: water.leaks,
  fields: water.panels.filter((p) => water.leaks.some((l) => l.spots.some((s) => p.spots.some((q) => q.id === s.id)))).map((p) => ({ face: p.face, field: moistureField(rig, p) })),
});

export const addDraw = (program: Command): void => {
  program
    .command('draw')
    .description('draw a face, the whole rig unfolded (net) or its underside, with its marks, as SVG')
    .argument('<log>', 'a .jsonl logbook')
    .requiredOption('--face <face>', 'curb, road, roof, front, rear, under, tongue, a slide-out’s face; or net, underside')
    .requiredOption('-o, --out <file>', 'the SVG file to write')
    .option('--inside', 'the inside of the face, mirrored')
    .option('--water', 'lays what is wet, the ways in and how the water runs over the whole rig (net)')
    .option('--on <day>', 'the civil day to judge, as 2026-10-04 (default: today)')
    .option('--units <system>', 'us or metric', 'us')
    .action(async (path: string, options: Options) => {
      const preferences: Preferences = { system: unitSystem(options.units), units: {} };
      const on = dayFrom(options.on);
      const { rig, state } = await openLogbook(path);
      const sheet = SHEETS.find((s) => s === options.face);
      if (sheet === undefined && !rig.faces.some((f) => f.id === options.face))
        throw new Stop(`--face: expected one of ${[...rig.faces.map((f) => f.id), ...SHEETS].join(', ')}; received “${options.face}”`, EXIT.refused);
      if (options.water && sheet !== 'net') throw new Stop('--water: expected --face net with it; the map of one wall is drawn by seamward water --map', EXIT.refused);
      const { plan, marks } = planAfter(undefined, rig, state, on);
      const shown = { known: knownFrom(plan, marks), numbered: numberedMarks(rig, plan) };
      const drawing: Drawing =
        sheet === undefined
          ? faceDrawing(rig, options.face, options.inside ? 'inside' : 'outside', shown, { preferences })
          : rigSheet(rig, shown, { sheet, preferences, ...(options.water ? { water: waterOn(rig, plan.water) } : {}) });
      write(options.out, svgText(drawing));
      print(`${drawing.title}, written to ${options.out}`);
    });
};
