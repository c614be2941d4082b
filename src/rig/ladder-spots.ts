/** A stretch of wall that a person on a ladder must be able to reach, in the wall's own coordinate. [m] */
export type Stretch = {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Must be seen whole from one place: an opening. A seam may be seen piece by piece. */
  readonly whole: boolean;
};

export type LadderSpot = { /** Where the ladder stands. [m] */ readonly at: number; readonly ids: readonly string[] };

const SLACK = 1e-9;

/** What still has to be seen: the last place that will do for it, and what a place takes off it. */
type Need = { readonly id: string; readonly latest: number; readonly after: (at: number) => Need | undefined };

const opening = ({ id, from, to }: Stretch, arm: number): Need => {
  const need: Need = { id, latest: from + arm, after: (at) => (at >= to - arm - SLACK && at <= from + arm + SLACK ? undefined : need) };
  return need;
};

const seam = (id: string, from: number, to: number, arm: number): Need => ({
  id,
  latest: from + arm,
  after: (at) => {
    if (at - arm > from + SLACK || at + arm <= from) return seam(id, from, to, arm);
    return at + arm >= to - SLACK ? undefined : seam(id, at + arm, to, arm);
  },
});

/**
 * The fewest places for a ladder along one wall from which everything on it can be reached.
 *
 * An opening from a to b is reached whole by a ladder that stands anywhere from b − arm to a + arm; a seam is reached piece
 * by piece. Each ladder is set at the last place that still does for what runs out first, which gives the least number.
 *
 * @param arm     reach to each side; an opening wider than both arms is seen piece by piece, like a seam. [m]
 * @returns       places in growing order, each with what is reached from it, wholly or in part
 * @agrees        with trying every set of places on a fine grid, for up to five stretches (checked)
 * @source        greedy covering by latest place; from memory, unconfirmed, and checked by exhaustion
 */
export const ladderSpots = (stretches: readonly Stretch[], arm: number): readonly LadderSpot[] => {
  let needs = stretches.map((s) => (s.whole && s.to - s.from <= 2 * arm ? opening(s, arm) : seam(s.id, s.from, s.to, arm)));
  const spots: LadderSpot[] = [];
  while (needs.length > 0) {
    const at = Math.min(...needs.map((n) => n.latest));
    const left = needs.map((n) => [n, n.after(at)] as const);
    spots.push({ at, ids: left.filter(([before, after]) => before !== after && (after === undefined || after.latest > before.latest)).map(([n]) => n.id) });
    needs = left.flatMap(([, after]) => after ?? []);
  }
  return spots;
};
