import type { Rig } from '../rig';
import { beadSection } from '../science';
import type { Station } from '../terms';
import { fromSi, metres, show, showIn, toSi } from '../units';
import { work, worksheetById } from '../worksheets';
import type { Material } from './plan-types';
import type { Method } from './reseal-method';
import { familyFor, wordOf } from './sealant-choice';
import { isA } from './trade';

/**
 * What a job takes. Lengths are bead lengths by practice; packages come from the worksheets, with their usual allowance for waste,
 * and are rounded up for one visit: what is opened does not keep.
 */
type Need =
  | { readonly need: 'bead'; readonly section_mm2: number; readonly level: boolean }
  | { readonly need: 'tape'; readonly times: number }
  | { readonly need: 'strip'; readonly material: string; readonly words: string }
  | { readonly need: 'piece'; readonly material: string; readonly words: string }
  | { readonly need: 'cleaner' };

const MM2 = (shape: Parameters<typeof beadSection>[0], width_in: number, depth_in: number): number =>
  fromSi(beadSection(shape, metres(toSi(width_in, 'small-length', 'in')), metres(toSi(depth_in, 'small-length', 'in'))), 'area', 'mm2');

/** A cap of 1 × 1/4 in over a roof seam, a fillet of 5/16 in along a wall frame: sizes as laid, our choice. [mm²] */
const CAP = MM2('levelled-cap', 1, 0.25);
const FILLET = MM2('fillet', 0.3125, 0.3125);

const ROOF_BEAD: Need = { need: 'bead', section_mm2: CAP, level: true };
const WALL_BEAD: Need = { need: 'bead', section_mm2: FILLET, level: false };
const TAPE: Need = { need: 'tape', times: 1 };
const CLEANER: Need = { need: 'cleaner' };
const INSERT: Need = { need: 'strip', material: 'insert-strip', words: 'Vinyl insert of the same width' };

const NEEDS: Readonly<Record<string, readonly Need[]>> = {
  'reseal-roof-over': [ROOF_BEAD, CLEANER],
  'reseal-roof-strip': [ROOF_BEAD, CLEANER],
  'wall-top-bead': [WALL_BEAD, CLEANER],
  'flange-refit': [TAPE, ROOF_BEAD, CLEANER],
  'rebed-opening': [TAPE, WALL_BEAD, CLEANER],
  'corner-rebed': [{ need: 'tape', times: 2 }, WALL_BEAD, INSERT, CLEANER],
  'insert-new': [INSERT],
  'roof-patch': [{ need: 'piece', material: 'repair-tape', words: 'Faced repair tape' }, CLEANER],
  'box-roof': [{ need: 'piece', material: 'repair-tape', words: 'Faced repair tape' }, CLEANER],
  'gasket-soft': [{ need: 'strip', material: 'seal-strip', words: 'Closed-cell rubber strip' }, CLEANER],
  'seal-new': [{ need: 'strip', material: 'slide-seal', words: 'Slide seal of the same section' }],
  'ac-gasket': [{ need: 'piece', material: 'roof-gasket', words: 'Foam gasket for the roof air conditioner' }],
  'hatch-lid': [{ need: 'piece', material: 'hatch-lid', words: 'Lid or dome of the same size' }],
};

/** How much of one material a job takes, before packages are counted. */
export type Quantity = {
  readonly material: string;
  readonly words: string;
  readonly kind: Need['need'];
  readonly length_m: number;
  readonly section_mm2: number;
  readonly because: string;
  /** A family that may be laid here instead, where it is bought anyway. */
  readonly instead?: { readonly family: string; readonly because: string };
};

const RUBBER: ReadonlySet<Rig['roof']> = new Set(['epdm', 'tpo', 'pvc', 'coated', 'unknown']);

/** No petroleum-based cleaner, oil or conditioner on a rubber roof; a covering that nobody knows counts as one. */
export const NO_PETROLEUM = 'No petroleum-based cleaner, oil or conditioner on a rubber roof.';
export const isRubberRoof = (station: Station | undefined, rig: Rig): boolean =>
  station !== undefined && RUBBER.has(rig.roof) && (station.face === 'roof' || isA(station.looks, 'roof-edge') || isA(station.looks, 'cap-seam'));

/** What one job takes, by length. */
export const quantitiesOf = (remedy: string, station: Station | undefined, rig: Rig, bead_m: number | undefined, method: Method | undefined): readonly Quantity[] => {
  if (!station) return [];
  return (NEEDS[remedy] ?? []).flatMap((need): readonly Quantity[] => {
    const rest = { kind: need.need, section_mm2: 0 } as const;
    if (need.need === 'bead') {
      if (bead_m === undefined || bead_m <= 0) return [];
      const { family, because, instead } = familyFor(station, rig, need.level, method);
      return [{ ...rest, material: family, words: wordOf(family), length_m: bead_m, section_mm2: need.section_mm2, because, ...(instead ? { instead } : {}) }];
    }
    if (need.need === 'tape')
      return [{ ...rest, material: 'butyl-tape', words: wordOf('butyl-tape'), length_m: station.outline_m * need.times, because: 'Thicker than the gap under the flange.' }];
    if (need.need === 'cleaner')
      return [
        { ...rest, material: 'isopropyl-alcohol', words: 'Isopropyl alcohol, cloths', length_m: 0, because: isRubberRoof(station, rig) ? NO_PETROLEUM : 'For the last wipe.' },
      ];
    return [{ ...rest, material: need.material, words: need.words, length_m: need.need === 'strip' ? station.outline_m : 0, because: 'Measure the old one.' }];
  });
};

