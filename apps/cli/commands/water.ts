import { writeFileSync } from 'node:fs';
import type { Command } from 'commander';
import { moistureSheet, svgText } from '../../../src/drawing';
import { moistureField, type Panel, planOf, type Water } from '../../../src/plan';
import { mapText, waterDocument, waterText } from '../../../src/report';
import type { Rig } from '../../../src/rig';
import type { Preferences } from '../../../src/units';
import { openLogbook } from '../logbook-file';
import { EXIT, print, Stop } from '../outcome';
import { dayFrom, unitSystem } from './plan';

type Options = { readonly json?: boolean; readonly on?: string; readonly units: string; readonly map?: string; readonly out?: string };

const panelNamed = (water: Water, name: string): Panel => {
  const panel = water.panels.find((p) => p.id === name);
  if (panel) return panel;
  const known = water.panels.map((p) => `“${p.id}”`).join(', ');
  throw new Stop(`--map: expected ${known === '' ? 'a panel that was metered; none was' : `one of ${known}`}; received “${name}”`, EXIT.refused);
};

/** The map of one panel: in words, or drawn into a file. */
const map = (rig: Rig, water: Water, name: string, out: string | undefined, preferences: Preferences): string => {
  const panel = panelNamed(water, name);
  const field = moistureField(rig, panel);
  if (out === undefined) return mapText(panel, field, preferences);
  const leak = water.leaks.find((l) => l.spots.some((s) => panel.spots.some((mine) => mine.id === s.id)));
  const drawing = moistureSheet(rig, panel, field, { preferences, next: true, ...(leak ? { leak } : {}) });
  try {
    writeFileSync(out, svgText(drawing));
  } catch (error) {
    throw new Stop(`${out} cannot be written: ${(error as NodeJS.ErrnoException).code}.`);
  }
  return `${drawing.title}, written to ${out}`;
};

export const addWater = (program: Command): void => {
  program
    .command('water')
    .description('moisture readings against their yardsticks, where water most likely comes in, what to test next, and whether a repair held')
    .argument('<log>', 'a .jsonl logbook')
    .option('--json', 'print it as JSON, as it stands in the plan')
    .option('--map <panel>', 'the map of one panel, such as road@inside/pin, in words; with --out drawn')
    .option('-o, --out <file>', 'the SVG file to draw the map into')
    .option('--on <day>', 'the civil day to judge, as 2026-10-04 (default: today)')
    .option('--units <system>', 'us or metric, for the plain text', 'us')
    .action(async (path: string, options: Options) => {
      const preferences: Preferences = { system: unitSystem(options.units), units: {} };
      const on = dayFrom(options.on);
      if (options.out !== undefined && options.map === undefined) throw new Stop('--out: expected --map with it', EXIT.refused);
      const { rig, state } = await openLogbook(path);
      const plan = planOf(rig, state, on);
      if (options.map !== undefined) print(map(rig, plan.water, options.map, options.out, preferences));
      else print(options.json ? waterDocument(plan, rig) : waterText(plan.water, rig, preferences));
    });
};
