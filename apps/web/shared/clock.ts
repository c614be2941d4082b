import { type CivilDay, dayOf } from '../../../src/units';

const two = (n: number): string => String(Math.floor(Math.abs(n))).padStart(2, '0');

/** This device's clock as an RFC 3339 instant with its offset, to the second. */
export const nowText = (at: Date = new Date()): string => {
  const offset = -at.getTimezoneOffset();
  const zone = `${offset < 0 ? '-' : '+'}${two(offset / 60)}:${two(offset % 60)}`;
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}T${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}${zone}`;
};

export const today = (at: Date = new Date()): CivilDay => dayOf(at.getFullYear(), at.getMonth() + 1, at.getDate());
