import { box, type Rig } from '../rig';
import type { Station } from '../terms';
import { isA } from './trade';

/** Where a caution is about to be said: the station, what is done there, and what it is done with. */
export type Site = {
  readonly rig: Rig;
  readonly station: Station | undefined;
  readonly remedy: string | undefined;
  /** It lays a bead. */
  readonly seals: boolean;
  /** Families of sealant bought for it; empty where it lays none, or where somebody else brings it. */
  readonly beads: readonly string[];
  readonly defects: readonly string[];
};

const looksLike =
  (...kinds: readonly string[]) =>
  ({ station }: Site): boolean =>
    station !== undefined && kinds.some((k) => isA(station.looks, k));

/** Sealing nearer than this to a way out may seal it too; our choice. [m] */
const NEAR_M = 0.5;

const isWayOut = (station: Station): boolean => isA(station.looks, 'window-exit') || isA(station.looks, 'entry-door') || station.part.startsWith('pass-through-hatch');

const gap = (a: Station, b: Station): number => {
  const [p, q] = [box(a.shape), box(b.shape)];
  return Math.hypot(Math.max(0, p.x0 - q.x1, q.x0 - p.x1), Math.max(0, p.y0 - q.y1, q.y0 - p.y1));
};

/** Ways out, and what is sealed beside one. */
const byAWayOut = ({ rig, station, seals }: Site): boolean =>
  station === undefined ||
  isWayOut(station) ||
  (seals && rig.stations.some((s) => !s.retired && s.face === station.face && s.id !== station.id && isWayOut(s) && gap(s, station) <= NEAR_M));

const onTheRoof = ({ station }: Site): boolean =>
  station === undefined || station.face === 'roof' || station.face.endsWith('-top') || isA(station.looks, 'roof-edge') || isA(station.looks, 'cap-seam');

const fromALadder = ({ station }: Site): boolean => station === undefined || station.reach === 'ladder' || station.reach === 'roof';

const ELECTRIC = looksLike('lamp', 'inlet-power', 'cord-hatch', 'solar-mount', 'aircon-roof', 'antenna', 'vent-hatch', 'awning-arm', 'slide-mechanism', 'battery-compartment');
const electric = (site: Site): boolean => site.station === undefined || ELECTRIC(site) || /\b(cable|wir(e|ing)|outlet)\b/.test(site.station.behind);

const burnsGas = looksLike('water-heater', 'furnace-exhaust', 'fridge-vent-wall', 'fridge-vent-roof', 'lp-compartment', 'range-vent', 'insect-screen');

/**
 * A remedy serves many kinds of station, and its cautions are those of all of them. Here stands when each is meant, after the words of
 * its own trigger; a caution without a line holds wherever its remedy does. Common practice, no published source.
 */
const FITS: Readonly<Record<string, (site: Site) => boolean>> = {
  ladder: fromALadder,
  roof: onTheRoof,
  heat: onTheRoof,
  egress: byAWayOut,
  glass: looksLike('window', 'windscreen', 'skylight'),
  mains: (site) => site.remedy !== 'wall-top-bead' || electric(site),
  'twelve-volt': (site) => site.remedy !== 'rebed-opening' || electric(site),
  isocyanate: ({ beads }) => beads.length === 0 || beads.includes('polyurethane'),
  insects: ({ station }) =>
    station === undefined || (station.group !== 'seam' && !['window', 'skylight', 'antenna', 'solar-mount', 'ladder-rack-foot'].some((k) => isA(station.looks, k))),
  'slide-pinch': (site) => site.station?.slide !== undefined || looksLike('slide-box', 'slide-seals', 'slide-topper', 'slide-mechanism')(site),
  'lp-gas': burnsGas,
  burner: burnsGas,
  ammonia: looksLike('fridge-vent-wall', 'fridge-vent-roof'),
  bleach: ({ defects }) => defects.some((d) => d.endsWith('.mildew')),
};

/** Cautions that are not meant wherever their remedy is. */
export const narrowed: readonly string[] = Object.keys(FITS);

/** Whether what the caution warns of can happen at this job. */
export const fits = (caution: string, site: Site): boolean => FITS[caution]?.(site) ?? true;
