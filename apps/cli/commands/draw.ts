import { writeFileSync } from 'node:fs';
import type { Command } from 'commander';
import { type Drawing, faceDrawing, knownFrom, numberedMarks, rigSheet, svgText } from '../../../src/drawing';
import { planAfter } from '../../../src/plan';
import type { Preferences } from '../../../src/units';
import { openLogbook } from '../logbook-file';
import { EXIT, print, Stop } from '../outcome';
import { dayFrom, unitSystem } from './plan';

type Options = { readonly face: string; readonly inside?: boolean; readonly out: string; readonly on?: string; readonly units: string };

/** Drawings of more than one face. */
const SHEETS = ['net', 'underside'] as const;

const write = (path: string, text: string): void => {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw new Stop(`${path} cannot be written: ${(error as NodeJS.ErrnoException).code}.`);
  }
};

export const addDraw = (program: Command): void => {
  program
    .command('draw')
    .description('draw a face, the whole rig unfolded (net) or its underside, with its marks, as SVG')
    .argument('<log>', 'a .jsonl logbook')
    .requiredOption('--face <face>', 'curb, road, roof, front, rear, under, tongue, a slide-out’s face; or net, underside')
    .requiredOption('-o, --out <file>', 'the SVG file to write')
    .option('--inside', 'the inside of the face, mirrored')
    .option('--on <day>', 'the civil day to judge, as 2026-10-04 (default: today)')
    .option('--units <system>', 'us or metric', 'us')
    .action(async (path: string, options: Options) => {
      const preferences: Preferences = { system: unitSystem(options.units), units: {} };
      const on = dayFrom(options.on);
      const { rig, state } = await openLogbook(path);
      const sheet = SHEETS.find((s) => s === options.face);
      if (sheet === undefined && !rig.faces.some((f) => f.id === options.face))
        throw new Stop(`--face: expected one of ${[...rig.faces.map((f) => f.id), ...SHEETS].join(', ')}; received “${options.face}”`, EXIT.refused);
      const { plan, marks } = planAfter(undefined, rig, state, on);
      const shown = { known: knownFrom(plan, marks), numbered: numberedMarks(rig, plan) };
      const drawing: Drawing =
        sheet === undefined ? faceDrawing(rig, options.face, options.inside ? 'inside' : 'outside', shown, { preferences }) : rigSheet(rig, shown, { sheet, preferences });
      write(options.out, svgText(drawing));
      print(`${drawing.title}, written to ${options.out}`);
    });
};
