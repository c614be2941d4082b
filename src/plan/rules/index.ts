import type { Rule } from '../rule';
import { accidentDamageRule } from './accident-damage';
import { insideSignsRule } from './inside-signs';
import { outOfTheOrdinaryRule } from './out-of-the-ordinary';
import { roofSoftSpotRule } from './roof-soft-spot';
import { sealGradeRule } from './seal-grade';
import { skinConditionRule } from './skin-condition';
import { stepRule } from './step';
import { sunDamageRule } from './sun-damage';
import { tradeDefectRule } from './trade-defect';
import { tyreDateCodeRule } from './tyre-date-code';
import { tyrePressureRule } from './tyre-pressure';
import { tyreSidewallRule } from './tyre-sidewall';
import { tyreTreadRule } from './tyre-tread';

/** Every rule, one a file. Adding a judgement is one file and one line here. */
export const rules: readonly Rule[] = [
  sealGradeRule,
  tyrePressureRule,
  tyreSidewallRule,
  tyreTreadRule,
  tyreDateCodeRule,
  stepRule,
  skinConditionRule,
  roofSoftSpotRule,
  insideSignsRule,
  sunDamageRule,
  accidentDamageRule,
  outOfTheOrdinaryRule,
  tradeDefectRule,
];
