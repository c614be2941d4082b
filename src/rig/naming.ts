import type { FaceId } from '../terms';
import type { Piece } from './base-layout';
import { slideName } from './faces';
import type { Folded } from './folding';
import { partOf } from './parts';
import type { Axle } from './rig';
import { box } from './shapes';

/** Where a station is, as its name says it. Roof, underside and tongue parts tell it by their own noun. */
const WHERE: Readonly<Record<string, string>> = { curb: 'curb side', road: 'road side', front: 'front', rear: 'rear', step: 'lower front wall', roof: '', under: '', tongue: '' };
const SLIDE_WALL: Readonly<Record<string, string>> = { outer: 'outer wall', front: 'front end', rear: 'rear end', top: 'roof' };

export const whereWords = (face: FaceId): string => {
  const [slide = '', wall = ''] = face.split('-');
  return WHERE[face] ?? `${slideName(slide).toLowerCase()}, ${SLIDE_WALL[wall] ?? wall}`;
};

const PLURAL: Readonly<Record<string, string>> = { 'Rack foot': 'Rack feet', 'Lifter post': 'Lifter posts', 'Roof latch': 'Roof latches' };
const plural = (noun: string): string => PLURAL[noun] ?? `${noun}s`;

/** The way a person walks past a face: curb side rearward, rear towards the road side, road side forward, front towards the curb side. */
export const alongWalk = (face: FaceId, x: number): number => (face === 'road' || face === 'rear' ? -x : x);

const SLIDE_WORDS: Readonly<Record<string, string>> = {
  'slide-flange': 'flange',
  'slide-wiper-seal': 'seals',
  'slide-corner-moulding': 'box edges',
  'slide-roof-edge': 'roof edges',
  'slide-topper-rail': 'topper rail',
  'slide-topper-bracket': 'topper brackets',
  'slide-gear': 'mechanism',
};

const ENDS: Readonly<Record<string, string>> = { front: ' front', rear: ' rear', cab: ', behind the cab', step: ', at the step', wing: ', at the wing' };

/** Front, middle or rear axle; nothing where there is only one. */
export const axleWords = (axles: readonly Axle[], id: string): string => {
  const own = axles.filter((a) => !a.host_vehicle).toSorted((a, b) => a.x_m - b.x_m);
  const at = own.findIndex((a) => a.id === id);
  if (own.length < 2 || at < 0) return '';
  if (own[at]?.kind === 'tag') return 'tag axle';
  const last = own.filter((a) => a.kind !== 'tag').length - 1;
  return at === 0 ? 'front axle' : at === last ? 'rear axle' : 'middle axle';
};

const tyreName = (piece: Piece, axles: readonly Axle[]): string => {
  const side = piece.id.includes('road') ? 'road side' : 'curb side';
  return ['Tyre', side, axleWords(axles, piece.axle ?? ''), piece.dual ?? ''].filter((w) => w !== '').join(', ');
};

type Wording = { readonly fixed: string } | { readonly noun: string; readonly where: string };

const wording = ({ host, alike }: Folded, axles: readonly Axle[]): Wording => {
  if (host.part === 'tyre') return { fixed: tyreName(host, axles) };
  const words = SLIDE_WORDS[host.part];
  if (words && host.slide) return { fixed: `${slideName(host.slide)}, ${words}` };
  if (host.part === 'landing-gear' || host.part === 'frame-below') return { fixed: alike ? plural(partOf(host.part).noun) : partOf(host.part).noun };
  const noun = alike ? plural(partOf(host.part).noun) : partOf(host.part).noun;
  if (host.part === 'corner-moulding' && host.end) return { fixed: `${noun}, ${whereWords(host.face)}${ENDS[host.end] ?? `, ${host.end}`}` };
  return { noun, where: whereWords(host.face) };
};

/** `Rear ladder` needs no `, rear`. */
const joined = (noun: string, where: string): string => (where === '' || noun.toLowerCase().startsWith(where) ? noun : `${noun}, ${where}`);

const ACROSS = new Set(['front', 'rear', 'step']);

/** A name for every station: alike ones on one face are told apart by side where there is one on each, by number in walking order otherwise. */
export const namesOf = (stations: readonly Folded[], axles: readonly Axle[], width: number): ReadonlyMap<string, string> => {
  const names = new Map<string, string>();
  const alike = new Map<string, Folded[]>();
  for (const s of stations) {
    const w = wording(s, axles);
    const key = 'fixed' in w ? w.fixed : joined(w.noun, w.where);
    alike.set(key, [...(alike.get(key) ?? []), s]);
  }
  const middle = (s: Folded): number => (box(s.host.shape).x0 + box(s.host.shape).x1) / 2;
  for (const [key, group] of alike) {
    const first = group[0];
    if (!first || group.length === 1) {
      for (const s of group) names.set(s.host.id, key);
      continue;
    }
    const face = first.host.face;
    const w = wording(first, axles);
    const [noun, where] = 'fixed' in w ? [w.fixed, ''] : [w.noun, w.where];
    const inOrder = group.toSorted((a, b) => alongWalk(face, middle(a)) - alongWalk(face, middle(b)) || box(a.host.shape).y0 - box(b.host.shape).y0);
    const halves = new Set(group.map((s) => middle(s) < width / 2));
    const pair = group.length === 2 && ((ACROSS.has(face) && halves.size === 2) || (face === 'under' && first.alike));
    for (const [i, s] of inOrder.entries()) {
      const side = face === 'under' ? (i === 0 ? 'front' : 'rear') : middle(s) < width / 2 ? 'road side' : 'curb side';
      names.set(s.host.id, pair ? `${joined(noun, where)}, ${side}` : joined(`${noun} ${i + 1}`, where));
    }
  }
  return names;
};
