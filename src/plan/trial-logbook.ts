import { kindById, kinds } from '../entries';
import { fold, type Line, type State, uuidV7, writeLine } from '../logbook';
import { blankRig, type Rig } from '../rig';
import { type Entry, type Place, type Side, type Station, WHOLE_RIG } from '../terms';
import { type CivilDay, parseDay, type Typed, toSi } from '../units';

/**
 * A small invented logbook for the checks of this room: a few stations, entries in one line each. Hashes are made up,
 * since judgement never reads them.
 */
export const day = (text: string): CivilDay => {
  const found = parseDay(text);
  if (found === undefined) throw new Error(`no such day: ${text}`);
  return found;
};

export const typed = (n: number, quantity: Parameters<typeof toSi>[1], unit: string): Typed => ({ typed: String(n), unit, si: toSi(n, quantity, unit) });

export const station = (id: string, looks: string, more: Partial<Station> = {}): Station => ({
  id,
  name: id.replace('.', ' ').replaceAll('-', ' '),
  part: looks,
  group: looks === 'tyre' ? 'wheel' : 'opening',
  looks,
  face: id.split('.')[0] ?? 'curb',
  shape: { form: 'rect', x_m: 1, y_m: 1, w_m: 0.8, h_m: 0.6 },
  size: 'typical',
  bead: looks === 'tyre' ? 'none' : 'all-round',
  bead_m: looks === 'tyre' ? 0 : 2.8,
  outline_m: 2.8,
  top_m: 1.6,
  reach: 'ground',
  sealed_with: 'unknown',
  sealed_to: 'unknown',
  last_sealed: 'unknown',
  behind: 'framing',
  cut_through: looks !== 'tyre',
  parts: [],
  ...more,
});

export const trialRig = (stations: readonly Station[], more: Partial<Rig> = {}): Rig => ({
  ...blankRig('trial'),
  name: 'Trial',
  construction: 'bonded',
  skin: 'fibreglass',
  roof: 'epdm',
  set_pressure_pa: { axle: toSi(65, 'gauge-pressure', 'psi') },
  stations,
  ...more,
});

export type Said = {
  readonly on: string;
  readonly kind: string;
  readonly at?: string | Place;
  readonly side?: Side;
  readonly body?: Readonly<Record<string, unknown>>;
  readonly concerns?: readonly string[];
  readonly round?: string;
  readonly note?: string;
  readonly spent_s?: number;
  readonly id?: string;
};

const idOf = (n: number): string => uuidV7(1_700_000_000_000 + n, new Uint8Array([0, 0, 0, 0, 0, 0, 0, 0, n >> 8, n & 255]));

/** The id of the nth entry said, counted from 1. */
export const nth = idOf;

export const linesOf = (said: readonly Said[], device = 'phone'): readonly Line[] =>
  said.map((s, i) => {
    const n = i + 1;
    const place: Place = s.at === undefined ? WHOLE_RIG : typeof s.at === 'string' ? { at: 'station', station: s.at, side: s.side ?? 'outside' } : s.at;
    const entry: Entry = {
      id: s.id ?? idOf(n),
      rig: 'trial',
      kind: s.kind,
      version: kindById(s.kind)?.version ?? 1,
      observed_at: s.on.length > 10 ? s.on : `${s.on}T10:00:00Z`,
      recorded_at: s.on.length > 10 && !s.on.includes('/') ? s.on : `${s.on.slice(0, 10)}T10:00:00Z`,
      by: 'R. Rider',
      device,
      counter: n,
      previous: n === 1 ? null : String(n - 1).padStart(64, '0'),
      heads: [],
      place,
      body: s.body ?? {},
      ...(s.concerns ? { concerns: s.concerns } : {}),
      ...(s.round ? { round: s.round } : {}),
      ...(s.note ? { note: s.note } : {}),
      ...(s.spent_s === undefined ? {} : { spent_s: s.spent_s }),
    };
    return { entry, text: writeLine(entry), hash: String(n).padStart(64, '0') };
  });

/** The state after these entries, for a rig that is as given. */
export const stateOf = (rig: Rig, said: readonly Said[]): State<Rig> => fold(kinds, rig, linesOf(said));
