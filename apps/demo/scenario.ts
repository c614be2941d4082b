/**
 * The demo rig's story: invented from end to end, and marked as such on the screen.
 * An ageing travel trailer stored outdoors with its curb side to the south: three years of rounds, a window that starts to leak,
 * a reseal that does not hold, a roof seam that opens, a tyre that slowly loses air, sun on one side, and the care it was given.
 */

/** Picks a station by the part it is and the face it is on: the first that fits. */
export type Pick = { readonly part: string; readonly face: string; readonly axle?: string };

/** What one round found at a station where it was not simply sound. */
export type Found = { readonly pick: Pick; readonly side?: 'inside'; readonly kind: string; readonly body: Readonly<Record<string, unknown>>; readonly note?: string };

/** A number as typed, to be read by `units`. */
export type Figure = { readonly figure: readonly [text: string, quantity: string, unit: string] };
export const figure = (text: string, quantity: string, unit: string): Figure => ({ figure: [text, quantity, unit] });

export type Round = {
  readonly begun: string;
  readonly by: string;
  /** Air and tyre temperature, as typed in °F. */
  readonly air_f: string;
  /** Cold pressures as typed in psi: road front, road rear, curb front, curb rear. */
  readonly psi: readonly [string, string, string, string];
  readonly found: readonly Found[];
};

export const LEAKING: Pick = { part: 'window-24x22', face: 'road' };
export const ROOF_SEAM: Pick = { part: 'roof-front-termination', face: 'roof' };
const VENT: Pick = { part: 'plumbing-vent-cap', face: 'roof' };
const SKYLIGHT: Pick = { part: 'skylight', face: 'roof' };
const ANTENNA: Pick = { part: 'antenna-base', face: 'roof' };
const STEP: Pick = { part: 'entry-step', face: 'under' };
const HATCH: Pick = { part: 'baggage-door', face: 'curb' };
const ROOF_VENT: Pick = { part: 'roof-vent', face: 'roof' };
const FRIDGE_VENT: Pick = { part: 'fridge-roof-vent', face: 'roof' };
const UNDER: Pick = { part: 'frame-below', face: 'under' };

const seal = (pick: Pick, grade: string, defects: readonly string[] = [], note?: string): Found => ({
  pick,
  kind: 'seal-grade',
  body: defects.length > 0 ? { grade, defects } : { grade },
  ...(note === undefined ? {} : { note }),
});
const wrong = (pick: Pick, kind: string, defects: readonly string[], more: Readonly<Record<string, unknown>> = {}): Found => ({
  pick,
  kind,
  body: { verdict: 'something-wrong', defects, ...more },
});
const unseen = (pick: Pick, reason: string): Found => ({ pick, kind: 'could-not-see', body: { reason } });

export const ROUNDS: readonly Round[] = [
  {
    begun: '2023-10-14T09:40:00-04:00',
    by: 'Robin',
    air_f: '61',
    psi: ['65', '65', '65', '65'],
    found: [seal(ROOF_SEAM, 'S1'), seal(LEAKING, 'S1'), seal(SKYLIGHT, 'S1'), unseen(ANTENNA, 'out-of-reach')],
  },
  {
    begun: '2024-04-20T10:05:00-04:00',
    by: 'Robin',
    air_f: '66',
    psi: ['64', '64', '64', '64'],
    found: [seal(ROOF_SEAM, 'S1'), seal(LEAKING, 'S2'), seal(VENT, 'S2'), seal(SKYLIGHT, 'S1'), unseen(ANTENNA, 'out-of-reach')],
  },
  {
    begun: '2024-10-12T09:30:00-04:00',
    by: 'Robin',
    air_f: '58',
    psi: ['63', '62', '63', '63'],
    found: [
      seal(ROOF_SEAM, 'S2'),
      seal(LEAKING, 'S3', [], 'Upper forward corner.'),
      seal(VENT, 'S3', ['edge-lifts']),
      seal(SKYLIGHT, 'S1'),
      wrong(STEP, 'step-condition', ['step.stiff', 'step.paint-chipped']),
      unseen(ANTENNA, 'out-of-reach'),
    ],
  },
  {
    begun: '2025-04-19T10:15:00-04:00',
    by: 'Robin',
    air_f: '64',
    psi: ['65', '64', '65', '65'],
    found: [seal(ROOF_SEAM, 'S2'), seal(SKYLIGHT, 'S2'), unseen(ANTENNA, 'out-of-reach')],
  },
  {
    begun: '2025-10-11T09:20:00-04:00',
    by: 'Robin',
    air_f: '60',
    psi: ['64', '62', '64', '64'],
    found: [
      seal(ROOF_SEAM, 'S2'),
      seal(LEAKING, 'S2', [], 'Fine cracks again, a year after the reseal.'),
      seal(SKYLIGHT, 'S2'),
      { pick: ROOF_VENT, kind: 'sun-damage', body: { signs: ['fading', 'chalking'] } },
      unseen(ANTENNA, 'out-of-reach'),
    ],
  },
  {
    begun: '2026-04-18T10:00:00-04:00',
    by: 'Robin',
    air_f: '63',
    psi: ['65', '62', '65', '65'],
    found: [
      seal(ROOF_SEAM, 'S3', ['cracked-through']),
      seal(LEAKING, 'S3', ['edge-lifts']),
      seal(SKYLIGHT, 'S2'),
      wrong(STEP, 'step-condition', ['step.rust', 'step.paint-chipped'], { rust_share: figure('4', 'share', 'percent') }),
      { pick: ROOF_VENT, kind: 'sun-damage', body: { signs: ['chalking', 'cracking'] } },
      unseen(ANTENNA, 'out-of-reach'),
    ],
  },
  {
    begun: '2026-10-03T09:10:00-04:00',
    by: 'Robin',
    air_f: '59',
    psi: ['64', '54', '64', '63'],
    found: [
      seal(ROOF_SEAM, 'S4', ['cracked-through', 'edge-lifts'], 'Open over a hand’s width at the road-side end.'),
      seal(LEAKING, 'S4', ['cracked-through', 'not-adhering'], 'The new bead has let go of the old one.'),
      seal(SKYLIGHT, 'S3'),
      { pick: LEAKING, side: 'inside', kind: 'inside-signs', body: { verdict: 'something-wrong', signs: ['stain'] }, note: 'Brown edge under the sill, forward corner.' },
      wrong(STEP, 'step-condition', ['step.rust', 'step.paint-chipped'], { rust_share: figure('8', 'share', 'percent') }),
      wrong(HATCH, 'latch-condition', ['lock-latch.no-hold']),
      { pick: ROOF_VENT, kind: 'sun-damage', body: { signs: ['cracking', 'brittle'] } },
      seal(FRIDGE_VENT, 'S2'),
      unseen(ANTENNA, 'out-of-reach'),
      unseen(UNDER, 'dark-or-dirty'),
    ],
  },
];

