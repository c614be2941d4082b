import { describe, expect, it } from 'vitest';
import { measureAgreement, readRows } from './agreement';
import { agreements, agreementTable } from './agreements';
import { caseFiles, compareCase, toleranceOf } from './case-agreements';
import { caseRuns } from './case-runs';

/**
 * Every agreement with a published table or case, each within the limit that stands beside it and with no row left out.
 * How well it should agree, and where it does not, is the `remark` of each agreement.
 */
describe('agreement with what others published', () => {
  for (const agreement of agreements) {
    it(`${agreement.quantity}: ${agreement.rows} rows of ${agreement.table}`, () => {
      const measured = measureAgreement(agreement);
      expect(measured.rows, 'rows compared').toBe(agreement.rows);
      expect(measured.worst, `worst at ${measured.worst_at}`).toBeLessThanOrEqual(agreement.allowed.most * (1 + 1e-9));
      expect(measured.passes).toBe(true);
    });
  }

  it('compares every case that was copied, each through a run of its own quantity', () => {
    const files = caseFiles.flatMap(readRows);
    expect(files.filter((c) => caseRuns[String(c.quantity)] === undefined)).toEqual([]);
    expect(new Set(files.map((c) => c.id)).size).toBe(files.length);
    const used = new Set(files.map((c) => c.quantity));
    expect(Object.keys(caseRuns).filter((quantity) => !used.has(quantity))).toEqual([]);
  });

  it('prints one line for each agreement', () => {
    expect(agreementTable().split('\n')).toHaveLength(agreements.length + 2);
    expect(agreementTable()).not.toContain('**out**');
  });
});

describe('the measurer bites', () => {
  const first = agreements[0];
  if (first === undefined) throw new Error('no agreement');
  const rows = readRows(first.table);

  it('on a dropped row', () => expect(measureAgreement(first, rows.slice(1)).passes).toBe(false));
  it('on a row that is out', () => expect(measureAgreement(first, [{ ...rows[0], moisture_content_percent: '9.9' }, ...rows.slice(1)]).passes).toBe(false));
  it('on a refusal where a number is expected', () => expect(measureAgreement(first, [{ ...rows[0], temperature_f: '-40' }, ...rows.slice(1)]).passes).toBe(false));
  it('on a case whose quantity nobody runs', () =>
    expect(compareCase({ id: 'x', quantity: 'unheard of', inputs: {}, expected: { a: 1 }, tolerance: 'exact' })).toEqual([
      { label: 'x a', expected: 1, got: 'nothing', tolerance: 1e-9 },
    ]));

  it('reads tolerances as they are written', () => {
    expect(toleranceOf('±0.03 %', 'p', 1000)).toBeCloseTo(0.3, 12);
    expect(toleranceOf('volume ±0.5 %; packages exact', 'volume_mL', 2000)).toBeCloseTo(10, 12);
    expect(toleranceOf('volume ±0.5 %; packages exact', 'packages', 9)).toBeCloseTo(9e-9, 15);
    expect(toleranceOf('±5 lb (sidewall prints 2830)', 'max_load_lb', 2833)).toBe(5);
    expect(toleranceOf('±0.05 (estimate), ±0.005 (variance)', 'kriging_variance', 9)).toBe(0.005);
    expect(toleranceOf('±0.05 (estimate), ±0.005 (variance)', 'estimate', 593)).toBe(0.05);
    expect(toleranceOf('S exact; tau ±0.00001; p ±0.1 %', 'tau', 1)).toBe(0.00001);
    expect(() => toleranceOf('about right', 'p', 1)).toThrow();
  });
});
