import { type MouseEvent, useEffect, useMemo, useState } from 'react';
import { type FaceOptions, faceDrawing, faceFrame, faceToSheet, NO_MARKS, type Primitive, sheetToFace } from '../../../../src/drawing';
import { type Face, pointInside, type Rig } from '../../../../src/rig';
import type { FacePoint, Side } from '../../../../src/terms';
import { InkShape, lookOf } from '../../shared/ink-shape';
import { useSettings } from '../../shared/settings';
import { useSize } from './use-size';
import type { Tapes } from './wall-measure';
import { viewOf } from './wall-view';

/** How a place stands on the drawing of a wall: read and judged, or still to be read. */
export type DotForm = 'wet' | 'damp' | 'dry' | 'reference' | 'read' | 'earlier' | 'to-read';
export type Dot = { readonly key: string; readonly point_m: FacePoint; readonly form: DotForm; readonly text: string };

type Props = {
  readonly rig: Rig;
  readonly face: Face;
  readonly side: Side;
  readonly dots: readonly Dot[];
  readonly point: FacePoint | undefined;
  readonly closer: boolean;
  readonly step_m: number;
  readonly tapes: Tapes;
  /** Where there is no room for it and the keys, the keys come first. */
  readonly away: boolean;
  /** A touch, on the face's own axes, not yet brought to the grid. */
  readonly touch: (point_m: FacePoint) => void;
};

const OPTIONS: FaceOptions = { fit_px: 358, dimensions: false, numbers: false, show: { findings: false, sound: false, not_seen: false } };

/** Grid crossings nearer together than this are a grey haze. [px] */
const CLEAR_PX = 9;
/**
 * One side of one face as a person before it sees it, with its openings, what was read there, and the place to read now.
 * A touch chooses the place; keys and typed lengths do the same, so that the drawing is never the only way.
 */
export const WallPicture = ({ rig, face, side, dots, point, closer, step_m, tapes, away, touch }: Props) => {
  const theme = useSettings().theme === 'night' ? 'night' : 'field';
  const [box, size] = useSize();
  const [last, setLast] = useState<FacePoint>();
  const drawing = useMemo(() => faceDrawing(rig, face.id, side, NO_MARKS, OPTIONS), [rig, face.id, side]);
  const frame = useMemo(() => faceFrame(rig, face.id, side, OPTIONS), [rig, face.id, side]);
  const at = point && faceToSheet(frame, point);
  useEffect(() => {
    if (point) setLast(point);
  }, [point]);
  const about = closer ? (point ?? last) : undefined;
  const view = viewOf({ w: drawing.width, h: drawing.height }, size, about && faceToSheet(frame, about));

  // Where a slide-out leaves the wall there is no wall to read.
  const slides = useMemo(() => rig.slides.filter((s) => s.face === face.id), [rig, face.id]);
  const gaps = slides
    .map(
      (s) =>
        `M${cornersOf(s)
          .map((c) => faceToSheet(frame, c).join(' '))
          .join('L')}Z`,
    )
    .join('');
  const grid = useMemo(() => {
    if (step_m / view.m_per_px < CLEAR_PX) return '';
    const xs = face.outline_m.map((p) => p[0]);
    const ys = face.outline_m.map((p) => p[1]);
    const first = (least: number, from: number): number => from + Math.ceil((least - from) / step_m - 1e-9) * step_m;
    let d = '';
    for (let x = first(Math.min(...xs), tapes[0].from_m); x <= Math.max(...xs) + 1e-9; x += step_m)
      for (let y = first(Math.min(...ys), tapes[1].from_m); y <= Math.max(...ys) + 1e-9; y += step_m) {
        if (!pointInside([x, y], face.outline_m) || slides.some((s) => isIn([x, y], s))) continue;
        const [sx, sy] = faceToSheet(frame, [x, y]);
        d += `M${sx.toFixed(3)} ${sy.toFixed(3)}h0`;
      }
    return d;
  }, [face, frame, slides, tapes, step_m, view.m_per_px]);

  const press = (event: MouseEvent<SVGSVGElement>): void => {
    const r = event.currentTarget.getBoundingClientRect();
    touch(sheetToFace(frame, [view.x + (event.clientX - r.left) * view.m_per_px, view.y + (event.clientY - r.top) * view.m_per_px]));
  };

  const figures = view.m_per_px < FIGURES_BELOW;
  const seen = ([x, y]: readonly [number, number]): readonly [number, number] => [(x - view.x) / view.m_per_px, (y - view.y) / view.m_per_px];
  const here = at && seen(at);
  return (
    <div className={`wall${away ? ' away' : ''}`} ref={box}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: arrow keys, typed lengths and the list choose the place as well */}
      <svg viewBox={`0 0 ${size.w} ${size.h}`} role="img" aria-label={`${drawing.title}, ${dots.length} places on it`} onClick={press}>
        <g transform={`scale(${1 / view.m_per_px}) translate(${-view.x} ${-view.y})`}>
          {drawing.primitives.map((p, i) => (
            <Plain key={p.form === 'group' ? p.id : `${p.form}${i}`} p={p} theme={theme} />
          ))}
          {grid !== '' && <path className="grid" d={grid} />}
          {gaps !== '' && <path className="gap" d={gaps} />}
        </g>
        {dots.map((d) => (
          <DotShape key={d.key} dot={d} at={seen(faceToSheet(frame, d.point_m))} figures={figures} />
        ))}
        {here && (
          <g className="here">
            <path d={`M0 ${here[1]}H${size.w}M${here[0]} 0V${size.h}`} />
            <circle cx={here[0]} cy={here[1]} r={9} />
          </g>
        )}
      </svg>
    </div>
  );
};

