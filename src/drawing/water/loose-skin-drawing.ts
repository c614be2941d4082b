import type { LooseSkin } from '../../plan';
import type { Rig } from '../../rig';
import type { FacePoint } from '../../terms';
import { type Preferences, showDay } from '../../units';
import { scaleBar } from '../dimension';
import { boundsOn } from '../frame';
import { US } from '../length-words';
import { penOn } from '../pen';
import type { Drawing, Primitive } from '../primitives';
import { faceWords } from '../spoken';
import { hatchOver } from './bands';
import { faceEdges, type MapView, mapView, onView, sheetPen as p } from './map-view';
import { partsOf } from './wall-parts';

export type LooseSkinOptions = { readonly preferences?: Preferences; readonly fit_px?: number; readonly type_px?: number };

/** The newest outline with its day above it; older ones dashed, their days below. */
const outlinesOf = (skin: LooseSkin, view: MapView): readonly Primitive[] => {
  const pen = penOn(view.onto);
  const size = view.type * 0.92;
  const newest = skin.outlines.at(-1);
  if (!newest) return [];
  const older = skin.outlines.slice(0, -1);
  const b = boundsOn(view.frame, newest.outline_m);
  const low = Math.max(b.y1, ...older.map((o) => boundsOn(view.frame, o.outline_m).y1));
  return [
    ...older.map((o) => pen.poly('fold', o.outline_m, 0.02)),
    pen.poly('wet-outline', newest.outline_m, 0.02),
    p.text('sounding-wet', b.x0, b.y0 - size * 0.5, showDay(newest.day, true), size),
    ...older.map((o, i) => p.text('sounding', b.x0, low + size * (1.3 + i * 1.2), `before: ${showDay(o.day, true)}`, size)),
  ];
};

/** Where the skin has let go: its outline through time on the face, what drums inside it, and what it lies near. */
export const looseSkinDrawing = (rig: Rig, skin: LooseSkin, options: LooseSkinOptions = {}): Drawing => {
  const { preferences = US, fit_px = 560, type_px = 12 } = options;
  const face = rig.faces.find((f) => f.id === skin.face);
  const title = `${rig.name}: loose skin, ${faceWords(rig, skin.face, skin.side)}`;
  const hull = skin.taps?.hull_m ?? [];
  const at: readonly FacePoint[] = skin.place.at === 'point' ? [skin.place.point_m] : [];
  const points = [...skin.outlines.flatMap((o) => o.outline_m), ...hull, ...at];
  if (!face || points.length === 0) return { width: 1, height: 1, title, px: 1, primitives: [] };
  const view = mapView(rig, face, skin.side, points, { fit_px, type_px, zoom: 1, above_px: 2 * type_px, below_px: 3.6 * type_px });
  const newest = skin.outlines.at(-1);
  return {
    width: view.width,
    height: view.height,
    title,
    px: view.px,
    primitives: [
      ...partsOf(view),
      ...(newest ? hatchOver(view, newest.outline_m, []) : []),
      ...faceEdges(view),
      ...(hull.length >= 3 ? [penOn(view.onto).poly('way-possible', hull)] : []),
      ...outlinesOf(skin, view),
      ...(skin.outlines.length === 0 ? at.map((q) => p.disc('ring', onView(view, q)[0], onView(view, q)[1], 6 / view.px)) : []),
      ...scaleBar(
        view.area.x0,
        view.area.y1 + view.type * 1.4,
        Math.min(view.area.x1 - view.area.x0, preferences.system === 'us' ? 4 * 0.3048 : 1),
        preferences,
        view.px,
        view.type * 0.92,
      ),
    ],
  };
};
