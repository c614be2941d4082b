import { part } from '../shared/part';

/** The larger screens of the hand, each loaded when it is first wanted. */
export const OneRig = part(() => import('./one-rig'));
export const NewRig = part(() => import('./new-rig/new-rig'));
