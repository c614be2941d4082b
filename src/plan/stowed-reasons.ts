import type { stowed } from '../entries';
import type { State } from '../logbook';
import type { Rig, RigKindId } from '../rig';
import { type BodyOf, placeKey, WHOLE_RIG } from '../terms';
import { showDay } from '../units';
import type { ReadyReason } from './plan-types';

type Stowed = BodyOf<(typeof stowed)['fields']>;

const TOWED: ReadonlySet<RigKindId> = new Set(['travel-trailer', 'fifth-wheel', 'folding-camper', 'teardrop']);

type Reasons = { readonly no: readonly ReadyReason[]; readonly unknown: readonly ReadyReason[] };

/** What the hitch of a towed rig leaves open. A rig that tows something itself is held to what it recorded. */
const hitchWords = (body: Stowed, kind: RigKindId): { readonly no: readonly string[]; readonly unknown: readonly string[] } => {
  const towed = TOWED.has(kind);
  if (body.hitch === 'not-coupled') return { no: ['The hitch is not coupled, or not pinned.'], unknown: [] };
  if (body.hitch === 'none') return { no: towed ? ['It is not hitched to a towing vehicle.'] : [], unknown: [] };
  if (body.hitch === 'not-looked') return { no: [], unknown: towed ? ['Hitch, chains, breakaway cable and tow plug not looked at.'] : [] };
  return {
    no: [
      ...(body.chains === 'not-attached' ? ['The safety chains are not attached.'] : []),
      // Fifth wheels are let off safety chains in the United States (49 CFR 393.70, from memory, unconfirmed); a ball hitch is not.
      ...(body.chains === 'none' && towed && kind !== 'fifth-wheel' ? ['There are no safety chains on this hitch.'] : []),
      ...(body.breakaway === 'not-attached' ? ['The breakaway cable is not attached.'] : []),
      ...(body.lamps === 'fail' ? ['A lamp does not work with the tow plug in.'] : []),
    ],
    unknown: body.lamps === 'not-looked' ? ['Tow plug and lamps not looked at.'] : [],
  };
};

/** What was recorded of the whole rig before a trip, of today only: the hitch first, then what is still out. */
export const stowedReasons = (rig: Rig, state: State<Rig>, on: number): Reasons => {
  const latest = state.latest.get(placeKey(WHOLE_RIG))?.get('stowed');
  const what = TOWED.has(rig.kind) ? 'Hitch, chocks, cords and jacks' : 'Chocks, cords and jacks';
  if (!latest) return { no: [], unknown: [{ text: `${what} not recorded.`, entries: [] }] };
  const entries = [latest.entry.id];
  if (latest.day < on) return { no: [], unknown: [{ text: `${what} last recorded on ${showDay(latest.day)}.`, entries }] };
  const body = latest.body as Stowed;
  const hitch = hitchWords(body, rig.kind);
  const no = [
    ...hitch.no,
    ...(body.chocks === 'away' ? [] : ['Wheel chocks are still in place.']),
    ...(body.cords === 'stowed' ? [] : ['A cord or hose is still connected.']),
    ...(body.jacks === 'down' ? ['A jack or leg is still down.'] : []),
  ];
  const reasons = (texts: readonly string[]): readonly ReadyReason[] => texts.map((text) => ({ text, entries }));
  return { no: reasons(no), unknown: reasons(hitch.unknown) };
};
