/** How soon a finding must be settled. The list runs from the most to the least urgent. */
export const URGENCIES = ['do-not-use', 'before-moving', 'before-rain', 'this-season', 'watch'] as const;
export type Urgency = (typeof URGENCIES)[number];

/** What a place shows on the drawing: an urgency, or that it was sound when last seen, or that nobody has seen it. */
export const MARKS = [...URGENCIES, 'sound', 'not-seen'] as const;
export type Mark = (typeof MARKS)[number];

export const MARK_WORD: Readonly<Record<Mark, string>> = {
  'do-not-use': 'Do not use',
  'before-moving': 'Before moving',
  'before-rain': 'Before rain',
  'this-season': 'This season',
  watch: 'Watch',
  sound: 'Sound',
  'not-seen': 'Not seen',
};

export type Who = 'yourself' | 'professional';

const rank = (u: Urgency): number => URGENCIES.indexOf(u);

/** The earlier of two urgencies. */
export const sooner = (a: Urgency, b: Urgency): Urgency => (rank(a) <= rank(b) ? a : b);

/** Orders by urgency, the most urgent first. */
export const byUrgency = (a: Urgency, b: Urgency): number => rank(a) - rank(b);
