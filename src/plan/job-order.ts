import { byUrgency } from '../terms';
import type { Job } from './plan-types';

/** The most urgent first; a professional's before one's own, since a date must be made; then by place and name. */
export const byJobOrder = (a: Job, b: Job): number =>
  byUrgency(a.urgency, b.urgency) || Number(b.who === 'professional') - Number(a.who === 'professional') || text(a.station ?? '', b.station ?? '') || text(a.id, b.id);

const text = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
