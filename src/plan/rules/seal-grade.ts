import type { sealGrade } from '../../entries';
import type { Standing } from '../../logbook';
import { type BodyOf, type Station, sooner, type Urgency, type Who } from '../../terms';
import { showDay, showTyped } from '../../units';
import type { Because } from '../finding';
import { methodOf } from '../reseal-method';
import { defineRule, type Scene, type Verdict } from '../rule';
import { isA } from '../trade';
import { REPAIRS } from './repairs';
import { OPEN_SEAL, ROAD_WIND, SEAL_SCALE } from './sources';

type Body = BodyOf<(typeof sealGrade)['fields']>;
type Grade = Body['grade'];

/** What a grade asks for by itself. S0 asks for nothing. */
const GRADES: Readonly<Record<Exclude<Grade, 'S0'>, { readonly title: string; readonly urgency: Urgency; readonly who: Who }>> = {
  S1: { title: 'Seal dull', urgency: 'watch', who: 'yourself' },
  S2: { title: 'Seal crazed', urgency: 'this-season', who: 'yourself' },
  S3: { title: 'Seal cracked', urgency: 'before-rain', who: 'yourself' },
  S4: { title: 'Seal open', urgency: 'before-rain', who: 'yourself' },
  S5: { title: 'Seal failed', urgency: 'before-rain', who: 'professional' },
};

const ORDER: readonly Grade[] = ['S0', 'S1', 'S2', 'S3', 'S4', 'S5'];
const worse = (a: Grade, b: Grade): Grade => (ORDER.indexOf(a) >= ORDER.indexOf(b) ? a : b);

/** A gap over half a millimetre is open by the scale itself, whatever grade was tapped. [m] */
const OPEN_GAP_M = 0.0005;

const DEFECT_WORDS: Readonly<Record<string, string>> = {
  'cracked-through': 'crack right through',
  'edge-lifts': 'edge lifts',
  'not-adhering': 'does not stick',
  'piece-missing': 'piece missing',
};

/** The least grade that what was ticked amounts to. */
const gradeOf = (body: Body): Grade => {
  const ticked = body.defects ?? [];
  let grade: Grade = body.grade;
  if (ticked.includes('edge-lifts')) grade = worse(grade, 'S3');
  if (ticked.includes('cracked-through') || ticked.includes('not-adhering') || (body.gap_width && body.gap_width.si > OPEN_GAP_M)) grade = worse(grade, 'S4');
  if (ticked.includes('piece-missing')) grade = worse(grade, 'S5');
  return grade;
};

/** Where the wind of the road gets under a loose edge: roof edges and cap seams, and whatever is sealed on the front. */
const windCanLift = (station: Station | undefined): boolean =>
  station !== undefined && (isA(station.looks, 'roof-edge') || isA(station.looks, 'cap-seam') || isA(station.looks, 'roof-field') || station.face === 'front');

/** Row of the defects table for a seal at this kind of station, from the narrower kind to the wider. */
const DEFECTS: readonly (readonly [kind: string, open: string, crazed?: string])[] = [
  ['antenna', 'antenna.base-leak'],
  ['ladder-rack-foot', 'ladder-rack-foot.bead'],
  ['opening-roof', 'opening-roof.seal-open', 'opening-roof.seal-crazed'],
  ['cord-hatch', 'cord-hatch.frame-open'],
  ['range-vent', 'range-vent.bead-open'],
  ['windscreen', 'windscreen.lip'],
  ['opening-wall', 'opening-wall.top-open', 'opening-wall.side-cracked'],
  ['roof-edge', 'roof-edge.bead-cracked'],
  ['cap-seam', 'cap-seam.open'],
  ['corner-moulding', 'corner-moulding.bead-open'],
  ['awning-rail', 'awning-rail.top-open'],
  ['slide-box', 'slide-box.flange-open'],
  ['gutter-spout', 'gutter-spout.back-open'],
  ['wall-moulded', 'wall-moulded.belt-open'],
  ['roof-metal', 'roof-metal.seam-open'],
  ['roof-pvc', 'roof-pvc.weld-open'],
];

const defectFor = (station: Station | undefined, body: Body, grade: Grade): string | undefined => {
  if (!station) return undefined;
  const row = DEFECTS.find(([kind]) => isA(station.looks, kind));
  if (!row) return undefined;
  if (body.defects?.includes('not-adhering') && isA(station.looks, 'opening-roof')) return 'opening-roof.not-adhering';
  const [, open, crazed] = row;
  return grade === 'S1' || grade === 'S2' ? crazed : open;
};

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  const grade = gradeOf(body);
  if (grade === 'S0') return [];
  const step = GRADES[grade];
  const here = [seen.entry.id];
  const ticked = (body.defects ?? []).map((d) => DEFECT_WORDS[d] ?? d);
  const details = [...ticked, ...(body.gap_width ? [`gap ${showTyped(body.gap_width, 'small-length')}`] : [])];
  const because: Because[] = [{ text: `Graded ${body.grade} on ${showDay(seen.day)}${details.length === 0 ? '' : `: ${details.join(', ')}`}.`, entries: here, source: SEAL_SCALE }];
  if (grade !== body.grade) because.push({ text: `What was seen there is ${grade} on the scale, and counts as that.`, entries: here, source: SEAL_SCALE });
  let { urgency, who } = step;
  if (step.urgency === 'before-rain') because.push({ text: 'Open or separated sealant lets water in: settled before rain.', entries: here, source: OPEN_SEAL });
  if (step.urgency === 'before-rain' && body.defects?.includes('edge-lifts') && windCanLift(scene.station)) {
    urgency = sooner(urgency, 'before-moving');
    because.push({ text: 'A loose edge here stands in the wind of the road, which can lift it further: settled before moving.', entries: here, source: ROAD_WIND });
  }
  if (grade === 'S5') because.push({ text: 'Strip it out and look for rot below before anything new is laid: for a professional.', entries: here, source: SEAL_SCALE });
  const method = methodOf(scene.station, scene.through('resealed').at(-1), { failed: grade === 'S5', notAdhering: body.defects?.includes('not-adhering') ?? false });
  if (step.urgency !== 'watch') because.push({ text: method.text, entries: [...here, ...method.entries], source: method.source });
  const defect = defectFor(scene.station, body, grade);
  return [
    {
      key: '',
      title: body.defects?.includes('not-adhering') ? 'Seal does not stick' : step.title,
      urgency,
      who,
      because,
      ...(defect === undefined ? {} : { defect }),
      ...(method.remedies.length > 0 && step.urgency !== 'watch' ? { remedies: method.remedies } : { remedies: [] }),
      proof_days: 7,
    },
  ];
};

export const sealGradeRule = defineRule({
  id: 'seal-grade',
  title: 'State of a seal',
  says: 'S0 is sound, S1 is watched, S2 is settled this season, S3 and S4 before rain, or before moving where the road wind can lift a loose edge, S5 before rain by a professional.',
  sources: [SEAL_SCALE, OPEN_SEAL, ROAD_WIND],
  reads: ['seal-grade'],
  example: { kind: 'seal-grade', body: { grade: 'S4', defects: ['cracked-through'] }, looks: 'vent-hatch', gives: 'before-rain' },
  judge,
  settles: (care) => REPAIRS.has(care.entry.kind),
});
