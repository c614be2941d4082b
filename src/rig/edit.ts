import type { FaceId, FacePoint, Shape, Station, StationId } from '../terms';
import { accept, type Refusal, type Result, refuse } from '../units';
import { surfaceOn } from './covering';
import { takesRoom } from './drawing-faults';
import { faceOf, roofOutline } from './faces';
import { whereWords } from './naming';
import { shapeInside } from './outline';
import { type Part, partNamed } from './parts';
import { placedAs } from './placing';
import type { Overall, Rig } from './rig';
import { box, movedBy, outlineLength, overlaps, rect, toMillimetre } from './shapes';
import { beadLength, hingeOf, reachOf, topOf } from './station-facts';

/**
 * What a person changes on the drawing: add, move, resize, rename, retire. Each gives the station as it would be, for a
 * description entry to keep, or says in one sentence why not. Nothing is changed here.
 */

const cm = (m: number): string => `${Math.round(m * 100) / 100} m`;

const none = (id: StationId): Refusal => ({
  code: 'no-such-station',
  path: 'station',
  expected: 'a station of this rig',
  received: id,
  sentence: 'This rig has no such station. It may have been named on another device: exchange the logbooks first.',
});

const found = (rig: Rig, id: StationId): Result<Station> => {
  const station = rig.stations.find((s) => s.id === id);
  return station ? accept(station) : refuse(none(id));
};

/** Off its face, or on top of something else. */
const misplaced = (rig: Rig, station: Station): readonly Refusal[] => {
  const face = faceOf(rig, station.face);
  const b = box(station.shape);
  if (!face) return [{ code: 'no-such-face', path: 'face', expected: 'a face of this rig', received: station.face, sentence: 'This rig has no such face.' }];
  if (!station.off_wall && !shapeInside(station.shape, face.outline_m)) {
    const xs = face.outline_m.map((p) => p[0]);
    const ys = face.outline_m.map((p) => p[1]);
    return [
      {
        code: 'off-face',
        path: 'shape',
        expected: `inside ${face.name.toLowerCase()}: ${cm(Math.min(...xs))} to ${cm(Math.max(...xs))} ${face.x_axis}, ${cm(Math.min(...ys))} to ${cm(Math.max(...ys))} ${face.y_axis}`,
        received: `${cm(b.x0)} to ${cm(b.x1)}, ${cm(b.y0)} to ${cm(b.y1)}`,
        sentence: `There ${station.name} would stand over the edge of the ${face.name.toLowerCase()}.`,
      },
    ];
  }
  if (!takesRoom(station)) return [];
  const other = rig.stations.find((s) => s.id !== station.id && s.face === station.face && takesRoom(s) && overlaps(box(s.shape), b));
  return other
    ? [
        {
          code: 'overlap',
          path: 'shape',
          expected: 'a free place',
          received: `over ${other.name}`,
          sentence: `There ${station.name} would lie over ${other.name}. Move that first, or choose another place.`,
        },
      ]
    : [];
};

/** Lengths, height and reach follow from where and how large a station is. */
const measured = (rig: Rig, station: Station): Station => ({
  ...station,
  bead_m: toMillimetre(beadLength(station.shape, station.bead)),
  outline_m: toMillimetre(outlineLength(station.shape)),
  top_m: toMillimetre(topOf(rig, station.face, station.shape)),
  reach: reachOf(rig, roofOutline(rig.faces), station),
});

const checked = (rig: Rig, station: Station): Result<Station> => {
  const refusals = misplaced(rig, station);
  return refusals.length > 0 ? refuse(...refusals) : accept(station);
};

/** The station with its lower corner at another point of its own face; its parts move with it. */
export const moveStation = (rig: Rig, id: StationId, to: FacePoint): Result<Station> => {
  const station = found(rig, id);
  if (!station.ok) return station;
  const s = station.value;
  const b = box(s.shape);
  return checked(rig, placedAs(rig, s, movedBy(s.shape, to[0] - b.x0, to[1] - b.y0)));
};

const LEAST_M = 0.01;
const MOST_M = 16;

const badSize = (path: string, m: number): readonly Refusal[] =>
  Number.isFinite(m) && m >= LEAST_M && m <= MOST_M
    ? []
    : [
        {
          code: 'size-outside',
          path,
          expected: `${LEAST_M} to ${MOST_M} m`,
          received: Number.isFinite(m) ? cm(m) : 'no number',
          sentence: `${path === 'w_m' ? 'The width' : 'The height'} must lie between 1 cm and ${MOST_M} m. Check the figure and the unit.`,
        },
      ];

/** The station with a measured outer size, its lower corner where it was. Seams are drawn as lines and have no width to type. */
export const resizeStation = (rig: Rig, id: StationId, w_m: number, h_m: number): Result<Station> => {
  const station = found(rig, id);
  if (!station.ok) return station;
  const bad = [...badSize('w_m', w_m), ...badSize('h_m', h_m)];
  if (bad.length > 0) return refuse(...bad);
  const { shape } = station.value;
  if (shape.form === 'lines' || shape.form === 'poly')
    return refuse({
      code: 'no-size',
      path: 'shape',
      expected: 'a rectangle or a circle',
      received: shape.form,
      sentence: `${station.value.name} follows the body and has no width and height of its own. Correct the body’s sizes instead.`,
    });
  return checked(rig, { ...placedAs(rig, station.value, { ...shape, w_m: toMillimetre(w_m), h_m: toMillimetre(h_m) }), size: 'confirmed' });
};

const LONGEST_NAME = 80;

