import { box, type Face, pointInside, pointsOf, type Rig, slideName } from '../../../../src/rig';
import type { FacePoint, Side, Station } from '../../../../src/terms';
import { fromSi, type Preferences, readQuantity, show, unitOf, usualUnit } from '../../../../src/units';

/** One of the two directions in which a person measures on a wall: what it is called, and where the tape begins on the face's own axis. */
export type Tape = { readonly label: string; readonly from_m: number };
export type Tapes = readonly [across: Tape, up: Tape];

const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The first words of a face's axis: `from the front`, `from the road side`, `above ground`. */
const shortly = (axis: string): string =>
  upperFirst(
    axis
      .replace(/^across /, '')
      .split(/[;,]/, 1)[0]
      ?.replace(/ of the body$/, '') ?? axis,
  );

const floorOf = (rig: Pick<Rig, 'levels' | 'slides'>, face: Face): number => rig.slides.find((s) => s.id === face.slide)?.y_m ?? rig.levels.floor_m;

/**
 * How a person measures on this face: the face's own axes, except that within the rig a height is taken from the floor, for
 * nobody there can hold a tape to the ground. Where a room lies over the hitch, it is the lower floor.
 *
 * @assumes  lining and floor are as thin as a line: what is measured from the front wall inside is taken as measured from the front of the body
 */
export const tapesOf = (rig: Pick<Rig, 'levels' | 'slides' | 'faces'>, face: Face, side: Side): Tapes => {
  const upright = /^above ground/.test(face.y_axis);
  return [
    { label: shortly(face.x_axis), from_m: 0 },
    upright && side === 'inside'
      ? { label: rig.faces.some((f) => f.id === 'step') ? 'Up from the lower floor' : 'Up from the floor', from_m: floorOf(rig, face) }
      : { label: shortly(face.y_axis), from_m: 0 },
  ];
};

/** Coarse to fine, as a person goes from the whole wall to the edge of a wet place. */
export type Step = 'coarse' | 'middle' | 'fine';
export const STEPS: readonly Step[] = ['coarse', 'middle', 'fine'];

const INCH = 0.0254;
const STEP_M: Readonly<Record<Preferences['system'], Readonly<Record<Step, number>>>> = {
  us: { coarse: 12 * INCH, middle: 6 * INCH, fine: 3 * INCH },
  metric: { coarse: 0.3, middle: 0.15, fine: 0.075 },
};

export const stepM = (step: Step, { system }: Preferences): number => STEP_M[system][step];
export const stepWords = (step: Step, { system }: Preferences): string =>
  system === 'us' ? `${Math.round(STEP_M.us[step] / INCH)} in` : `${Number((STEP_M.metric[step] * 100).toFixed(1))} cm`;

const millimetre = (m: number): number => Math.round(m * 1000) / 1000;

/** The nearest crossing of the grid, which begins where the tapes begin. */
export const snapped = ([x, y]: FacePoint, step_m: number, [across, up]: Tapes): FacePoint => {
  const on = (value: number, from: number): number => millimetre(from + Math.round((value - from) / step_m) * step_m);
  return [on(x, across.from_m), on(y, up.from_m)];
};

const tapeUnit = (preferences: Preferences): string => (preferences.system === 'us' ? 'in' : usualUnit('length', preferences));
/** Feet only where the person writes them: a plain 36 off a tape is inches. */
const unitOfText = (text: string, preferences: Preferences): string => (preferences.system === 'us' && /ft|['′-]/.test(text) ? 'ft' : tapeUnit(preferences));

const words = (m: number, preferences: Preferences): string => show(millimetre(m), 'length', preferences);

/** `4 ft 0 in from the front, 3 ft 0 in up from the floor`. */
export const placeWords = ([x, y]: FacePoint, [across, up]: Tapes, preferences: Preferences): string =>
  `${words(x - across.from_m, preferences)} ${across.label.toLowerCase()}, ${words(y - up.from_m, preferences)} ${up.label.toLowerCase()}`;

/** The same for a narrow cell, a line for each tape: `4 ft 0 in`, `3 ft 0 in up`. */
export const shortWords = ([x, y]: FacePoint, [across, up]: Tapes, preferences: Preferences): readonly [string, string] => [
  words(x - across.from_m, preferences),
  `${words(y - up.from_m, preferences)}${/^(up|above)/i.test(up.label) ? ' up' : ''}`,
];

/** What stands in the two fields before anything is typed. */
export const typedOf = ([x, y]: FacePoint, [across, up]: Tapes, preferences: Preferences): readonly [string, string] => {
  const text = (m: number): string =>
    preferences.system === 'us' ? show(millimetre(m), 'length', preferences) : String(Number(fromSi(millimetre(m), 'length', tapeUnit(preferences)).toFixed(3)));
  return [text(x - across.from_m), text(y - up.from_m)];
};

/** Which unit stands beside the two fields. */
export const tapeSymbol = (preferences: Preferences): string => unitOf('length', tapeUnit(preferences)).symbol;

export type ReadPoint = { readonly ok: true; readonly point_m: FacePoint } | { readonly ok: false; readonly sentence: string };

/** A place from two lengths as they are read off a tape; nothing is moved or rounded but to the millimetre. */
export const readPoint = (texts: readonly [string, string], tapes: Tapes, preferences: Preferences): ReadPoint => {
  const read = texts.map((text, i) => ({ read: readQuantity(text, 'length', unitOfText(text, preferences)), tape: tapes[i] as Tape }));
  const wrong = read.find((r) => !r.read.ok);
  if (wrong && !wrong.read.ok) return { ok: false, sentence: `${wrong.tape.label}: ${wrong.read.refusals[0]?.sentence ?? 'this is not a length.'}` };
  const [x = 0, y = 0] = read.map(({ read: r, tape }) => (r.ok ? millimetre(r.value.si + tape.from_m) : 0));
  return { ok: true, point_m: [x, y] };
};

/** A lamp or a cable entry takes no room from the wall round it. [m] */
const SMALL_OPENING_M = 0.25;

const takesRoom = (station: Station): boolean => {
  if (station.retired || !station.cut_through || station.group !== 'opening' || station.shape.form === 'lines') return false;
  const b = box(station.shape);
  return Math.min(b.x1 - b.x0, b.y1 - b.y0) > SMALL_OPENING_M;
};

const EDGE_M = 0.001;

const inBox = ([x, y]: FacePoint, b: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number }): boolean =>
  x > b.x0 + EDGE_M && x < b.x1 - EDGE_M && y > b.y0 + EDGE_M && y < b.y1 - EDGE_M;

const holds = ({ shape }: Station, point: FacePoint): boolean => (shape.form === 'poly' ? pointInside(point, pointsOf(shape), -EDGE_M) : inBox(point, box(shape)));

/** Why nothing can be metered there; undefined where it can. */
export const notThere = (rig: Rig, face: Face, point: FacePoint): string | undefined => {
  if (!pointInside(point, face.outline_m)) return 'That is off this wall: choose a place within its outline.';
  const opening = rig.stations.find((s) => s.face === face.id && takesRoom(s) && holds(s, point));
  if (opening) return `That is in ${lower(opening.name)}: read the wall beside it.`;
  const slide = rig.slides.find((s) => s.face === face.id && inBox(point, { x0: s.x_m, y0: s.y_m, x1: s.x_m + s.w_m, y1: s.y_m + s.h_m }));
  return slide ? `That is in the opening of ${lower(slideName(slide.id))}: read the wall beside it.` : undefined;
};

const lower = (name: string): string => (/^[A-Z][a-z' -]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name);
