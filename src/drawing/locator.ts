import type { Rig } from '../rig';
import type { Side, Station } from '../terms';
import { around, boundsOn, ontoSheet, shifted } from './frame';
import { frameAlone } from './net';
import { shapePoints } from './parts';
import { flat } from './path';
import { penOn } from './pen';
import type { Drawing } from './primitives';
import { inDrawingOrder } from './rig-sheet';
import { anchorOf, boxesOf, faceOf, isArea, type Sheet } from './sheet';
import { faceWords } from './spoken';

const p = penOn(flat);

const isWall = (face: string): boolean => face === 'road' || face === 'curb';

/** Height and width at most, with their usual px. */
export type LocatorOptions = { readonly fit_px?: number; readonly height_px?: number; readonly side?: Side };

/** Parts that stay on a drawing the size of a stamp. */
const isLandmark = (s: Station): boolean => s.shape.form !== 'lines' && !isArea(s) && (s.cut_through || s.part === 'tyre' || s.group === 'equipment') && s.outline_m > 1.2;

/** Where a station is: its face as a small outline, two hairs across it that cross at the station. */
export const locator = (rig: Rig, station: Station, options: LocatorOptions = {}): Drawing => {
  const side = options.side ?? 'outside';
  const outline = faceOf(rig, station.face)?.outline_m ?? [];
  const raw = frameAlone(rig, station.face, side);
  const tyres = rig.stations.filter((s) => s.face === station.face && s.part === 'tyre' && !s.retired);
  const b = around([boundsOn(raw, outline), ...tyres.flatMap((s) => boxesOf(s, raw))]);
  const px = Math.min((options.fit_px ?? 150) / (b.x1 - b.x0 + 0.5), (options.height_px ?? 64) / (b.y1 - b.y0 + 0.5));
  const over = 7 / px;
  const frame = shifted(raw, over - b.x0, over - b.y0);
  const onto = ontoSheet(frame);
  const [w, h] = [b.x1 - b.x0 + 2 * over, b.y1 - b.y0 + 2 * over];
  const sheet: Sheet = { rig, net: { frames: [frame], blocks: [], bounds: b }, px, type: 12 / px, s: 10 / px, heavy: true, numbers: false, bounds: { x0: 0, y0: 0, x1: w, y1: h } };
  const at = anchorOf(sheet, { at: 'station', station: station.id, side })?.at ?? [w / 2, h / 2];
  const shape = faceOf(rig, station.face);
  const boxes = inDrawingOrder(rig.stations.filter((s) => s.face === station.face && !s.retired && isLandmark(s))).map((s) => {
    const k = boundsOn(frame, shapePoints(s.shape));
    return s.shape.form === 'circle' ? p.disc('opening', (k.x0 + k.x1) / 2, (k.y0 + k.y1) / 2, (k.x1 - k.x0) / 2) : p.box('opening', k.x0, k.y0, k.x1 - k.x0, k.y1 - k.y0, 0.06);
  });
  return {
    width: w,
    height: h,
    title: `Where it is: ${faceWords(rig, station.face, side)}, ${station.name}`,
    px,
    primitives: [
      ...(shape ? [penOn(onto).poly('face', outline, isWall(station.face) ? 0.16 : 0.05)] : []),
      ...boxes,
      p.line('hairline', [0, at[1]], [w, at[1]]),
      p.line('hairline', [at[0], 0], [at[0], h]),
      p.disc('here', at[0], at[1], 5.5 / px),
    ],
  };
};