export const renameStation = (rig: Rig, id: StationId, name: string): Result<Station> => {
  const station = found(rig, id);
  if (!station.ok) return station;
  const clean = name.trim().replace(/\s+/g, ' ');
  if (clean === '' || clean.length > LONGEST_NAME)
    return refuse({
      code: 'name-length',
      path: 'name',
      expected: `1 to ${LONGEST_NAME} characters`,
      received: `${clean.length}`,
      sentence: `Give a name of up to ${LONGEST_NAME} characters.`,
    });
  if (rig.stations.some((s) => s.id !== id && !s.retired && s.name === clean))
    return refuse({ code: 'name-taken', path: 'name', expected: 'a name that no other station has', received: clean, sentence: `Another station is already called ${clean}.` });
  return accept({ ...station.value, name: clean });
};

/** The station taken out of rounds. What was recorded at it stays. */
export const retireStation = (rig: Rig, id: StationId): Result<Station> => {
  const station = found(rig, id);
  return station.ok ? accept({ ...station.value, retired: true }) : station;
};

const belongs = (part: Part, face: FaceId): boolean => {
  const wall = /^(curb|road|front|rear|step)$|-(outer|front|rear)$/.test(face);
  if (part.face === 'wall' || /front|rear/.test(part.face)) return wall;
  return part.face.split(';').some((f) => f === face || (f === 'slide top' && face.endsWith('-top')));
};

/** Ids count on from those the rig has had, retired ones included, so that no id is ever used twice. */
const nextId = (rig: Rig, face: FaceId, part: string): StationId => {
  const taken = new Set(rig.stations.flatMap((s) => [s.id, ...s.parts.map((p) => p.id)]));
  for (let n = 1; ; n++) {
    const id = n === 1 ? `${face}.${part}` : `${face}.${part}.${n}`;
    if (!taken.has(id)) return id;
  }
};

/** `Skylight`, `Skylight 2`; beside `Window 1` and `Window 2`, `Window 3`. Names of retired stations are not given again. */
const nextName = (rig: Rig, noun: string, where: string): string => {
  const taken = new Set(rig.stations.map((s) => s.name));
  const name = (n: number): string => [n === 1 ? noun : `${noun} ${n}`, where].filter((w) => w !== '').join(', ');
  let n = 1;
  while (taken.has(name(n)) || rig.stations.some((s) => s.name.startsWith(`${noun} ${n}`) && s.name.endsWith(where))) n++;
  return name(n);
};

/**
 * A new station of a typical size, its middle at a point of a face.
 *
 * @param part  row of the parts table: `window-36x22`
 * @param at    middle of the part; of a seam, its start. [m]
 * @returns     the station, its size typical until measured; or why it cannot stand there
 */
export const addStation = (rig: Rig, part: string, face: FaceId, at: FacePoint): Result<Station> => {
  const row = partNamed(part);
  const on = faceOf(rig, face);
  if (!row || !on)
    return refuse({
      code: row ? 'no-such-face' : 'no-such-part',
      path: row ? 'face' : 'part',
      expected: row ? 'a face of this rig' : 'a part of the parts table',
      received: row ? face : part,
      sentence: row ? 'This rig has no such face.' : 'There is no such part.',
    });
  if (!belongs(row, face))
    return refuse({
      code: 'wrong-face',
      path: 'face',
      expected: row.face,
      received: on.name,
      sentence: `${row.noun} does not belong on the ${on.name.toLowerCase()}. It is a part of the ${row.face.replaceAll(';', ' or ')}.`,
    });
  const [w, h] = [row.w_m || 0.1, row.h_m || 0.1];
  const along = Math.max(...on.outline_m.map((p) => p[0])) - at[0];
  const shape: Shape =
    row.w_m > 0 && row.h_m > 0 ? rect(at[0] - w / 2, at[1] - h / 2, w, h) : { form: 'lines', lines_m: [[at, [toMillimetre(at[0] + Math.min(1, Math.max(0.1, along))), at[1]]]] };
  const hinge = hingeOf(part, face, undefined);
  const station: Station = {
    id: nextId(rig, face, part),
    name: nextName(rig, row.noun, whereWords(face)),
    part,
    group: row.group,
    looks: row.looks,
    face,
    shape,
    size: 'typical',
    bead: row.bead,
    bead_m: 0,
    outline_m: 0,
    top_m: 0,
    reach: 'ground',
    sealed_with: 'unknown',
    sealed_to: surfaceOn(face, rig.skin, rig.roof),
    last_sealed: 'unknown',
    behind: row.behind,
    cut_through: row.cut_through,
    parts: [],
    added: true,
    ...(hinge === undefined ? {} : { hinge }),
    ...(on.slide === undefined ? {} : { slide: on.slide }),
  };
  return checked(rig, measured(rig, station));
};

/** An overall size as the person measured it; kept in metres, refused when no rig has it. */
export const confirmSize = (size: keyof Overall, value_m: number): Result<{ readonly size: keyof Overall; readonly value_m: number }> =>
  Number.isFinite(value_m) && value_m >= 0 && value_m <= MOST_M && (value_m > 0 || size === 'hitch_ahead_m')
    ? accept({ size, value_m })
    : refuse({
        code: 'size-outside',
        path: size,
        expected: `more than 0, at most ${MOST_M} m`,
        received: Number.isFinite(value_m) ? cm(value_m) : 'no number',
        sentence: `No rig is ${Number.isFinite(value_m) ? cm(value_m) : 'without a number'} in this direction. Check the figure and the unit.`,
      });
