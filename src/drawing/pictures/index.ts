import type { Drawing, Primitive } from '../primitives';
import { PICTURE_H, PICTURE_W, sealSteps } from './seal';
import { sidewallSteps } from './sidewall';

export { compass } from './compass';
export { type DateCodeOptions, dateCodePicture } from './date-code';
export { type LadderLook, ladderPicture } from './ladder';

/** Picture sets that a choice field may name, each with one picture for each of its steps. */
export const pictureSets: Readonly<Record<string, Readonly<Record<string, readonly Primitive[]>>>> = { seal: sealSteps, sidewall: sidewallSteps };

/** The picture of one step of a choice; undefined when the set or the step has none. */
export const choicePicture = (set: string, step: string, title = `${set} ${step}`): Drawing | undefined => {
  const primitives = pictureSets[set]?.[step];
  return primitives && { width: PICTURE_W, height: PICTURE_H, title, px: 1, primitives };
};

export type SealGrade = 'S0' | 'S1' | 'S2' | 'S3' | 'S4' | 'S5';

export const sealGradePicture = (grade: SealGrade, title: string = grade): Drawing => ({ width: PICTURE_W, height: PICTURE_H, title, px: 1, primitives: sealSteps[grade] ?? [] });
