import type { roundBegun } from '../entries';
import type { Standing, State } from '../logbook';
import type { Rig } from '../rig';
import { type BodyOf, type EntryId, placeKey, type Side, type StationId, WHOLE_RIG } from '../terms';

type Begun = BodyOf<(typeof roundBegun)['fields']>;

/** One walk round the rig, as far as the logbook tells. */
export type Round = {
  readonly begun: Standing;
  readonly form: Begun['form'];
  readonly steps: readonly { readonly station: StationId; readonly side: Side }[];
  readonly ended: Standing | undefined;
};

const RIG = placeKey(WHOLE_RIG);

/** Every round, oldest first. */
export const roundsOf = (state: State<Rig>): readonly Round[] => {
  const ofRig = state.through.get(RIG);
  const ends = ofRig?.get('round-ended') ?? [];
  const endOf = new Map(ends.map((end) => [end.entry.round, end]));
  return (ofRig?.get('round-begun') ?? []).map((begun) => {
    const body = begun.body as Begun;
    return { begun, form: body.form, steps: body.steps, ended: endOf.get(begun.entry.id) };
  });
};

/** The latest full round that has ended. */
export const lastFullRound = (state: State<Rig>): Round | undefined => roundsOf(state).findLast((r) => r.form === 'full' && r.ended !== undefined);

export const roundNamed = (state: State<Rig>, id: EntryId): Round | undefined => roundsOf(state).find((r) => r.begun.entry.id === id);
