import type { FaceId, FacePoint } from '../../terms';
import { faceOf } from '../faces';
import { areaOf } from '../outline';
import type { Construction, Face, Rig } from '../rig';
import { box } from '../shapes';
import { bays, regularMembers } from './bays';
import { clipToBox } from './clip';
import { type CutOut, cutOuts } from './cut-outs';
import { tubeStrips } from './tubes';
import type { Field, Fields } from './types';

/** 16 in on centre: common practice of stick-built walls, no published source for rigs. [m] */
export const TYPICAL_SPACING_M = 0.4064;

/** Less than this of a hole in a field is no hole. [m²] */
const NOTHING_M2 = 1e-6;

/** A face that is no panel. */
const NO_PANEL = /^tongue$/;
/** Rafters stand in a roof whatever the walls are made of; a bonded floor is a sheet like its walls. */
const ROOF = /^roof$|-top$/;
const FLOOR = /^under$/;

type Built = 'bays' | 'sheet' | 'shell';

const builtOf = (construction: Construction, rig: Pick<Rig, 'skin'>, face: FaceId): Built => {
  if (construction === 'moulded' || rig.skin === 'moulded-fibreglass') return 'shell';
  return construction === 'bonded' && !ROOF.test(face) ? 'sheet' : 'bays';
};

const memberOf = (face: FaceId): string => (ROOF.test(face) ? 'rafters' : FLOOR.test(face) ? 'joists' : 'studs');

const inBoth = (m: number): string => `${Math.round((m / 0.0254) * 10) / 10} in (${Math.round(m * 100)} cm)`;

const spacingWords = (what: string, face: Face, recorded: number | undefined): string =>
  recorded === undefined
    ? `${what} every ${inBoth(TYPICAL_SPACING_M)} ${face.x_axis}: typical, measure yours.`
    : `${what} every ${inBoth(recorded)} ${face.x_axis}, as recorded for this rig.`;

const JOINTS = 'Joints between panels are not drawn. Where you know of one, do not trust the map across it.';

const holesIn = (outline: readonly FacePoint[], cut: readonly CutOut[]): readonly (readonly FacePoint[])[] => {
  const b = box({ form: 'poly', points_m: outline });
  return cut
    .filter((c) => c.box.x1 > b.x0 && c.box.x0 < b.x1 && c.box.y1 > b.y0 && c.box.y0 < b.y1)
    .map((c) => (c.outline_m.length === 4 ? clipToBox(outline, c.box) : clipToBox(c.outline_m, b)))
    .filter((o) => o.length >= 3 && areaOf(o) > NOTHING_M2);
};

/** The whole face as one field, with everything cut out of it as holes. */
const one = (face: Face, name: string, cut: readonly CutOut[], masked_m: Field['masked_m']): readonly Field[] => [
  { id: `${face.id}.${name}`, face: face.id, outline_m: face.outline_m, holes_m: holesIn(face.outline_m, cut), masked_m },
];

/**
 * The parts of a face within which readings may be compared by their distance, and what that rests on.
 * Hung on a frame: the bays between its members. Bonded: the whole sheet, its frame tubes masked for pinless meters.
 * Moulded: the whole shell. Never across faces.
 *
 * @returns  no fields for a face that is no panel, or that this rig does not have
 * @assumes  unknown construction is taken as hung, the careful choice: what is read in one bay is not carried to the next
 */
export const fieldsOf = (rig: Pick<Rig, 'faces' | 'stations' | 'slides' | 'construction' | 'skin' | 'stud_spacing_m'>, id: FaceId): Fields => {
  const face = faceOf(rig, id);
  if (!face || NO_PANEL.test(id)) return { face: id, fields: [], assumes: [] };
  const cut = cutOuts(rig, id);
  const framed = cut.filter((c) => c.framed);
  const built = builtOf(rig.construction, rig, id);
  if (built === 'shell') return { face: id, fields: one(face, 'shell', cut, []), assumes: ['A moulded shell has no frame that parts it: the whole face is one field.', JOINTS] };
  const member = memberOf(id);
  const regular = regularMembers(face.outline_m, framed, rig.stud_spacing_m ?? TYPICAL_SPACING_M);
  if (built === 'sheet')
    return {
      face: id,
      fields: one(face, 'sheet', cut, tubeStrips(face.outline_m, framed, regular)),
      assumes: [
        'A bonded panel is one sheet: it runs past the frame tubes inside it.',
        spacingWords('Tubes at the edges, beside openings of a foot or more, and', face, rig.stud_spacing_m),
        JOINTS,
      ],
    };
  const let_in = cut.filter((c) => !c.framed);
  return {
    face: id,
    fields: bays(face.outline_m, framed, regular).map(
      (outline_m, i): Field => ({ id: `${id}.bay.${i + 1}`, face: id, outline_m, holes_m: holesIn(outline_m, let_in), masked_m: [] }),
    ),
    assumes: [
      ...(rig.construction === 'unknown'
        ? [`How this rig is built is not recorded. It is taken as hung on a frame, the careful choice: a reading in one bay says nothing of the next.`]
        : []),
      spacingWords(`${member.charAt(0).toUpperCase()}${member.slice(1)}`, face, rig.stud_spacing_m),
      `Openings of a foot or more each way, slide-outs and wheel arches are framed: one of the ${member} at both sides, a bay of its own above and below.`,
      JOINTS,
    ],
  };
};
