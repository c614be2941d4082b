import type { Shape, Station, StationPart } from '../terms';
import type { Piece } from './base-layout';
import { roofLooks, surfaceOn, wallLooks } from './covering';
import { roofOutline } from './faces';
import { type Folded, folded } from './folding';
import { namesOf } from './naming';
import { partOf } from './parts';
import type { Answers, Axle, Face, Levels, Slide } from './rig';
import { outlineLength, toMillimetre } from './shapes';
import { hardest, hingeOf, isReachedByItsStep, ownBead, reachOf, topOf } from './station-facts';

export type Drawn = {
  readonly answers: Pick<Answers, 'skin' | 'construction' | 'roof'>;
  readonly levels: Levels;
  readonly slides: readonly Slide[];
  readonly faces: readonly Face[];
  readonly axles: readonly Axle[];
  readonly width: number;
};

const looksOf = (part: string, drawn: Drawn): string => {
  const { looks } = partOf(part);
  if (looks === 'roof-field') return roofLooks(drawn.answers.roof);
  return looks === 'wall' ? wallLooks(drawn.answers.skin, drawn.answers.construction) : looks;
};

const partIn = (piece: Piece, host: Piece, drawn: Drawn): StationPart => ({
  id: piece.id,
  part: piece.part,
  name: partOf(piece.part).noun,
  looks: looksOf(piece.part, drawn),
  shape: piece.shape,
  ...(piece.face === host.face ? {} : { face: piece.face }),
});

/** Round the middle of a box, a share of its size. */
const inner = (shape: Shape, share: number): Shape => {
  if (shape.form !== 'circle' && shape.form !== 'rect') return shape;
  const [w, h] = [shape.w_m * share, shape.h_m * share];
  return { ...shape, x_m: toMillimetre(shape.x_m + (shape.w_m - w) / 2), y_m: toMillimetre(shape.y_m + (shape.h_m - h) / 2), w_m: toMillimetre(w), h_m: toMillimetre(h) };
};

/** What every wheel and every coupler has, and no layout draws: looked at with their host. */
const usualParts = (piece: Piece): readonly StationPart[] => {
  const at = (part: string, name: string, looks: string, shape: Shape): StationPart => ({ id: `${piece.id}.${part}`, part, name, looks, shape });
  if (piece.part === 'tyre' && piece.dual !== 'inner')
    return [at('wheel-fasteners', 'Wheel nuts', 'wheel-fastener', inner(piece.shape, 0.4)), at('hub', 'Hub', 'hub-bearing', inner(piece.shape, 0.2))];
  if (piece.part === 'a-frame')
    return [
      at('safety-chains', 'Safety chains', 'safety-chain', inner(piece.shape, 0.3)),
      at('breakaway-switch', 'Breakaway cable and switch', 'breakaway', inner(piece.shape, 0.2)),
      at('trailer-plug', 'Trailer plug', 'tow-plug', inner(piece.shape, 0.1)),
    ];
  return [];
};

const station = ({ host, parts, alike }: Folded, name: string, drawn: Drawn): Station => {
  const part = partOf(host.part);
  const all = [host, ...parts];
  const bead = part.bead === 'none' ? (parts.map((p) => partOf(p.part).bead).find((b) => b !== 'none' && b !== 'none-gasket') ?? 'none') : part.bead;
  const counted = alike ? all : [host];
  const hinge = hingeOf(host.part, host.face, host.hinge);
  return {
    id: host.id,
    name,
    part: host.part,
    group: part.group,
    looks: looksOf(host.part, drawn),
    face: host.face,
    shape: host.shape,
    size: 'typical',
    bead,
    bead_m: toMillimetre(all.reduce((sum, p) => sum + ownBead(p.part, p.shape, partOf(p.part).bead), 0)),
    outline_m: toMillimetre(counted.reduce((sum, p) => sum + outlineLength(p.shape), 0)),
    top_m: toMillimetre(Math.max(...all.map((p) => topOf(drawn, p.face, p.shape)))),
    reach: isReachedByItsStep(host.part)
      ? 'ground'
      : hardest(all.map((p) => reachOf(drawn, roofOutline(drawn.faces), { face: p.face, shape: p.shape, part: p.part, group: part.group }))),
    sealed_with: 'unknown',
    sealed_to: surfaceOn(host.face, drawn.answers.skin, drawn.answers.roof),
    last_sealed: 'unknown',
    behind: part.behind,
    cut_through: part.cut_through,
    parts: [...parts.map((p) => partIn(p, host, drawn)), ...usualParts(host)],
    ...(hinge === undefined ? {} : { hinge }),
    ...(host.slide === undefined ? {} : { slide: host.slide }),
    ...(host.axle === undefined ? {} : { axle: host.axle }),
    ...(host.off_wall ? { off_wall: true } : {}),
    ...(host.layer ? { layer: true } : {}),
    ...(host.within === undefined ? {} : { within: host.within }),
  };
};

const AREAS: readonly (readonly [face: RegExp, part: string])[] = [
  [/^(curb|road|front|rear|step)$|-outer$/, 'wall-skin'],
  [/^roof$/, 'roof-covering'],
  [/^under$/, 'frame-below'],
];

/** The skin of each face as a station of its own: bubbles, soft spots, stains belong there. */
export const areaPieces = (faces: readonly Face[]): readonly Piece[] =>
  faces.flatMap((face) =>
    AREAS.filter(([is]) => is.test(face.id)).map(
      ([, part]): Piece => ({
        id: `${face.id}.${part}`,
        part,
        face: face.id,
        shape: { form: 'poly', points_m: face.outline_m },
        ...(face.slide === undefined ? {} : { slide: face.slide }),
      }),
    ),
  );

/** Every piece as a station, small fittings folded into what they sit on. */
export const stationsOf = (pieces: readonly Piece[], drawn: Drawn): readonly Station[] => {
  const all = folded(pieces);
  const names = namesOf(all, drawn.axles, drawn.width);
  return all.map((f) => station(f, names.get(f.host.id) ?? f.host.id, drawn));
};
