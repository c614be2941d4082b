import { SEALANTS, SURFACES } from '../entries';
import type { Rig } from '../rig';
import { beadSection } from '../science';
import type { Station } from '../terms';
import { fromSi, metres, showIn, toSi } from '../units';
import { work, worksheetById } from '../worksheets';
import type { Material } from './plan-types';
import type { Method } from './reseal-method';
import { bond, isA } from './trade';

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
};

const RUBBER: ReadonlySet<Rig['roof']> = new Set(['epdm', 'tpo', 'pvc', 'coated', 'unknown']);

/** No petroleum-based cleaner, oil or conditioner on a rubber roof; a covering that nobody knows counts as one. */
export const NO_PETROLEUM = 'No petroleum-based cleaner, oil or conditioner on a rubber roof.';
export const isRubberRoof = (station: Station | undefined, rig: Rig): boolean =>
  station !== undefined && RUBBER.has(rig.roof) && (station.face === 'roof' || isA(station.looks, 'roof-edge') || isA(station.looks, 'cap-seam'));

const ROOF_SURFACE: Readonly<Record<Rig['roof'], string>> = {
  epdm: 'epdm',
  tpo: 'tpo',
  pvc: 'pvc',
  coated: 'unknown',
  fibreglass: 'fibreglass',
  aluminium: 'painted-aluminium',
  'painted-steel': 'painted-steel',
  unknown: 'unknown',
};
const WALL_SURFACE: Readonly<Record<Rig['skin'], string>> = {
  fibreglass: 'fibreglass',
  'moulded-fibreglass': 'fibreglass',
  'corrugated-aluminium': 'painted-aluminium',
  'sheet-aluminium': 'painted-aluminium',
  'painted-steel': 'painted-steel',
  unknown: 'unknown',
};

const surfaceOf = (station: Station, rig: Rig): string =>
  station.sealed_to !== 'unknown' ? station.sealed_to : station.face === 'roof' ? ROOF_SURFACE[rig.roof] : WALL_SURFACE[rig.skin];

const RANK = { yes: 0, prep: 1, test: 2, no: 3 } as const;

/** The family to lay: the one that stays, where it may be laid over; else the best for the surface by the table. */
export const familyFor = (station: Station, rig: Rig, level: boolean, method: Method | undefined): { readonly family: string; readonly because: string } => {
  const surface = surfaceOf(station, rig);
  const flat = level && station.face === 'roof' && station.group === 'opening';
  const candidates = flat ? ['lap-self-levelling', 'lap-non-sag', 'hybrid'] : station.face === 'roof' ? ['lap-non-sag', 'hybrid'] : ['hybrid', 'lap-non-sag', 'polyurethane'];
  const stays = method?.way === 'over' && method.stays !== undefined && candidates.includes(method.stays) ? method.stays : undefined;
  const rank = (family: string): number => RANK[bond(family, surface)?.verdict ?? 'test'];
  const family = stays !== undefined && rank(stays) < RANK.no ? stays : ([...candidates].sort((a, b) => rank(a) - rank(b))[0] ?? 'hybrid');
  const verdict = bond(family, surface)?.verdict ?? 'test';
  const note = bond(family, surface)?.note;
  const name = SURFACES.find((f) => f.id === surface)?.word ?? surface;
  const words =
    surface === 'unknown'
      ? 'What it is laid on is not recorded: test patch first'
      : verdict === 'yes'
        ? `Goes with ${name}`
        : verdict === 'prep'
          ? `Needs preparation on ${name}`
          : `Test patch first on ${name}`;
  return { family, because: `${words}${note ? `: ${note}` : ''}.${stays === family ? ' The same family as what stays.' : ''}` };
};

const wordOf = (family: string): string => SEALANTS.find((s) => s.id === family)?.word ?? family;

/** What one job takes, by length. */
export const quantitiesOf = (remedy: string, station: Station | undefined, rig: Rig, bead_m: number | undefined, method: Method | undefined): readonly Quantity[] => {
  if (!station) return [];
  return (NEEDS[remedy] ?? []).flatMap((need): readonly Quantity[] => {
    const rest = { kind: need.need, section_mm2: 0 } as const;
    if (need.need === 'bead') {
      if (bead_m === undefined || bead_m <= 0) return [];
      const { family, because } = familyFor(station, rig, need.level, method);
      return [{ ...rest, material: family, words: wordOf(family), length_m: bead_m, section_mm2: need.section_mm2, because }];
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

const CARTRIDGE_WORDS = 'cartridge of 10.1 fl oz (299 mL)';
const ROLL_WORDS = 'roll of 30 ft (9.1 m); read the label';

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
  const reasons = [...new Set(group.map((q) => q.because))].join(' ');
  if (first.kind === 'bead') {
    // Different sections of one material are laid end to end: their mean section over the whole length.
    const volume = group.reduce((sum, q) => sum + q.length_m * q.section_mm2, 0);
    const inputs = { section_mm2: Math.round((volume / group.reduce((sum, q) => sum + q.length_m, 0)) * MM) / MM, length_m: length };
    const packages = counted(work(PACKAGES, inputs), 'packages_count') ?? 1;
    return {
      ...base,
      packages,
      package_words: CARTRIDGE_WORDS,
      because: `${showIn(length, 'length', 'm')} of bead, waste counted. ${reasons}`,
      worked: { worksheet: PACKAGES.id, inputs },
    };
  }
  if (first.kind === 'tape') {
    const inputs = { length_m: length };
    const packages = counted(work(ROLLS, inputs), 'rolls_count') ?? 1;
    return {
      ...base,
      packages,
      package_words: ROLL_WORDS,
      because: `${showIn(length, 'length', 'm')} of edge, waste counted. ${reasons}`,
      worked: { worksheet: ROLLS.id, inputs },
    };
  }
  if (first.kind === 'strip') return { ...base, packages: Math.ceil(length), package_words: 'metre', because: `${showIn(length, 'length', 'm')}. ${reasons}` };
  if (first.kind === 'cleaner') return { ...base, packages: 1, package_words: 'bottle', because: reasons };
  return { ...base, packages: group.length, package_words: 'piece', because: reasons };
};
