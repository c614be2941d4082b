import type { Piece } from './base-layout';
import { box } from './shapes';

/**
 * Small fittings are looked at together with what they sit on, so that a round stays short: latches and locks with their
 * door, spouts with their gutter, brackets with their awning arm. Nothing is lost, each stays a part with a place of its
 * own. No opening cut through roof or wall is folded into another, except a window in a door's own leaf and the row of
 * small lamps on one face, which are looked at and lit together.
 */
export type Folded = { readonly host: Piece; readonly parts: readonly Piece[] /** The parts are more of the same: reflectors, jacks of one pair. */; readonly alike: boolean };

const IN_ITS_HOST = /^(compartment-latch|compartment-hinge|door-lock|door-hinge|entry-handle|cab-window|window-.*|ac-opening-gasket)$/;
const ARCH = /^(wheel-arch-trim|fender)$/;
const DOOR = /^(entry-door-.*|van-sliding-door|teardrop-door)$/;

const gap = (a: Piece, b: Piece): number => {
  const [p, q] = [box(a.shape), box(b.shape)];
  return Math.abs((p.x0 + p.x1) / 2 - (q.x0 + q.x1) / 2);
};

type Rule = { readonly part: RegExp; readonly host: (piece: Piece, other: Piece) => boolean; readonly alike?: true };

const sameFace = (a: Piece, b: Piece): boolean => a.face === b.face;

const RULES: readonly Rule[] = [
  { part: IN_ITS_HOST, host: (p, o) => p.within === o.id },
  { part: /^(entry-handle|door-holdback)$/, host: (p, o) => DOOR.test(o.part) && sameFace(p, o) },
  { part: /^gutter-spout$/, host: (p, o) => o.part === 'roof-edge-rail' && sameFace(p, o) },
  { part: /^awning-(upper|lower)-bracket$/, host: (p, o) => o.part === 'awning-arm' && sameFace(p, o) },
  { part: /^skirt-trim$/, host: (p, o) => ARCH.test(o.part) && sameFace(p, o) },
  { part: /^slide-bulb-seal$/, host: (p, o) => o.part === 'slide-wiper-seal' && o.slide === p.slide },
  { part: /^slide-(floor|roof)-edge$/, host: (p, o) => o.part === 'slide-corner-moulding' && o.slide === p.slide },
  { part: /^wall-skin$/, host: (p, o) => p.slide !== undefined && o.part === 'slide-corner-moulding' && o.slide === p.slide },
  { part: /^slide-topper-bracket$/, host: (p, o) => o.part === 'slide-topper-rail' && o.slide === p.slide },
  { part: /^ladder-roof-foot$/, host: (_, o) => o.part === 'ladder-standoff' },
  { part: /^spare-carrier$/, host: (p, o) => o.part === 'rear-bumper' && sameFace(p, o) },
  { part: /^tank-drain$/, host: (p, o) => o.part === 'sewer-outlet' && sameFace(p, o) },
  { part: /^(floor-penetration|underbelly-cover)$/, host: (_, o) => o.part === 'frame-below' },
  { part: /^id-lamp-bar$/, host: (p, o) => o.part === 'clearance-lamp' && sameFace(p, o), alike: true },
  { part: /^reflector$/, host: (p, o) => o.part === 'marker-lamp' && sameFace(p, o), alike: true },
  {
    part: /^(marker-lamp|clearance-lamp|reflector|roof-rack-foot|lifter-post|roof-latch|tie-down-bracket|wiper|stabiliser-jack|leveling-jack|landing-gear)$/,
    host: (p, o) => o.part === p.part && sameFace(p, o),
    alike: true,
  },
  { part: /^slide-gear$/, host: (p, o) => o.part === p.part && o.slide === p.slide, alike: true },
];

/** Each piece that stays a station, with what is folded into it. Hosts are the first of their kind and are never folded themselves. */
export const folded = (pieces: readonly Piece[]): readonly Folded[] => {
  const into = new Map<string, { host: string; alike: boolean }>();
  for (const rule of RULES)
    for (const piece of pieces) {
      if (into.has(piece.id) || !rule.part.test(piece.part)) continue;
      const hosts = pieces.filter((o) => o.id !== piece.id && !into.has(o.id) && rule.host(piece, o));
      const first = rule.alike ? hosts.find((o) => o.part !== piece.part || pieces.indexOf(o) < pieces.indexOf(piece)) : hosts.toSorted((a, b) => gap(piece, a) - gap(piece, b))[0];
      if (first) into.set(piece.id, { host: first.id, alike: rule.alike ?? false });
    }
  return pieces
    .filter((p) => !into.has(p.id))
    .map((host) => {
      const parts = pieces.filter((p) => into.get(p.id)?.host === host.id);
      return { host, parts, alike: parts.length > 0 && parts.every((p) => into.get(p.id)?.alike) };
    });
};
