import type { Side, Station } from '../../terms';

/** A tyre by its place. Inner and outer dual tyres are one station until the person parts them. */
export const isWheel = (station: Station, side: Side): boolean => side === 'outside' && (station.group === 'wheel' || station.looks === 'tyre');
