import { COMMON_PRACTICE, type StationId } from '../terms';
import { showDay } from '../units';
import { type Finding, isWork, takenAs } from './finding';
import type { Job } from './plan-types';
import { MOST_SUSPECTS } from './suspects';

/** Rules, and defects of the table, that tell of water where it shows. */
const SHOWS_WATER: ReadonlySet<string> = new Set(['inside-signs', 'water-coming-in', 'wet-wall', 'skin-condition', 'roof-soft-spot']);
const WET_DEFECTS: ReadonlySet<string> = new Set(['opening-roof.wet-inside', 'opening-wall.bubble-below', 'entry-door.sill-soft']);

const showsWater = (f: Finding): boolean => isWork(f) && takenAs(f) !== 'watch' && (SHOWS_WATER.has(f.rule) || (f.defect !== undefined && WET_DEFECTS.has(f.defect)));
const letsWaterIn = (f: Finding): boolean => f.rule === 'seal-grade' && isWork(f) && (f.urgency === 'before-rain' || f.urgency === 'before-moving');

const lower = (title: string): string => `${title.charAt(0).toLowerCase()}${title.slice(1)}`;

/**
 * Findings of one station that may have one cause: water that shows beside an open seal. The open seal is suspected first,
 * before what lies above, and each finding of water says so. Common practice, no published source.
 */
export const withOpenSealFirst = (findings: readonly Finding[]): readonly Finding[] => {
  const seal = findings.find(letsWaterIn);
  if (!seal?.station || !findings.some(showsWater)) return findings;
  const station: StationId = seal.station;
  return findings.map((f) => {
    if (!showsWater(f)) return f;
    const because = {
      text: `The first suspect is the seal of this place itself: ${lower(seal.title)}, seen on ${showDay(seal.last_seen)}. Close it first; if the place then dries and stays dry, one repair has settled both.`,
      entries: seal.because[0]?.entries ?? [seal.raised_by],
      source: COMMON_PRACTICE,
    };
    return { ...f, because: [...f.because, because], suspects: [station, ...(f.suspects ?? []).filter((s) => s !== station)].slice(0, MOST_SUSPECTS) };
  });
};

/** The jobs of one station with those that may have one cause named at each other; the seal is closed before the wet is looked for further. */
export const belongingTogether = (jobs: readonly Job[], findings: readonly Finding[]): readonly Job[] => {
  const found = new Map(findings.map((f) => [f.id, f]));
  const has = (job: Job, is: (f: Finding) => boolean): boolean => job.findings.some((id) => is(found.get(id) as Finding));
  const seals = jobs.filter((j) => has(j, letsWaterIn));
  const wets = jobs.filter((j) => !seals.includes(j) && has(j, showsWater));
  if (seals.length === 0 || wets.length === 0) return jobs;
  return jobs.map((job) => {
    if (seals.includes(job)) return { ...job, belongs_with: wets.map((j) => j.id) };
    if (!wets.includes(job)) return job;
    const first = seals.map((j) => lower(j.title)).join(', ');
    return { ...job, steps: [`Close the seal of this place first (${first}), then dry it and read again`, ...job.steps], belongs_with: seals.map((j) => j.id) };
  });
};