/** One package, and several. */
const PACKAGE = {
  cartridge: ['cartridge of 10.1 fl oz (299 mL)', 'cartridges of 10.1 fl oz (299 mL)'],
  roll: ['roll of 30 ft (9.1 m); read the label', 'rolls of 30 ft (9.1 m); read the label'],
  metre: ['metre', 'metres'],
  bottle: ['bottle', 'bottles'],
  piece: ['piece', 'pieces'],
} as const;

const inPackages = (packages: number, of: keyof typeof PACKAGE): Pick<Material, 'packages' | 'package_words'> => ({ packages, package_words: PACKAGE[of][packages === 1 ? 0 : 1] });

/** A length in both systems: a shopping list is read in the shop, whoever asked for the plan. */
const both = (m: number): string => `${show(m, 'length', { system: 'us', units: {} })} (${showIn(m, 'length', 'm')})`;

const sheet = (id: string) => {
  const found = worksheetById(id);
  if (!found) throw new Error(`no worksheet ${id}`);
  return found;
};
const PACKAGES = sheet('packages-needed');
const ROLLS = sheet('tape-rolls');

const counted = (result: ReturnType<typeof work>, key: string): number | undefined => {
  const n = result.ok ? result.value.outcome.result[key] : undefined;
  return typeof n === 'number' ? n : undefined;
};

const MM = 1000;
/** Lengths for a shopping list are told to the centimetre. */
const told = (m: number): number => Math.round(m * 100) / 100;

/**
 * The same family for all that one visit seals, as far as it goes: a bead that may as well be laid with what another job needs anyway
 * takes that, so that nothing is opened twice.
 */
export const onOneVisit = (quantities: readonly Quantity[]): readonly Quantity[] => {
  const needed = new Set(quantities.filter((q) => q.kind === 'bead' && q.instead === undefined).map((q) => q.material));
  return quantities.map((q) =>
    q.instead && needed.has(q.instead.family)
      ? { kind: q.kind, length_m: q.length_m, section_mm2: q.section_mm2, material: q.instead.family, words: wordOf(q.instead.family), because: q.instead.because }
      : q,
  );
};

/** Packages for what several jobs take together: rounded up once, for one visit. */
export const packed = (quantities: readonly Quantity[]): readonly Material[] => {
  const groups = new Map<string, Quantity[]>();
  for (const q of quantities) groups.set(q.material, [...(groups.get(q.material) ?? []), q]);
  return [...groups.values()].map(packGroup).sort((a, b) => (a.material < b.material ? -1 : 1));
};

const packGroup = (group: readonly Quantity[]): Material => {
  const [first] = group;
  if (!first) throw new Error('a group of quantities is never empty');
  const length = told(group.reduce((sum, q) => sum + q.length_m, 0));
  const base = { material: first.material, words: first.words };
  const reasons = [...new Set([...new Set(group.map((q) => q.because))].flatMap((because) => because.split(/(?<=\.) /)))].join(' ');
  if (first.kind === 'bead') {
    // Different sections of one material are laid end to end: their mean section over the whole length.
    const volume = group.reduce((sum, q) => sum + q.length_m * q.section_mm2, 0);
    const inputs = { section_mm2: Math.round((volume / group.reduce((sum, q) => sum + q.length_m, 0)) * MM) / MM, length_m: length };
    const packages = counted(work(PACKAGES, inputs), 'packages_count') ?? 1;
    return {
      ...base,
      ...inPackages(packages, 'cartridge'),
      length_m: length,
      because: `${both(length)} of bead, waste counted. ${reasons}`,
      worked: { worksheet: PACKAGES.id, inputs },
    };
  }
  if (first.kind === 'tape') {
    const inputs = { length_m: length };
    const packages = counted(work(ROLLS, inputs), 'rolls_count') ?? 1;
    return {
      ...base,
      ...inPackages(packages, 'roll'),
      length_m: length,
      because: `${both(length)} of edge, waste counted. ${reasons}`,
      worked: { worksheet: ROLLS.id, inputs },
    };
  }
  if (first.kind === 'strip') return { ...base, ...inPackages(Math.ceil(length), 'metre'), length_m: length, because: `${both(length)}. ${reasons}` };
  if (first.kind === 'cleaner') return { ...base, ...inPackages(1, 'bottle'), because: reasons };
  return { ...base, ...inPackages(group.length, 'piece'), because: reasons };
};
