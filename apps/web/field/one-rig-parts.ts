import { part } from '../shared/part';

/** The larger screens of one rig, each loaded when it is first wanted. */
export const PlanScreen = part(() => import('./work/plan-screen'));
export const JobCard = part(() => import('./work/job-card'));
export const WaterScreens = part(() => import('./water/water-screens'));
