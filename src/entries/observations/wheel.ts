import type { Side, Station } from '../../terms';

/** A tyre by its place; each of two dual tyres, and the spare, is one. */
export const isWheel = (station: Station, side: Side): boolean => side === 'outside' && (station.group === 'wheel' || station.looks === 'tyre');
