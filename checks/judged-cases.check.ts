import { describe, expect, it } from 'vitest';
import type { woodMoisturePin } from '../src/entries';
import type { Standing } from '../src/logbook';
import type { Scene } from '../src/plan/rule';
import { moisturePinRule } from '../src/plan/rules/moisture-pin';
import { blankRig } from '../src/rig';
import type { BodyOf, Entry } from '../src/terms';
import { civilDay } from '../src/units';
import { readRows } from './agreement';

/**
 * Cases whose quantity is judged by the plan, not worked out by a worksheet: the bands of the leisure-vehicle trade for
 * a pin meter, as printed on several workshop pages. Each band must come out as its own answer, exactly.
 */
const BAND_OF_TITLE: Readonly<Record<string, string>> = {
  '': 'no concern',
  'Wood a little damp': 'note and re-check',
  'Wood damp': 'possible early ingress - look for evidence',
  'Wood wet': 'remedial work',
  'Wood wet through': 'structural damage likely - strip down',
};

const scene: Scene = { rig: blankRig('rig'), on: civilDay(20_000), station: undefined, through: () => [], ofRig: () => [] };

const bandOf = (percent: number): string => {
  const body: BodyOf<(typeof woodMoisturePin)['fields']> = { reading: { typed: String(percent), unit: 'percent', si: percent / 100 }, material: 'softwood' };
  const entry = { id: 'e' } as Entry;
  const seen: Standing = { entry, body, place: { at: 'rig' }, observed_at: '2024-10-04', day: civilDay(20_000) };
  return BAND_OF_TITLE[moisturePinRule.judge(seen, scene)[0]?.title ?? ''] ?? 'unknown title';
};

describe('trade bands of a pin meter', () => {
  const cases = readRows('checks/cases/pin-meter-band.jsonl');
  it('are all five cases', () => expect(cases).toHaveLength(5));
  it.each(cases.map((c) => [c.id, c] as const))('%s', (_id, c) => {
    const inputs = c.inputs as { readonly meter_reading_pct: number };
    expect(bandOf(inputs.meter_reading_pct)).toBe((c.expected as { readonly band: string }).band);
  });
});
