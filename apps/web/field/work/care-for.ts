import { kinds } from '../../../../src/entries';
import type { AnyKind } from '../../../../src/terms';

/** Which kind of care a remedy most likely ends in; the first that fits is offered, the others stand below it. */
const LIKELY: readonly (readonly [remedy: RegExp, kind: string])[] = [
  [/^(reseal|wall-top-bead|frp-crack|roof-metal-fix|corner-rebed|hatch-lid)/, 'resealed'],
  [/^(rebed|flange-refit|insert-new|glass-hold)/, 'rebedded'],
  [/^(tyre-set)/, 'pressure-set'],
  [/^(tyre-pro)/, 'tyre-fitted'],
  [/^(hinge-care|kingpin-grease|leg-care|coupler-fix|slide-service|slide-clean|step-fix|seal-care)/, 'lubricated'],
  [/^(filiform-stop)/, 'spot-painted'],
  [/(clean|wash|clear|care)/, 'cleaned'],
  [/(new|pro$|patch|lid|door|fix)/, 'replaced'],
];

/** Kinds that record work done; proof is seen later and is recorded apart. */
const WORK: readonly AnyKind[] = kinds.filter((k) => k.group === 'care' && k.id !== 'proof-seen');

/** The likely kind first, then every other. */
export const careFor = (remedy: string | undefined, professional: boolean): readonly AnyKind[] => {
  const wanted = professional ? 'professional-work' : LIKELY.find(([r]) => remedy !== undefined && r.test(remedy))?.[1];
  const first = WORK.find((k) => k.id === wanted);
  return first ? [first, ...WORK.filter((k) => k !== first)] : WORK;
};
