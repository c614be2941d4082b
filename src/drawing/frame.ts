import type { FaceId, FacePoint, Side } from '../terms';
import type { Onto, Point } from './path';

/**
 * How a face lies on a sheet: a turn or a mirroring and a shift, never a stretch, so that a metre stays a metre.
 * Sheet point = origin + x · along + y · across.
 */
export type Frame = { readonly face: FaceId; readonly side: Side; readonly origin: Point; readonly along: Point; readonly across: Point };

export const faceToSheet = ({ origin, along, across }: Frame, [x, y]: FacePoint): Point => [origin[0] + x * along[0] + y * across[0], origin[1] + x * along[1] + y * across[1]];

/** The way back. Axes are unit vectors at right angles, so their projections are the coordinates. */
export const sheetToFace = ({ origin, along, across }: Frame, [X, Y]: Point): FacePoint => {
  const [dx, dy] = [X - origin[0], Y - origin[1]];
  return [dx * along[0] + dy * along[1], dx * across[0] + dy * across[1]];
};

export const ontoSheet =
  (frame: Frame): Onto =>
  (x, y) =>
    faceToSheet(frame, [x, y]);

/** A frame moved on its sheet. */
export const shifted = (frame: Frame, dx: number, dy: number): Frame => ({ ...frame, origin: [frame.origin[0] + dx, frame.origin[1] + dy] });

export type Bounds = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

export const boundsOf = (points: readonly Point[]): Bounds => ({
  x0: Math.min(...points.map((p) => p[0])),
  y0: Math.min(...points.map((p) => p[1])),
  x1: Math.max(...points.map((p) => p[0])),
  y1: Math.max(...points.map((p) => p[1])),
});

export const around = (all: readonly Bounds[]): Bounds => ({
  x0: Math.min(...all.map((b) => b.x0)),
  y0: Math.min(...all.map((b) => b.y0)),
  x1: Math.max(...all.map((b) => b.x1)),
  y1: Math.max(...all.map((b) => b.y1)),
});

/** Where a face's outline comes to lie. */
export const boundsOn = (frame: Frame, outline: readonly FacePoint[]): Bounds => boundsOf(outline.map((p) => faceToSheet(frame, p)));
