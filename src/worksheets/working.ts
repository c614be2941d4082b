import type { Step } from '../terms';
import { figure, fromSi, type QuantityId, showIn } from '../units';

export const step = (what: string, formula: string, numbers: string, gives: string): Step => ({ what, formula, numbers, gives });

/** A bare figure in a unit, for a formula with numbers put in. */
export const put = (si: number, quantity: QuantityId, unit: string, decimals: number): string => figure(fromSi(si, quantity, unit), decimals);

/** A pressure as both kinds of gauge show it. */
export const gaugeWords = (pa: number): string => `${showIn(pa, 'gauge-pressure', 'kpa')} (${put(pa, 'gauge-pressure', 'psi', 1)} psi)`;
