import type { FaceId } from '../terms';
import type { Preferences } from '../units';
import { dimension, scaleBar } from './dimension';
import { type Bounds, boundsOf, boundsOn, faceToSheet } from './frame';
import { bothLengths } from './length-words';
import { frameFor, hitchAhead } from './net';
import { shapePoints } from './parts';
import { flat, type Point } from './path';
import { penOn } from './pen';
import type { Primitive } from './primitives';
import { faceOf, type Sheet } from './sheet';
import { widthOf } from './type-width';

const p = penOn(flat);

const boundsFor = ({ rig, net }: Sheet, face: FaceId): Bounds | undefined => {
  const frame = frameFor(net, face);
  const f = faceOf(rig, face);
  return frame && f ? boundsOn(frame, f.outline_m) : undefined;
};

const groundOf = ({ net }: Sheet, face: FaceId): number | undefined => {
  const frame = frameFor(net, face);
  return frame && faceToSheet(frame, [0, 0])[1];
};

/** How far what stands outside the rear wall reaches: bumper, spare wheel. */
const rearReach = (sheet: Sheet): number => {
  const frame = frameFor(sheet.net, 'rear');
  const off = sheet.rig.stations.filter((s) => s.face === 'rear' && !s.retired).map((s) => (frame ? boundsOn(frame, shapePoints(s.shape)).x1 : 0));
  return Math.max(boundsFor(sheet, 'rear')?.x1 ?? 0, ...off);
};

/** Room between the two ends of a slide-out for its name and the line below it. */
export const slideNameWidth = (type: number): number => Math.max(widthOf('on the wall', type), widthOf('Slide-out 2', type, true)) + type * 0.8;

const blockNames = (sheet: Sheet): readonly Primitive[] =>
  sheet.net.blocks.flatMap(({ middle, slide }): readonly Primitive[] => {
    const { type, rig } = sheet;
    const [x, y] = [(middle.x0 + middle.x1) / 2, (middle.y0 + middle.y1) / 2];
    const title = rig.slides.length > 1 ? `Slide-out ${slide.id.replace(/\D+/g, '')}` : 'Slide-out';
    const lines = ['outer face', 'on the wall'];
    return [
      p.strokes('fold', [
        [
          [middle.x0, middle.y0],
          [middle.x1, middle.y0],
        ],
        [
          [middle.x0, middle.y1],
          [middle.x1, middle.y1],
        ],
      ]),
      p.text('text-bold', x, y - type * 0.9, title, type, 'middle'),
      ...lines.map((words, i) => p.text('text-small', x, y + type * (0.3 + i * 1.2), words, type * 0.92, 'middle')),
    ];
  });

/** Names of the faces, where no seam and no opening is. */
export const netNames = (sheet: Sheet): readonly Primitive[] => {
  const { type, rig } = sheet;
  const [roof, front, rear, step, road] = [boundsFor(sheet, 'roof'), boundsFor(sheet, 'front'), boundsFor(sheet, 'rear'), boundsFor(sheet, 'step'), boundsFor(sheet, 'road')];
  const [curbGround, roadGround] = [groundOf(sheet, 'curb'), groundOf(sheet, 'road')];
  const left = (road?.x0 ?? 0) - hitchAhead(rig);
  const over = (b: Bounds, words: string): Primitive => p.text('text-bold', b.x0, b.y0 - type * 0.6, words, type);
  return [
    ...(curbGround === undefined ? [] : [p.text('text-bold', left, curbGround - type * 0.9, 'Curb side', type)]),
    ...(roadGround === undefined ? [] : [p.text('text-bold', left, roadGround + type * 1.75, 'Road side', type)]),
    ...(roof ? [p.text('text-bold', roof.x0 + type * 1.6, roof.y0 + type * 2, 'Roof', type)] : []),
    ...(front ? [over(front, 'Front')] : []),
    // Under its face where it would run into the name beside it.
    ...(step
      ? [
          front && step.x0 + widthOf('Lower front', type, true) > front.x0 - type * 0.5
            ? p.text('text-bold', step.x0, step.y1 + type * 1.3, 'Lower front', type)
            : over(step, 'Lower front'),
        ]
      : []),
    ...(rear ? [p.text('text-bold', rearReach(sheet) + type * 1.5, (rear.y0 + rear.y1) / 2, 'Rear', type, 'middle', -90)] : []),
    ...blockNames(sheet),
  ];
};

