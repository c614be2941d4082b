import type { Construction, RoofMembrane, WallSkin } from './rig';

/** Kinds of station in the trade tables that depend on what the rig is made of. */

const ROOF_LOOKS: Readonly<Record<RoofMembrane, string>> = {
  epdm: 'roof-epdm',
  tpo: 'roof-tpo',
  pvc: 'roof-pvc',
  coated: 'roof-coated',
  fibreglass: 'roof-fibreglass',
  aluminium: 'roof-metal',
  'painted-steel': 'roof-metal',
  unknown: 'roof-field',
};

export const roofLooks = (roof: RoofMembrane): string => ROOF_LOOKS[roof];

/** A skin that hangs on a frame may move under the hand; on a bonded wall it may not. Construction decides before skin does. */
export const wallLooks = (skin: WallSkin, construction: Construction): string => {
  if (construction === 'moulded' || skin === 'moulded-fibreglass') return 'wall-moulded';
  if (skin === 'corrugated-aluminium') return 'wall-corrugated';
  if (skin === 'sheet-aluminium' || skin === 'painted-steel') return construction === 'bonded' ? 'wall-laminated' : 'wall-sheet';
  return construction === 'hung' ? 'wall-sheet' : 'wall-laminated';
};

const ROOF_SURFACE: Readonly<Record<RoofMembrane, string>> = {
  epdm: 'epdm',
  tpo: 'tpo',
  pvc: 'pvc',
  coated: 'coated',
  fibreglass: 'fibreglass',
  aluminium: 'painted-aluminium',
  'painted-steel': 'painted-steel',
  unknown: 'unknown',
};

const WALL_SURFACE: Readonly<Record<WallSkin, string>> = {
  fibreglass: 'fibreglass',
  'corrugated-aluminium': 'painted-aluminium',
  'sheet-aluminium': 'painted-aluminium',
  'moulded-fibreglass': 'fibreglass',
  'painted-steel': 'painted-steel',
  unknown: 'unknown',
};

/** What a bead on this face sticks to, by the ids under which surfaces are recorded. */
export const surfaceOn = (face: string, skin: WallSkin, roof: RoofMembrane): string => {
  if (face === 'roof') return ROOF_SURFACE[roof];
  return face === 'under' || face === 'tongue' || face.endsWith('-top') ? 'unknown' : WALL_SURFACE[skin];
};
