import { describe, expect, it } from 'vitest';
import { bandOf, TRADE_BANDS } from '../src/plan/water/bands';
import { readRows } from './agreement';

/**
 * Cases whose quantity is judged by the plan, not worked out by a worksheet: the bands of the leisure-vehicle trade for
 * a pin meter, as printed on several workshop pages. Each band must come out as its own answer, exactly.
 */
describe('trade bands of a pin meter', () => {
  const cases = readRows('checks/cases/pin-meter-band.jsonl');
  it('are all five cases', () => expect(cases).toHaveLength(5));
  it.each(cases.map((c) => [c.id, c] as const))('%s', (_id, c) => {
    const inputs = c.inputs as { readonly meter_reading_pct: number };
    expect(bandOf(TRADE_BANDS, inputs.meter_reading_pct / 100).word).toBe((c.expected as { readonly band: string }).band);
  });
});