/** Where level names stand, for marks to keep off. A letter's height above its line and the tail below it are those of the type. */
export const boxesOfNames = (names: readonly Primitive[]): readonly Bounds[] =>
  names.flatMap((t) => {
    if (t.form !== 'text' || t.rotate !== undefined) return [];
    const w = widthOf(t.text, t.size, t.ink === 'text-bold');
    const x0 = t.anchor === 'middle' ? t.x - w / 2 : t.anchor === 'end' ? t.x - w : t.x;
    return [{ x0, x1: x0 + w, y0: t.y - t.size * 0.75, y1: t.y + t.size * 0.2 }];
  });

/** Type at dimensions against that of names. */
const SMALL = 0.92;

const widthDimension = (sheet: Sheet, preferences: Preferences): readonly Primitive[] => {
  const rear = boundsFor(sheet, 'rear');
  if (!rear) return [];
  const x = rearReach(sheet) + sheet.type * 3;
  return dimension([x, rear.y0], [x, rear.y1], bothLengths(sheet.rig.overall.width_m, preferences), sheet.px, { size_px: sheet.type * sheet.px * SMALL });
};

/** Heights beside the road wall, width beside the rear, the scale under the ground. */
export const netDimensions = (sheet: Sheet, preferences: Preferences, scaleOnly = false): readonly Primitive[] => {
  const { rig, net, px, type } = sheet;
  const [frame, face] = [frameFor(net, 'road'), faceOf(rig, 'road')];
  if (!frame || !face) return [];
  const b = boundsOf(face.outline_m);
  const at = (x: number, y: number): Point => faceToSheet(frame, [x, y]);
  const x = b.x0 - hitchAhead(rig) - 0.45;
  const ground = at(0, 0)[1];
  const bar = ground + type * (hitchAhead(rig) > widthOf('Road side', type, true) + type ? 1.1 : 2.6);
  const size = { size_px: type * px * SMALL };
  const scale = [
    ...scaleBar(at(b.x0, 0)[0], bar, rig.overall.body_length_m, preferences, px, type * SMALL),
    ...(rig.overall_certainty === 'typical' ? [p.text('text-small', at(b.x1, 0)[0], bar + type * 3, 'Typical sizes: measure yours', type * SMALL, 'end')] : []),
  ];
  if (scaleOnly) return scale;
  return [
    ...dimension(at(x, b.y1), at(x, b.y0), bothLengths(b.y1 - b.y0, preferences), px, size),
    ...dimension(at(x, b.y0), at(x, 0), bothLengths(b.y0, preferences), px, { ...size, beside: true }),
    ...widthDimension(sheet, preferences),
    ...scale,
  ];
};

/** Room that names and dimensions need round the faces, before the sheet is cut. */
export const netMargins = (
  rig: Sheet['rig'],
  type: number,
  dimensions: boolean | 'scale',
  preferences: Preferences,
): { readonly left: number; readonly right: number; readonly above: number; readonly below: number } => {
  const skirt = Math.min(...(faceOf(rig, 'road')?.outline_m.map((q) => q[1]) ?? [0]));
  const words = widthOf(bothLengths(skirt, preferences), type * SMALL);
  return {
    left: hitchAhead(rig) + (dimensions === true ? 0.45 + words + type * 1.2 : 0.35),
    right: type * (dimensions === true ? 4.2 : 2.4),
    above: type * 2.1,
    below: type * (dimensions ? 6 : 2.6),
  };
};

export const undersideNames = (sheet: Sheet): readonly Primitive[] => {
  const { type } = sheet;
  const b = boundsFor(sheet, 'under');
  if (!b) return [];
  return [
    p.text('text-bold', b.x0, b.y0 - type * 0.7, 'Road side', type),
    p.text('text-bold', b.x0, b.y1 + type * 1.5, 'Curb side', type),
    p.text('text-small', b.x1, b.y1 + type * 1.5, 'Seen from below, nose to the left', type, 'end'),
  ];
};
