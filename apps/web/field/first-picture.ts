import { NO_MARKS, rigSheet, type SheetMark, svgText } from '../../../src/drawing';
import { blankRig, startingLayout } from '../../../src/rig';
import type { Mark } from '../../../src/terms';
import { PHONE_SHEET, withoutSmallPrint } from './phone-sheet';

/** What is marked on the sample, by hand: to show what a drawing with findings looks like. */
const MARKED: readonly (readonly [looks: RegExp, mark: Mark, professional: boolean])[] = [
  [/^tyre$/, 'before-moving', true],
  [/^vent-hatch/, 'before-rain', false],
  [/^window/, 'before-rain', false],
  [/^step/, 'this-season', false],
  [/^pipe-vent/, 'watch', false],
];

/** CSS px to a metre in the file; the page shows it at about two thirds of that, so that its rules are as thin as those of a small drawing. */
const FILE_PX = 38;

/**
 * The drawing on the first screen as a file: a typical travel trailer with a few marks. It is a picture and not drawn in
 * the page, so that the first screen needs neither layouts nor parts. Written by `scripts/first-picture.ts`, compared by a check.
 */
export const firstPicture = (): string => {
  const made = startingLayout({ kind: 'travel-trailer', name: 'A travel trailer', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' });
  if (!made.ok) throw new Error('the typical travel trailer cannot be drawn');
  const rig = { ...blankRig('sample'), ...made.value.layout, name: 'A travel trailer' };
  const numbered = MARKED.flatMap(([looks, mark, professional], i): readonly SheetMark[] => {
    const station = rig.stations.findLast((s) => looks.test(s.looks));
    return station
      ? [{ id: `${i}`, mark, number: i + 1, professional, place: { at: 'station', station: station.id, side: 'outside' }, station: station.id, where: station.name, what: '' }]
      : [];
  });
  return svgText(withoutSmallPrint(rigSheet(rig, { ...NO_MARKS, numbered }, PHONE_SHEET)), { theme: 'field', px: FILE_PX });
};
