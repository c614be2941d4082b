import { part } from '../../shared/part';

/** What draws more than a wall comes when it is first wanted. */
export const MapScreen = part(() => import('./map-screen'));
export const TrendScreen = part(() => import('./trend-screen'));
