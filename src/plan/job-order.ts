import { byUrgency } from '../terms';
import type { Job } from './plan-types';

/** A job and how dangerous the worst of what it settles is; 0 is the most. */
export type Ranked = { readonly job: Job; readonly danger: number };

/** The most urgent first, of these the most dangerous; a professional's before one's own, since a date must be made; then by place and name. */
export const byJobOrder = (a: Ranked, b: Ranked): number => byUrgency(a.job.urgency, b.job.urgency) || a.danger - b.danger || byTrade(a.job, b.job);

const byTrade = (a: Job, b: Job): number => Number(b.who === 'professional') - Number(a.who === 'professional') || text(a.station ?? '', b.station ?? '') || text(a.id, b.id);

const text = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
