import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bond, FAMILY_MOVEMENT, movementStanding, TOUCHED, whichSealant } from '.';

/**
 * The order is ours and there is nothing published to hold it against. Verdicts are those of the table of bonds; here: that the order keeps its
 * promises for any seam, and a handful of seams that the trade agrees on.
 */
const surfaces = TOUCHED.map((t) => t.id);
const seam = fc.tuple(fc.constantFrom(...surfaces), fc.constantFrom(...surfaces));
const stretch = fc.double({ min: 0, max: 1.2, noNaN: true });

describe('which sealant', () => {
  it('is never one that must not touch either side, as long as another may', () => {
    fc.assert(
      fc.property(seam, stretch, (sides, s) => {
        const found = whichSealant(sides, s);
        expect(found).toHaveLength(11);
        const bad = found.map((f) => f.verdict === 'no' || f.movement === 'too-little');
        // All that may be laid stands before all that may not.
        expect(bad.lastIndexOf(false)).toBeLessThan(bad.includes(true) ? bad.indexOf(true) : bad.length);
        for (const f of found) for (const side of sides) if (bond(f.family, side)?.verdict === 'no') expect(f.verdict).toBe('no');
      }),
    );
  });

  it('has fewer and fewer families that bear it, the more the seam moves', () => {
    const bearing = (s: number) => whichSealant(['fibreglass', 'fibreglass'], s).filter((f) => f.movement !== 'too-little').length;
    for (const [less, more] of [
      [0, 0.1],
      [0.1, 0.3],
      [0.3, 0.6],
    ] as const)
      expect(bearing(less)).toBeGreaterThan(bearing(more));
  });

  it('takes what the trade takes: lap sealant on rubber, neutral silicone or tape for a pane, nothing with solvent on plastic panes', () => {
    const first = (one: (typeof surfaces)[number], other = one) => whichSealant([one, other], 0).find((f) => f.family !== 'butyl-tape' && f.family !== 'repair-tape');
    expect(first('epdm')).toMatchObject({ family: 'lap-self-levelling', verdict: 'yes' });
    expect(first('polycarbonate', 'bare-aluminium')).toMatchObject({ family: 'silicone', verdict: 'yes' });
    expect(first('fibreglass', 'painted-aluminium')).toMatchObject({ family: 'polyurethane', verdict: 'yes' });
    const never = whichSealant(['acrylic', 'acrylic'], 0).filter((f) => f.verdict === 'no');
    expect(never.map((f) => f.family).sort()).toEqual(['acrylic', 'lap-non-sag', 'lap-self-levelling', 'polysulphide']);
  });

  it('says of each family what was printed of its movement, and no more', () => {
    expect(movementStanding('butyl-tape', 3)).toBe('flows');
    expect(movementStanding('lap-self-levelling', 0.05)).toBe('not-printed');
    expect(movementStanding('polyurethane', 0.25)).toBe('enough');
    expect(movementStanding('polyurethane', 0.3)).toBe('some-grades');
    expect(movementStanding('butyl-gun', 0.1)).toBe('too-little');
    for (const f of FAMILY_MOVEMENT) expect(f.low, f.family).toBeLessThanOrEqual(f.high);
  });
});
