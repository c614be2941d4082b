import { readTyreSize } from '../science';
import { accept, type Result } from '../units';
import type { BaseAxle, BaseLayout, Piece } from './base-layout';
import type { Answers, Axle } from './rig';
import { box, rect, toMillimetre } from './shapes';
import type { Sizes } from './sizes';
import type { Stretch } from './stretch';

/** Distance of two axles of a group where the layout has only one: 0.84 to 0.91 m is usual on trailers; from memory, unconfirmed. [m] */
const SPACING_M = 0.86;
/** Tag axle behind the drive axle of a long motorhome; from memory, unconfirmed. [m] */
const TAG_M = 1.25;
/** Least room between two tyres in a row; ours. [m] */
const BETWEEN_TYRES_M = 0.1;
/** Least room between a tyre and the top of its arch; ours. [m] */
const OVER_TYRE_M = 0.05;
/** Gap between two tyres on one axle end; ours. [m] */
const BETWEEN_DUALS_M = 0.05;

const ARCHES = new Set(['wheel-arch-trim', 'fender']);

type Tyre = Pick<BaseAxle, 'tyre' | 'diameter' | 'width'>;

const tyreOf = (answers: Answers, own: Tyre): Result<Tyre> => {
  if (answers.tyre === undefined) return accept(own);
  const read = readTyreSize(answers.tyre);
  if (!read.ok) return { ok: false, refusals: read.refusals.map((r) => ({ ...r, path: 'tyre' })) };
  // An inch size does not tell its diameter: the layout's own is drawn until the person measures it.
  return accept({ tyre: answers.tyre.trim(), diameter: read.value.overall_diameter ?? own.diameter, width: read.value.section_width });
};

const axle = (of: BaseAxle, tyre: Tyre, id: string, x: number, kind = of.kind, dual = of.dual): Axle => ({
  id,
  x_m: toMillimetre(x),
  tyre: tyre.tyre,
  tyre_diameter_m: toMillimetre(tyre.diameter),
  tyre_width_m: toMillimetre(tyre.width),
  dual,
  kind,
  host_vehicle: of.host,
  outer_edge_m: of.edge,
});

/** Trailer axles stand as one group about a common middle; a motorhome's stand apart, with a tag axle behind the last. */
export const axlesFor = (base: BaseLayout, answers: Answers, sizes: Sizes, s: Stretch): Result<readonly Axle[]> => {
  const own = base.axles.filter((a) => !a.host);
  const first = own[0];
  const last = own.at(-1);
  if (!first || !last) return accept(base.axles.map((a) => axle(a, a, a.id, s.x(a.x))));
  const tyre = tyreOf(answers, first);
  if (!tyre.ok) return tyre;
  const room = tyre.value.diameter + BETWEEN_TYRES_M;
  if (first.kind !== 'trailer') {
    const kept = own.map((a) => axle(a, tyre.value, a.id, s.x(a.x)));
    return accept(sizes.axles > own.length ? [...kept, axle(last, tyre.value, 'T', s.x(last.x) + Math.max(TAG_M, room), 'tag', false)] : kept);
  }
  const middle = s.x((first.x + last.x) / 2);
  const spacing = Math.max(own.length > 1 ? last.x - first.x : SPACING_M, room);
  return accept(Array.from({ length: sizes.axles }, (_, i) => axle(first, tyre.value, `A${i + 1}`, middle + (i - (sizes.axles - 1) / 2) * spacing)));
};

const isRearMost = (axles: readonly Axle[], a: Axle): boolean => axles.at(-1) === a;

/** The arch over each axle or group of axles: as far ahead of the first tyre and behind the last as in the typical layout. */
export const archesOver = (pieces: readonly Piece[], basePieces: readonly Piece[], base: BaseLayout, axles: readonly Axle[]): readonly Piece[] =>
  pieces.map((piece) => {
    if (!ARCHES.has(piece.part)) return piece;
    const was = basePieces.find((p) => p.id === piece.id);
    if (!was) return piece;
    const before = box(was.shape);
    const covered = base.axles.filter((a) => a.x > before.x0 && a.x < before.x1);
    const ids = new Set(covered.map((a) => a.id));
    const trailer = covered.some((a) => a.kind === 'trailer');
    const now = axles.filter((a) => trailer || ids.has(a.id) || (a.kind === 'tag' && isRearMost(axles, a) && covered.some((c) => c.kind === 'drive')));
    const [first, last] = [now[0], now.at(-1)];
    const [firstWas, lastWas] = [covered[0], covered.at(-1)];
    if (!first || !last || !firstWas || !lastWas) return piece;
    const ahead = firstWas.x - firstWas.diameter / 2 - before.x0;
    const behind = before.x1 - lastWas.x - lastWas.diameter / 2;
    const x0 = first.x_m - first.tyre_diameter_m / 2 - ahead;
    const x1 = last.x_m + last.tyre_diameter_m / 2 + behind;
    const top = Math.max(before.y1, first.tyre_diameter_m + OVER_TYRE_M);
    return { ...piece, shape: rect(x0, before.y0, x1 - x0, top - before.y0) };
  });

/**
 * Tyres, both sides of every axle. The inner tyre of a dual stands under the rig, where it is looked at and gauged;
 * each tyre is a station of its own, because each has its own pressure and date code.
 */
export const tyres = (axles: readonly Axle[], width: number): readonly Piece[] =>
  axles
    .filter((a) => !a.host_vehicle)
    .flatMap((a) =>
      ['road', 'curb'].flatMap((face): readonly Piece[] => {
        const d = a.tyre_diameter_m;
        const outer: Piece = {
          id: `${face}.tyre.${a.id}`,
          part: 'tyre',
          face,
          shape: { form: 'circle', x_m: toMillimetre(a.x_m - d / 2), y_m: 0, w_m: d, h_m: d },
          off_wall: true,
          axle: a.id,
          ...(a.dual ? { dual: 'outer' } : {}),
        };
        if (!a.dual) return [outer];
        const inset = -a.outer_edge_m + a.tyre_width_m + BETWEEN_DUALS_M;
        const y = face === 'road' ? inset : width - inset - a.tyre_width_m;
        return [outer, { id: `under.tyre.${a.id}-${face}-inner`, part: 'tyre', face: 'under', shape: rect(a.x_m - d / 2, y, d, a.tyre_width_m), axle: a.id, dual: 'inner' }];
      }),
    );
