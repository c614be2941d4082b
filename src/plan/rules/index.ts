import type { Rule } from '../rule';
import { sealGradeRule } from './seal-grade';
import { tradeDefectRule } from './trade-defect';
import { tyrePressureRule } from './tyre-pressure';

/** Every rule, one a file. Adding a judgement is one file and one line here. */
export const rules: readonly Rule[] = [sealGradeRule, tyrePressureRule, tradeDefectRule];
