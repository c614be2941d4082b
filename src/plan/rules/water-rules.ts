import type { WaterRule } from '../water/water-rule';
import { delaminationRule } from './delamination';
import { condensationRule, weatherNotLeakRule } from './no-leak';
import { waterComingInRule } from './water-coming-in';
import { wetWallRule } from './wet-wall';

/** Every rule that judges the water of the whole rig, one a file; beside the rules that judge look by look. */
export const waterRules: readonly WaterRule[] = [waterComingInRule, wetWallRule, weatherNotLeakRule, condensationRule, delaminationRule];
