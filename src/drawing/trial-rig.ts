import { blankRig, layoutFrom, type Rig, type RigKindId } from '../rig';

/** Starting layouts as rigs, for the checks of drawing and report. */
export const KINDS: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];

export const trialRig = (kind: RigKindId): Rig => {
  const layout = layoutFrom({ kind, name: 'Plover', year: 2014, skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
  if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
  return { ...blankRig('trial'), name: 'Plover', kind, year: 2014, skin: 'fibreglass', construction: 'bonded', roof: 'tpo', ...layout.value };
};
