import { type Drawing, knownFrom, numberedMarks, rigSheet, type SheetMark, type SheetMarks } from '../../../src/drawing';
import type { Leak } from '../../../src/plan';
import type { Preferences } from '../../../src/units';
import type { Overview } from '../session/session';

/** What can be laid over the rig. */
export type Layer = 'open' | 'sound' | 'not-seen' | 'last-graded' | 'water';

const LAYERS: readonly { readonly id: Layer; readonly word: string }[] = [
  { id: 'open', word: 'Open findings' },
  { id: 'sound', word: 'Sound' },
  { id: 'not-seen', word: 'Not seen' },
  { id: 'last-graded', word: 'Last graded' },
  { id: 'water', word: 'Water' },
];

/** Layers that there is something to show on. */
export const layersOf = (overview: Overview): typeof LAYERS => LAYERS.filter((l) => l.id !== 'water' || waterOpen(overview).length > 0);

/** Leaks that are not settled yet. */
const waterOpen = (overview: Overview): readonly Leak[] =>
  overview.plan.water.leaks.filter((l) => l.dryness.state !== 'dry' && !l.other_causes.some((c) => c.state === 'it-is-this'));

/** A longer list of unseen stations is told by dotted circles alone: a number at every part would hide the rig. */
const MOST_NUMBERED_UNSEEN = 12;

/** The numbered list that drawing and column share. */
export const numbered = (overview: Overview): readonly SheetMark[] => {
  const all = numberedMarks(overview.rig, overview.plan);
  const unseen = all.filter((m) => m.mark === 'not-seen').length;
  return unseen > MOST_NUMBERED_UNSEEN ? all.filter((m) => m.mark !== 'not-seen') : all;
};

/** What is known of each station, and the numbered list, as a drawing wants them. */
export const marksOf = (overview: Overview): SheetMarks => ({ known: knownFrom(overview.plan, overview.marks), numbered: numbered(overview) });

/** Below this scale numbers would cover the parts. [CSS px to the metre] */
const NUMBERS_FROM_PX = 44;

/** The whole rig, drawn for a width on the screen so that type stays readable there. */
export const sheetDrawing = (overview: Overview, layers: ReadonlySet<Layer>, preferences: Preferences, width_px: number, sheet: 'net' | 'underside' = 'net'): Drawing => {
  const draw = (px: number): Drawing =>
    rigSheet(overview.rig, marksOf(overview), {
      sheet,
      preferences,
      px,
      mark_px: px < NUMBERS_FROM_PX ? 14 : 20,
      type_px: px < NUMBERS_FROM_PX ? 10 : 12,
      numbers: px >= NUMBERS_FROM_PX,
      dimensions: px >= NUMBERS_FROM_PX,
      ...(layers.has('water') && sheet === 'net' ? { water: { leaks: waterOpen(overview) } } : {}),
      show: { findings: layers.has('open'), sound: layers.has('sound') && !layers.has('last-graded') && px >= NUMBERS_FROM_PX, not_seen: layers.has('not-seen') },
    });
  const first = draw(width_px > 700 ? 72 : 28);
  return draw(width_px / first.width);
};

/** What a press on the drawing means: a finding by its mark, or a station. */
export const thingOf = (id: string): string => id.replace(/^(mark\/(not-seen\/)?|way\/)/, '');
