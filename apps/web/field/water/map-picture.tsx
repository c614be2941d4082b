import { type KeyboardEvent, useEffect, useMemo } from 'react';
import type { Drawing, Primitive } from '../../../../src/drawing';
import { DrawingView } from '../../shared/drawing-view';
import { useSize } from './use-size';

type Props = {
  /** Laid out for a width, or so many times larger with type as it was. */
  readonly make: (fit_px: number, zoom: number) => Drawing;
  readonly closer: boolean;
  readonly name: string;
};

/** Close enough that readings six inches apart stand clear of each other. [CSS px to the metre] */
const CLOSE_PX = 260;
/** Larger by less than this is not worth moving about. */
const WORTH_IT = 1.15;
/** A step leaves some of what was seen in view. [of the frame] */
const STEP = 0.55;

const ARROWS: readonly (readonly [sign: string, name: string, key: string, right: number, down: number])[] = [
  ['←', 'Left', 'ArrowLeft', -1, 0],
  ['↑', 'Up', 'ArrowUp', 0, -1],
  ['↓', 'Down', 'ArrowDown', 0, 1],
  ['→', 'Right', 'ArrowRight', 1, 0],
];

/** The middle of what is wet, in shares of the sheet; the sheet's own where nothing is. */
const middleOf = ({ primitives, width, height }: Drawing): readonly [number, number] => {
  const wet = primitives.flatMap((p: Primitive) => (p.form === 'text' && p.ink === 'sounding-wet' ? [p] : []));
  const mean = (all: readonly number[], size: number): number => (all.length === 0 ? 0.5 : all.reduce((sum, v) => sum + v, 0) / all.length / size);
  return [
    mean(
      wet.map((p) => p.x),
      width,
    ),
    mean(
      wet.map((p) => p.y),
      height,
    ),
  ];
};

/** A map to be read in the hand: whole, or close enough for its figures, moved by large keys, by the keyboard or by a finger. */
export const MapPicture = ({ make, closer, name }: Props) => {
  const [box, { w }] = useSize();
  const whole = useMemo(() => make(w, 1), [make, w]);
  const times = CLOSE_PX / whole.px;
  const zoom = closer && times > WORTH_IT ? times : 1;
  const drawing = useMemo(() => (zoom === 1 ? whole : make(w, zoom)), [make, w, zoom, whole]);
  const width_px = drawing.width * drawing.px;
  useEffect(() => {
    const frame = box.current;
    if (!frame || zoom === 1) return;
    const [x, y] = middleOf(drawing);
    frame.scrollTo({ left: x * frame.scrollWidth - frame.clientWidth / 2, top: y * frame.scrollHeight - frame.clientHeight / 2 });
  }, [box, zoom, drawing]);
  const move = (right: number, down: number): void => {
    const frame = box.current;
    frame?.scrollBy({ left: right * STEP * frame.clientWidth, top: down * STEP * frame.clientHeight });
  };
  const press = (event: KeyboardEvent): void => {
    const arrow = ARROWS.find(([, , key]) => key === event.key);
    if (!arrow) return;
    event.preventDefault();
    move(arrow[3], arrow[4]);
  };
  return (
    <>
      <div
        className={`map-frame${zoom === 1 ? '' : ' moves'}`}
        ref={box}
        {...(zoom === 1 ? {} : { role: 'region', 'aria-label': `${name}: arrow keys move the map`, tabIndex: 0, onKeyDown: press })}
      >
        <div className="map-sheet" style={{ width: zoom === 1 ? '100%' : `${width_px}px` }}>
          <DrawingView drawing={drawing} />
        </div>
      </div>
      {zoom !== 1 && (
        <fieldset className="keys" aria-label="Move the map">
          {ARROWS.map(([sign, word, , right, down]) => (
            <button key={word} type="button" className="press" aria-label={word} onClick={() => move(right, down)}>
              {sign}
            </button>
          ))}
        </fieldset>
      )}
    </>
  );
};
