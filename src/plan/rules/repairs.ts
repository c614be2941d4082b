/** Care that can put wet or soft structure right: washing, oiling and painting cannot. */
export const REPAIRS: ReadonlySet<string> = new Set(['resealed', 'rebedded', 'replaced', 'professional-work']);
