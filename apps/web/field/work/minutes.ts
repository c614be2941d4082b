const HOUR = 60;

const one = (minutes: number): string => {
  const h = Math.floor(minutes / HOUR);
  const rest = Math.round(minutes % HOUR);
  return h === 0 ? `${rest} min` : rest === 0 ? `${h} h` : `${h} h ${rest}`;
};

/** A range of working time: `30 to 90 min`, `1 h to 3 h`. [min] */
export const minutesWords = ([least, most]: readonly [number, number]): string => {
  if (least === most) return one(least);
  return most < HOUR * 2 ? `${least} to ${most} min` : `${one(least)} to ${one(most)}`;
};
