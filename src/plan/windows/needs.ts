import type { Rig } from '../../rig';
import { COMMON_PRACTICE, memory, ours, type Source, type Station, seen } from '../../terms';
import { kelvin } from '../../units';
import type { Job } from '../plan-types';
import { wordOf } from '../sealant-choice';
import { remedy } from '../trade';
import type { Need } from './windows-types';

/** Limits of a kind of product, as far as sheets that were read go. The person's own sheet comes first. [°C] */
type Limits = { readonly least_c: number; readonly most_c?: number; readonly cures: boolean; readonly source: Source };

const POLYURETHANE: Limits = {
  least_c: 4,
  most_c: 37,
  cures: true,
  source: seen('Data sheet of a one-part polyurethane joint sealant, 25 August 2021: product and surface 4 to 37 °C, cured in 7 days at 25 °C'),
};
const LAP: Limits = {
  least_c: 4,
  cures: true,
  source: seen('Handbook for rubber roof membranes: below 40 °F dew is likely on what is laid (of adhesives; no sheet for lap sealant gives a lower limit)'),
};
const HYBRID: Limits = { least_c: 5, most_c: 40, cures: true, source: memory('Silyl-ended hybrid sealants, 5 to 40 °C') };
const TAPE: Limits = { least_c: 10, most_c: 30, cures: false, source: COMMON_PRACTICE };

/** Where something is laid of which no sheet was read at all. */
const GENERAL: Limits = { least_c: 5, cures: true, source: seen('Advice of a maker of glazing sealants for sealants in general: 5 °C and more') };

const FAMILIES: Readonly<Record<string, Limits>> = {
  polyurethane: POLYURETHANE,
  'lap-self-levelling': LAP,
  'lap-non-sag': LAP,
  hybrid: HYBRID,
  'butyl-tape': TAPE,
  'repair-tape': TAPE,
};

/** Until rain may fall on a fresh bead: no sheet read says it. */
const RAIN_FREE_H = 24;
/** Until the wheels may turn: the one full cure that was read, of a polyurethane at 25 °C and half-damp air, taken over for all that cures. */
const CURE_H = 7 * 24;
/** Without rain before a bead: enough for a washed skin to dry. */
const DRY_BEFORE_H = 6;
/** A roof that somebody stands on dries for so long after rain: ours. */
const DRIES_H = 2;
/** The trade table asks for two dry days: a day before, a day after. */
const TWO_DRY_DAYS: ReadonlySet<string> = new Set(['corner-rebed', 'roof-protect', 'coat-peel']);
/** Laid from a tin whose sheet nobody here has read. */
const COATINGS: Readonly<Record<string, string>> = { 'roof-protect': 'Roof coating', 'coat-peel': 'Roof coating' };

const LAYING = [
  ours(
    'Planning values where no sheet was read: 24 hours without rain after (common practice), 7 days before the wheels turn (as a polyurethane sheet), 6 hours dry before. The product’s own sheet comes first',
  ),
];

/** Words of the trade table for what is laid outside and must stick; thread tape is wound, and glue goes into wood. */
const STICKS = /seal(ant|er)\b|sealed rivets|butyl|(?<!thread )tape|primer|enamel|\bpaint|adhesive|epoxy|polyester|coating/i;

/** Whether a remedy lays something, by its own materials and cautions. */
export const lays = (id: string): boolean => {
  const row = remedy(id);
  return row !== undefined && (row.cautions.includes('cure') || STICKS.test(row.materials ?? ''));
};

const CLIMBS: ReadonlySet<Station['reach']> = new Set(['ladder', 'roof']);

/** What a job asks of the weather; nothing where it asks nothing, is only watched, or belongs to a professional. */
export const needOf = (job: Job, station: Station | undefined, rig: Rig): Need | undefined => {
  if (job.who === 'professional' || job.remedy === undefined) return undefined;
  const outside = station !== undefined && station.reach !== 'inside' && rig.faces.some((f) => f.id === station.face);
  if (!outside) return undefined;
  const onRoof = station.reach === 'roof';
  const climbs = CLIMBS.has(station.reach) || station.face === 'roof';
  const laid = job.materials.flatMap((m) => (FAMILIES[m.material] ? [{ words: wordOf(m.material) || m.words, limits: FAMILIES[m.material] as Limits }] : []));
  const coating = COATINGS[job.remedy ?? ''];
  const known = coating === undefined ? laid.map((l) => l.limits) : [LAP];
  const limits = known.length === 0 && lays(job.remedy) ? [GENERAL] : known;
  if (limits.length === 0)
    return climbs
      ? {
          for: 'climbing',
          dry_before_h: onRoof ? DRIES_H : 0,
          rain_free_h: 0,
          cure_h: 0,
          climbs,
          dry_surface: onRoof,
          stands_on_it: onRoof,
          sources: [ours('Nobody climbs in rain, in wind or in the dark, or stands on a wet roof')],
        }
      : undefined;
  const most = limits.flatMap((l) => l.most_c ?? []);
  const two = TWO_DRY_DAYS.has(job.remedy ?? '');
  const cures = limits.some((l) => l.cures);
  return {
    for: 'laying',
    product: coating ?? (laid.length === 0 ? 'What is laid is not known here: read its sheet' : [...new Set(laid.map((l) => l.words))].join(', ')),
    least: kelvin(Math.max(...limits.map((l) => l.least_c)) + 273.15),
    ...(most.length === 0 ? {} : { most: kelvin(Math.min(...most) + 273.15) }),
    dry_before_h: two ? 24 : DRY_BEFORE_H,
    rain_free_h: cures ? RAIN_FREE_H : 0,
    cure_h: cures ? CURE_H : 0,
    climbs,
    dry_surface: true,
    stands_on_it: onRoof,
    sources: [...new Set(limits.map((l) => l.source)), ...LAYING],
  };
};
