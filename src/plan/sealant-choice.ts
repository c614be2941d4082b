import { SEALANTS, SURFACES } from '../entries';
import { type Rig, surfaceOn } from '../rig';
import { bond, TOUCH_VERDICTS, type TouchVerdict } from '../science';
import type { Station } from '../terms';
import type { Method } from './reseal-method';

/** Which family of sealant a bead takes, by what it is laid on and how the place lies. */
export type Choice = {
  readonly family: string;
  readonly because: string;
  /** A family that does as well here by the table, and is taken where another job of the visit needs it. */
  readonly instead?: { readonly family: string; readonly because: string };
};

const isSurface = (id: string): boolean => SURFACES.some((s) => s.id === id && id !== 'unknown');

/** As recorded at the station; else what covers that face of the rig. */
const surfaceAt = (station: Station, rig: Rig): string => (isSurface(station.sealed_to) ? station.sealed_to : surfaceOn(station.face, rig.skin, rig.roof));

/**
 * Self-levelling flows and is for the level only; the non-sag grade stays where it is laid and may be tooled over a level flange as well.
 * So the one stands in for the other, never the other way round. Common practice, no published source.
 */
const STANDS_IN: Readonly<Record<string, string>> = { 'lap-self-levelling': 'lap-non-sag' };

export const wordOf = (family: string): string => SEALANTS.find((s) => s.id === family)?.word ?? family;

/** A word as it stands inside a sentence: `TPO` and `EPDM rubber` keep their capitals. */
const inSentence = (word: string): string => (/^[A-Z]{2}/.test(word) ? word : `${word.charAt(0).toLowerCase()}${word.slice(1)}`);

const verdictOf = (family: string, surface: string): TouchVerdict => bond(family, surface)?.verdict ?? 'test';

const reason = (family: string, surface: string): string => {
  const verdict = verdictOf(family, surface);
  const note = bond(family, surface)?.note;
  const name = inSentence(SURFACES.find((f) => f.id === surface)?.word ?? surface);
  const words =
    surface === 'unknown'
      ? 'What it is laid on is not recorded: test patch first'
      : verdict === 'yes'
        ? `Goes with ${name}`
        : verdict === 'prep'
          ? `Needs preparation on ${name}`
          : `Test patch first on ${name}`;
  return `${words}${note ? `: ${note}` : ''}.`;
};

/** The family to lay: the one that stays, where it may be laid over; else the best for the surface by the table. */
export const familyFor = (station: Station, rig: Rig, level: boolean, method: Method | undefined): Choice => {
  const surface = surfaceAt(station, rig);
  const rank = (family: string): number => TOUCH_VERDICTS.indexOf(verdictOf(family, surface));
  const flat = level && station.face === 'roof' && station.group === 'opening';
  const candidates = flat ? ['lap-self-levelling', 'lap-non-sag', 'hybrid'] : station.face === 'roof' ? ['lap-non-sag', 'hybrid'] : ['hybrid', 'lap-non-sag', 'polyurethane'];
  const stays = method?.way === 'over' && method.stays !== undefined && candidates.includes(method.stays) ? method.stays : undefined;
  if (stays !== undefined && verdictOf(stays, surface) !== 'no') return { family: stays, because: `${reason(stays, surface)} The same family as what stays.` };
  const family = [...candidates].sort((a, b) => rank(a) - rank(b))[0] ?? 'hybrid';
  const other = STANDS_IN[family];
  if (other === undefined || !candidates.includes(other) || rank(other) > rank(family)) return { family, because: reason(family, surface) };
  return {
    family,
    because: reason(family, surface),
    instead: { family: other, because: `${reason(other, surface)} Tooled flat over level flanges, so that one product does for the visit.` },
  };
};
