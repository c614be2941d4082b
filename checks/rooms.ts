/** The rooms from left to right. A room may look only at rooms to its left; `entries` and `logbook` are neighbours that never meet. */
export const ROOMS = ['units', 'terms', 'science', 'rig', 'worksheets', ['entries', 'logbook'], 'plan', 'drawing', 'report', 'adapters'] as const;

const flat = ROOMS.flat();

/** Rooms that `room` may not look at, with the reason. */
export const forbidden = (room: string): readonly string[] => {
  const place = ROOMS.findIndex((r) => r === room || (Array.isArray(r) && r.includes(room as never)));
  const neighboursAndRight = ROOMS.slice(place).flat();
  return neighboursAndRight.filter((r) => r !== room);
};

export const WHY =
  'rooms look only to their left: units ◄ terms ◄ science ◄ rig ◄ worksheets ◄ entries | logbook ◄ plan ◄ drawing ◄ report ◄ adapters ◄ apps; a noun that two rooms share belongs in terms';

export const PURE_ROOMS = flat.filter((room) => room !== 'adapters');

export const ALL_ROOMS = flat;
