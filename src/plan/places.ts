import { type FacePoint, type Place, placeKey } from '../terms';

/**
 * Places as the plan sees them. What is judged together is one station, or one side of one face for points and outlines:
 * a bubble is drawn anew at every round, and its outlines belong together when they overlap.
 */
export const sceneOf = (place: Place): string => {
  switch (place.at) {
    case 'rig':
      return 'rig';
    case 'station':
    case 'stretch':
      return place.station;
    case 'point':
    case 'outline':
      return `face:${place.face}@${place.side}`;
  }
};

/** The place inside a finding's id: short, because the entry that raised it says exactly where. */
export const placeName = (place: Place): string => (place.at === 'rig' ? 'rig' : 'station' in place ? `${place.station}@${place.side}` : `face:${place.face}@${place.side}`);

/** The scene named by the place inside a finding's id. */
export const sceneOfName = (name: string): string => (name.startsWith('face:') || name === 'rig' ? name : name.slice(0, Math.max(0, name.lastIndexOf('@'))));

type Box = readonly [left: number, low: number, right: number, high: number];

/** Two hand-drawn places this near one another are one place: a hand's width (our choice). [m] */
const SAME = 0.1;

const boxOf = (points: readonly FacePoint[]): Box => {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
};

const meet = (a: Box, b: Box): boolean => a[0] <= b[2] + SAME && b[0] <= a[2] + SAME && a[1] <= b[3] + SAME && b[1] <= a[3] + SAME;

/** Gives each place the key of the thread it belongs to: the place itself, or an earlier outline on the same face that it overlaps. */
export const threads = (): ((place: Place) => string) => {
  const drawn: { key: string; side: string; boxes: Box[] }[] = [];
  return (place) => {
    if (place.at !== 'point' && place.at !== 'outline') return placeKey(place);
    const box = boxOf(place.at === 'point' ? [place.point_m] : place.outline_m);
    const known = drawn.find((d) => d.side === sceneOf(place) && d.boxes.some((b) => meet(b, box)));
    if (known) {
      known.boxes.push(box);
      return known.key;
    }
    const key = placeKey(place);
    drawn.push({ key, side: sceneOf(place), boxes: [box] });
    return key;
  };
};

/** Does a look at `seen` also tell about `place`: the same place, or a stretch of the seam that was looked at as a whole. */
export const covers = (seen: Place, place: Place): boolean => seen.at === 'station' && place.at === 'stretch' && seen.station === place.station && seen.side === place.side;
