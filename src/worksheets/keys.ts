import type { Inputs } from '../terms';
import { quantities } from '../units';

/** A key as it was given, and the declared input it speaks of: `dry_bulb_f` is `dry_bulb_c` in another unit. */
export type Key = { readonly given: string; readonly declared: string; readonly unit: string };

/** Finds the input that a key means; undefined when this worksheet has none. */
export const keyOf = (inputs: Inputs, given: string): Key | undefined => {
  for (const [declared, input] of Object.entries(inputs)) {
    if (input.type !== 'number' && input.type !== 'numbers') {
      if (given === declared) return { given, declared, unit: '' };
      continue;
    }
    const stem = declared.slice(0, -input.unit.length);
    const unit = quantities[input.quantity].units.find((u) => given === `${stem}${u.id}`);
    if (unit !== undefined) return { given, declared, unit: unit.id };
  }
  return undefined;
};