type Slide = Rig['slides'][number];

const isIn = ([x, y]: FacePoint, s: Slide): boolean => x >= s.x_m && x <= s.x_m + s.w_m && y >= s.y_m && y <= s.y_m + s.h_m;

const cornersOf = (s: Slide): readonly FacePoint[] => [
  [s.x_m, s.y_m],
  [s.x_m + s.w_m, s.y_m],
  [s.x_m + s.w_m, s.y_m + s.h_m],
  [s.x_m, s.y_m + s.h_m],
];

/** Farther out figures would lie over one another. [m/px] */
const FIGURES_BELOW = 0.0095;

const Plain = ({ p, theme }: { readonly p: Primitive; readonly theme: 'field' | 'night' }) =>
  p.form === 'group' ? (
    <g>
      {p.children.map((c, i) => (
        <Plain key={c.form === 'group' ? c.id : `${c.form}${i}`} p={c} theme={theme} />
      ))}
    </g>
  ) : (
    <InkShape p={p} look={lookOf(p.ink, theme)} />
  );

/** Wet is a filled drop, damp an empty one, a dry place to compare with a square, what is to be read a dotted ring: told by shape, never by colour. */
const DotShape = ({ dot, at: [x, y], figures }: { readonly dot: Dot; readonly at: readonly [number, number]; readonly figures: boolean }) => {
  const r = dot.form === 'earlier' ? 4 : 7;
  return (
    <g className={`dot ${dot.form}`} transform={`translate(${x} ${y})${figures || dot.form === 'to-read' ? '' : ' scale(0.7)'}`}>
      {dot.form === 'wet' || dot.form === 'damp' ? <path d={DROP} /> : dot.form === 'reference' ? <path d={`M${-r} ${-r}H${r}V${r}H${-r}Z`} /> : <circle r={r} />}
      {figures && dot.text !== '' && (
        <text x={r + 5} y={6}>
          {dot.text}
        </text>
      )}
    </g>
  );
};

const DROP = 'M0 -12C3.5 -6 7 -3 7 1A7 7 0 1 1 -7 1C-7 -3 -3.5 -6 0 -12Z';
