import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyFacts, applyLayout, applyRetire } from './describe';
import { ladderSpots, type Stretch } from './ladder-spots';
import { blankRig, type Rig, type RigKindId } from './rig';
import { layoutFrom } from './starting-layout';
import { walkingOrder } from './walking-order';

/**
 * The walk against what a round must never do: leave an opening out, name one twice, send a person up a roof. The fewest
 * ladder places are compared with trying every set of places on a 5 cm grid; no published table exists.
 */
const KINDS: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];

const rigOf = (kind: RigKindId): Rig => {
  const layout = layoutFrom({ kind, name: 'ours', skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
  if (!layout.ok) throw new Error(JSON.stringify(layout.refusals));
  return applyLayout(blankRig('r'), layout.value);
};
const rigs = new Map(KINDS.map((k) => [k, rigOf(k)] as const));
const rig = (kind: RigKindId): Rig => rigs.get(kind) ?? rigOf(kind);

describe('a full round', () => {
  it.each(KINDS)('%s: visits every station once, whatever is retired and whether the roof may be walked on', (kind) => {
    const ids = rig(kind).stations.map((s) => s.id);
    fc.assert(
      fc.property(fc.subarray(ids), fc.constantFrom('yes', 'no', 'unknown'), (retired, roof_walkable) => {
        const r = applyFacts(
          retired.reduce((x, id) => applyRetire(x, id), rig(kind)),
          { roof_walkable },
        );
        const walk = walkingOrder(r, { form: 'full', inside: [] }).map((s) => s.station);
        expect([...walk].toSorted()).toEqual(ids.filter((id) => !retired.includes(id)).toSorted());
      }),
      { numRuns: 15 },
    );
  });

  it.each(KINDS)('%s: from the ground first, then ladders, then the roof, then below', (kind) => {
    const groups = walkingOrder(rig(kind), { form: 'full', inside: [rig(kind).stations[5]?.id ?? ''] }).map((s) => s.group);
    const rank = (g: string): number => ['From the ground', 'Ladder spot', 'Not reachable', 'From below', 'Inside'].findIndex((w) => g.startsWith(w));
    expect(groups.map(rank)).toEqual(groups.map(rank).toSorted((a, b) => a - b));
    expect(groups.every((g) => rank(g) >= 0)).toBe(true);
    // One place to stand is never come back to.
    const changes = groups.filter((g, i) => g !== groups[i - 1]);
    expect(new Set(changes).size).toBe(changes.length);
  });

  it('goes on the roof only where its owner says that its maker allows it', () => {
    for (const answer of ['no', 'unknown'] as const) {
      const walk = walkingOrder(applyFacts(rig('travel-trailer'), { roof_walkable: answer }), { form: 'full', inside: [] });
      expect(walk.some((s) => s.group === 'On the roof')).toBe(false);
      expect(walk.find((s) => s.station === 'roof.ac-unit')?.group).toBe('Not reachable without stepping on the roof');
    }
    const walk = walkingOrder(applyFacts(rig('travel-trailer'), { roof_walkable: 'yes' }), { form: 'full', inside: [] });
    expect(walk.find((s) => s.station === 'roof.ac-unit')?.group).toBe('On the roof');
  });

  it('adds an inside stop where a reading is wanted, and keeps a partial round to its faces', () => {
    const r = rig('travel-trailer');
    const full = walkingOrder(r, { form: 'full', inside: ['curb.window-36x22'] });
    expect(full.filter((s) => s.station === 'curb.window-36x22').map((s) => s.side)).toEqual(['outside', 'inside']);
    const partial = walkingOrder(r, { form: 'partial', inside: [], faces: ['curb'] });
    expect(new Set(partial.map((s) => r.stations.find((x) => x.id === s.station)?.face))).toEqual(new Set(['curb']));
    expect(partial).toHaveLength(r.stations.filter((s) => s.face === 'curb').length);
  });
});

describe('a round before a trip', () => {
  it.each(KINDS)('%s: every tyre, step, door, hatch, jack, vent and lamp', (kind) => {
    const r = rig(kind);
    const walk = new Set(walkingOrder(r, { form: 'pre-trip', inside: [] }).map((s) => s.station));
    const needed =
      /^(tyre|entry-step|entry-door|baggage-door|.*-compartment|cord-hatch|power-inlet|awning-arm|slide-flange|roof-vent|stabiliser-jack|landing-gear|tongue-jack|a-frame|pin-box|tail-lamp|marker-lamp)/;
    for (const s of r.stations) if (needed.test(s.part)) expect(walk.has(s.id) || `${s.id} passed over`).toBe(true);
    expect(walk.size).toBeLessThan(r.stations.length);
  });
});

/** Fewest places by trying every set of up to five on a grid; whole openings and seams as in ladder-spots. */
const byTrying = (stretches: readonly Stretch[], arm: number, grid: readonly number[]): number => {
  const good = (spots: readonly number[]): boolean =>
    stretches.every((s) => {
      if (s.whole && s.to - s.from <= 2 * arm) return spots.some((p) => p - arm <= s.from + 1e-9 && p + arm >= s.to - 1e-9);
      let reached = s.from;
      for (const p of spots) if (p - arm <= reached + 1e-9) reached = Math.max(reached, p + arm);
      return reached >= s.to - 1e-9;
    });
  const some = (from: number, left: number, chosen: readonly number[]): boolean =>
    left === 0 ? good(chosen) : grid.some((p, i) => i >= from && some(i + 1, left - 1, [...chosen, p]));
  for (let n = 1; n <= 5; n++) if (some(0, n, [])) return n;
  return 6;
};

describe('ladder places', () => {
  it('are as few as can be', () => {
    const stretch = fc.record({ from: fc.integer({ min: 0, max: 24 }), size: fc.integer({ min: 1, max: 14 }), whole: fc.boolean() });
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 5 }), (list) => {
        const stretches = list.map((s, i) => ({ id: String(i), from: s.from / 8, to: (s.from + s.size) / 8, whole: s.whole }));
        const arm = 0.75;
        const spots = ladderSpots(stretches, arm);
        // Every best set can be moved so that each place stands one arm from the start or an arm-step from another: the eighths hold them all.
        const grid = Array.from({ length: 43 }, (_, i) => i / 8);
        expect(spots.length).toBe(byTrying(stretches, arm, grid));
        for (const s of stretches) expect(spots.some((p) => p.ids.includes(s.id))).toBe(true);
      }),
      { numRuns: 80 },
    );
  });
  it('an 8 m gutter takes six places at 0.75 m to each side', () => {
    expect(ladderSpots([{ id: 'rail', from: 0, to: 8, whole: false }], 0.75)).toHaveLength(6);
  });
});
