import type { Rig } from '../../rig';
import type { Station } from '../../terms';
import { isA } from '../trade';
import { nameOf } from './ranking-words';
import { TESTS, type TestWay } from './water-tests';

/** More names than this are told as a number. */
const MOST_NAMES = 4;

const keptDry = (rig: Rig, keep_dry: readonly Station[]): string => {
  if (keep_dry.length === 0) return 'Nothing above it needs to be kept dry; let no water run up beside it either.';
  const names = keep_dry.slice(0, MOST_NAMES).map((s) => nameOf(rig, s.id));
  const more = keep_dry.length - names.length;
  return `Keep dry what lies above, with sheet and tape or by staying below: ${names.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`;
};

/** Openings that are made to let air through or current in: water belongs on their edge only. */
const OPEN_BY_DESIGN = [
  'furnace-exhaust',
  'fridge-vent-wall',
  'fridge-vent-roof',
  'range-vent',
  'water-heater',
  'inlet-power',
  'lp-compartment',
  'battery-compartment',
  'pipe-vent',
];

const CURRENT = ['lamp', 'inlet-power', 'cord-hatch', 'solar-mount', 'aircon-roof', 'antenna', 'vent-hatch', 'battery-compartment', 'awning-arm'];

const isAny = (station: Station, kinds: readonly string[]): boolean => kinds.some((k) => isA(station.looks, k));

const high = (station: Station): boolean => station.reach === 'ladder' || station.reach === 'roof';

/** What the record says of walking on the roof; `unknown` is nobody's word, `no` is somebody's. */
const ROOF: Readonly<Record<Rig['roof_walkable'], string>> = {
  yes: 'From a ladder where that is enough; a wet roof is slippery even where it may be walked on.',
  no: 'From a ladder at the side, and stay off the roof: it is recorded that this roof is not to be walked on.',
  unknown: 'From a ladder at the side: nobody has said that this roof may be walked on, and wet it is slippery.',
};

/** Before the hand reaches up: with the hose, and with tape and brush. */
const reachUp = (rig: Rig, station: Station): readonly string[] => (high(station) ? [ROOF[rig.roof_walkable]] : []);

/** An opening from its lower edge up; of a seam the stretch that may have wetted the place, from its lower end on. */
const alongIt = (rig: Rig, station: Station): string =>
  station.group === 'seam'
    ? `along the stretch of ${nameOf(rig, station.id)} from which water would run to the wet place, its lower end first`
    : `along the lower edge of ${nameOf(rig, station.id)} first, then its sides, then its top`;

const hoseSteps = (rig: Rig, station: Station, keep_dry: readonly Station[]): readonly string[] => [
  'Meter the wet place inside first and record it: the hose wets the wall, and afterwards no reading tells the same.',
  'A helper inside, with lamp and meter at the wet place, trim or cupboard opened where that is easy; agree on a call for stop.',
  'Before water is on: shore power unplugged, generator and inverter off, lamp and meter on their own batteries. Water finds sockets and wires in the wall, and a wet skin can be live.',
  ...reachUp(rig, station),
  keptDry(rig, keep_dry),
  `Plain flow from an open hose, no nozzle and no jet, ${alongIt(rig, station)}. A close jet invents leaks that no rain would make.`,
  ...(isAny(station, OPEN_BY_DESIGN) ? ['Its edge only: no water into its grille, burner, socket or vent, and what burns behind it is off and cold.'] : []),
  `Start the time. ${TESTS.hose.run_min.join(' to ')} minutes; water that runs far inside comes late, so wait some minutes more before you say that it stayed dry.`,
  'Stop at the first water inside. Record which edge, after how many minutes, and whether what lies above stayed dry.',
];

const soapSteps = (rig: Rig, station: Station): readonly string[] => [
  'All flames and pilot lights out, gas shut at the cylinder, engine and generator off, before any blower runs. At any smell of gas: out, and no test.',
  'Shut windows, hatches, vents and drains; tape what does not shut. A blower in one opening, pressing in air, only just so that it is felt at a gap; force opens seals that were sound.',
  ...reachUp(rig, station),
  `Soap and water by brush or spray along ${nameOf(rig, station.id)}; look for growing bubbles with a low lamp, about ${TESTS.soap.run_min[1]} minutes.`,
  'Bubbles show a way for air. Not every one lets water in, and a gap that holds water may not bubble: prove it with a hose before it is mended.',
  'Blower off, tape off, a door open, before gas is opened again. Record bubbles or none.',
];

/** What is done, in order. */
export const stepsFor = (rig: Rig, station: Station, how: TestWay, keep_dry: readonly Station[]): readonly string[] =>
  how === 'hose' ? hoseSteps(rig, station, keep_dry) : soapSteps(rig, station);

/** Rows of the cautions table. */
export const cautionsFor = (station: Station, how: TestWay): readonly string[] => [
  ...(high(station) ? ['ladder', 'powerline', 'roof'] : []),
  ...(how === 'hose' ? ['pressure-wash'] : ['lp-gas']),
  ...(how === 'hose' || isAny(station, CURRENT) ? ['mains'] : []),
  'mould',
  ...(high(station) ? ['lightning'] : []),
];