/** What is known of the whole rig, its air and the weather, between the rounds. */
export type Weathered = { readonly at: string; readonly observed_at?: string; readonly kind: string; readonly body: Readonly<Record<string, unknown>>; readonly note?: string };

export const WEATHERED: readonly Weathered[] = [
  {
    at: '2026-04-18T12:30:00-04:00',
    observed_at: '2026-03-15/2026-04-18',
    kind: 'lived-air',
    body: { temperature: figure('52', 'temperature', 'f'), relative_humidity: figure('58', 'relative-humidity', 'percent') },
  },
  {
    at: '2026-09-14T08:00:00-04:00',
    observed_at: '2026-09-12/2026-09-13',
    kind: 'rain-fell',
    body: { amount: figure('1.2', 'length', 'in'), wind_from: 'road', while: 'parked' },
  },
  {
    at: '2026-09-27T18:30:00-04:00',
    observed_at: '2026-09-27/2026-09-27',
    kind: 'rain-fell',
    body: { amount: figure('0.7', 'length', 'in'), wind_from: 'calm', while: 'parked' },
  },
  {
    at: '2026-10-03T11:20:00-04:00',
    observed_at: '2026-08-29/2026-10-03',
    kind: 'lived-air',
    body: { temperature: figure('66', 'temperature', 'f'), relative_humidity: figure('57', 'relative-humidity', 'percent') },
  },
];

/** Air and surface beside the wet place, on the day it was metered: far from dew. */
export const AIR_AND_SKIN = {
  at: '2026-10-03T11:05:00-04:00',
  body: {
    air_temperature: figure('62', 'temperature', 'f'),
    relative_humidity: figure('52', 'relative-humidity', 'percent'),
    skin_temperature: figure('58', 'temperature', 'f'),
  },
} as const;

/** Care and decisions between the rounds. `settles` names the pick whose latest finding it is about. */
export type Done = {
  readonly at: string;
  readonly by: string;
  readonly kind: string;
  readonly pick: Pick;
  readonly settles?: true;
  readonly body: Readonly<Record<string, unknown>>;
  readonly note?: string;
};

export const DONE: readonly Done[] = [
  {
    at: '2024-10-19T11:30:00-04:00',
    by: 'Robin',
    kind: 'resealed',
    pick: LEAKING,
    settles: true,
    body: {
      removed: 'loose',
      old: 'unknown',
      cleaned_with: 'alcohol',
      product_family: 'hybrid',
      bead_length: figure('1.2', 'length', 'm'),
      air_temperature: figure('57', 'temperature', 'f'),
    },
    note: 'Laid over the old bead.',
  },
  {
    at: '2024-10-19T13:00:00-04:00',
    by: 'Robin',
    kind: 'resealed',
    pick: VENT,
    settles: true,
    body: {
      removed: 'all',
      old: 'lap-self-levelling',
      cleaned_with: 'alcohol',
      product_family: 'lap-self-levelling',
      bead_length: figure('0.5', 'length', 'm'),
      air_temperature: figure('59', 'temperature', 'f'),
    },
  },
  { at: '2024-10-19T14:10:00-04:00', by: 'Robin', kind: 'lubricated', pick: STEP, settles: true, body: { with_what: 'ptfe' } },
  { at: '2024-10-27T10:00:00-04:00', by: 'Robin', kind: 'proof-seen', pick: VENT, settles: true, body: { result: 'held', by: 'rain' }, note: 'After two days of rain.' },
  { at: '2026-05-02T10:30:00-04:00', by: 'Robin', kind: 'spot-painted', pick: STEP, settles: true, body: { done: ['sanded', 'primed', 'painted'] } },
  {
    at: '2026-06-06T08:30:00-04:00',
    by: 'Robin',
    kind: 'pressure-set',
    pick: { part: 'tyre', face: 'road', axle: 'A2' },
    body: { pressure: figure('65', 'gauge-pressure', 'psi'), tyre_temperature: figure('68', 'temperature', 'f') },
  },
];
