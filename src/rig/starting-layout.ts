import type { FacePoint } from '../terms';
import { accept, type Result, refuse } from '../units';
import { baseLayout, basePieces, counter, type Piece } from './base-layout';
import { drawingFaults } from './drawing-faults';
import { bodyFace, facesOfSlide } from './faces';
import { fitted } from './fit';
import type { Answers, Axle, Layout, Slide } from './rig';
import { awningFitted, endsNotThere, seamsCut, seamsOfCovering } from './seams';
import { toMillimetre } from './shapes';
import { sizesFrom } from './sizes';
import { slidePieces, slidesFor, takenAlong, type Unnamed } from './slide-outs';
import { areaPieces, stationsOf } from './stations';
import { stretched, stretchedOutline, stretchTo } from './stretch';
import { archesOver, axlesFor, tyres } from './wheels';

/** A starting layout, and what was left out of it for want of room: said to the person, who adds what theirs has. */
export type StartingLayout = { readonly layout: Layout; readonly left_out: readonly string[] };

const onSlide = (face: string): boolean => /^s\d+-/.test(face);

/** Parts that only trailers without dual wheels or only slides bring are given ids after the layout's own, so that the same answers give the same ids. */
const identified = (own: readonly Piece[], more: readonly Unnamed[]): readonly Piece[] => {
  const id = counter();
  const seen = own.map((p) => ({ ...p, id: p.id }));
  for (const p of seen) id(p.face, p.part);
  return [...seen, ...more.map((p) => ({ ...p, id: id(p.face, p.part) }))];
};

const rounded = (slide: Slide): Slide => ({ ...slide, x_m: toMillimetre(slide.x_m), y_m: toMillimetre(slide.y_m), w_m: toMillimetre(slide.w_m), h_m: toMillimetre(slide.h_m) });

/**
 * A drawn rig from a few answers: every face, axle, slide-out and station with coordinates, all sizes typical.
 *
 * @param answers  kind, sizes where known [m], skin, roof covering, axles, tyre size as moulded, slide-outs on each side
 * @returns        the layout with what was left out for want of room; or every refusal, each naming its field
 * @valid          sizes, axles and slide-outs within kinds.json; within them no station overlaps another or leaves its face (checked)
 * @assumes        our own typical layouts, no real model; most part sizes are from memory, unconfirmed: measure yours
 */
export const startingLayout = (answers: Answers): Result<StartingLayout> => {
  const made = drawn(answers);
  return made.ok || made.refusals[0]?.code !== 'cannot-be-drawn' ? made : blamed(answers, made);
};

type Blame = {
  readonly field: 'tyre' | 'slides_road' | 'slides_curb' | 'axles';
  readonly without: (answers: Answers) => Answers;
  readonly expected: string;
  readonly sentence: (given: string) => string;
};

/** Answers that may be what leaves no room, the easiest to put right first. */
const BLAMES: readonly Blame[] = [
  {
    field: 'tyre',
    without: ({ tyre: _, ...rest }) => rest,
    expected: 'a tyre with room beside doors and lamps',
    sentence: (given) => `Tyres ${given} leave no room for the doors and lamps beside the wheels at this length. Check the size on the sidewall, and the length.`,
  },
  {
    field: 'slides_curb',
    without: (answers) => ({ ...answers, slides_curb: 0 }),
    expected: 'slide-outs that leave room for doors, wheels, lamps and exits',
    sentence: (given) =>
      `${given} slide-out${given === '1' ? '' : 's'} on the curb side leave${given === '1' ? 's' : ''} no room for the entry door or an exit at this length. Choose fewer, and add the rest as openings and seams.`,
  },
  {
    field: 'slides_road',
    without: (answers) => ({ ...answers, slides_road: 0 }),
    expected: 'slide-outs that leave room for doors, wheels, lamps and exits',
    sentence: (given) =>
      `${given} slide-out${given === '1' ? '' : 's'} on the road side leave${given === '1' ? 's' : ''} no room for an exit at this length. Choose fewer, and add the rest as openings and seams.`,
  },
  {
    field: 'axles',
    without: ({ axles: _, ...rest }) => rest,
    expected: 'axles that leave room for doors and lamps',
    sentence: (given) => `${given} axles leave no room for the doors and lamps beside the wheels at this length. Check the number and the length.`,
  },
];

/** Names the answer without which the drawing could be made, so that a person knows what to change. */
const blamed = (answers: Answers, made: Result<StartingLayout>): Result<StartingLayout> => {
  for (const { field, without, expected, sentence } of BLAMES) {
    const given = answers[field];
    if (given !== undefined && drawn(without(answers)).ok) return refuse({ code: 'no-room', path: field, expected, received: String(given), sentence: sentence(String(given)) });
  }
  return made;
};

const drawn = (answers: Answers): Result<StartingLayout> => {
  const sizes = sizesFrom(answers);
  if (!sizes.ok) return sizes;
  const base = baseLayout(answers.kind);
  const s = stretchTo(base, sizes.value);
  const outlines = new Map<string, readonly FacePoint[]>();
  for (const [id, outline] of Object.entries(base.faces)) for (const face of id === 'side' ? ['curb', 'road'] : [id]) outlines.set(face, stretchedOutline(face, outline, s, base));

  const axles = axlesFor(base, answers, sizes.value, s);
  if (!axles.ok) return axles;
  const asDrawn = basePieces(base);
  const body = archesOver(
    stretched(
      asDrawn.filter((p) => !onSlide(p.face)),
      s,
      base,
    ),
    asDrawn,
    base,
    axles.value,
  );
  const plan = slidesFor(base, answers, sizes.value, s, outlines.get('road') ?? [], body);
  if (!plan.ok) return plan;
  const slides = plan.value.slides.map(rounded);
  const slideFaceList = slides.flatMap(facesOfSlide);
  for (const face of slideFaceList) outlines.set(face.id, face.outline_m);

  const dropped = endsNotThere(answers, body);
  const along = takenAlong(slides, body);
  const more = slidePieces(
    base,
    { ...plan.value, slides },
    asDrawn.filter((p) => onSlide(p.face)),
    s,
    new Set([...along.values()].map((e) => e.slide ?? '')),
  );
  const own = [...tyres(axles.value, s.width), ...body.filter((p) => !dropped.has(p.part) && !along.has(p.id))];
  const everything = identified(own, [...more, ...along.values(), ...seamsOfCovering(answers, own, outlines, base, s)]);
  const fit = fitted(everything, outlines, slides);
  if (!fit.ok) return fit;
  const awned = awningFitted(fit.value.pieces, outlines);
  const hadAwning = fit.value.pieces.some((p) => p.part === 'awning-arm');
  const left_out = hadAwning && !awned.some((p) => p.part === 'awning-arm') ? [...fit.value.left_out, 'Awning'] : fit.value.left_out;
  const pieces = seamsCut(awned);

  const faces = [...[...outlines.keys()].filter((id) => !onSlide(id)).map((id) => bodyFace(id, outlines.get(id) ?? [])), ...slideFaceList];
  const levels = {
    skirt_m: base.levels.skirt,
    floor_m: base.levels.floor,
    wall_top_m: toMillimetre(base.levels.wall_top + s.rise),
    roof_top_m: toMillimetre(base.levels.roof_top + s.rise),
  };
  const hitch = base.overall.hitch;
  const layout: Layout = {
    overall: {
      length_m: toMillimetre(sizes.value.length),
      body_length_m: toMillimetre(sizes.value.length - hitch - (base.overall.length - hitch - base.overall.body)),
      width_m: toMillimetre(sizes.value.width),
      height_m: toMillimetre(sizes.value.height),
      hitch_ahead_m: hitch,
    },
    levels,
    faces,
    axles: axles.value as readonly Axle[],
    slides,
    stations: stationsOf([...pieces, ...areaPieces(faces)], { answers, levels, slides, faces, axles: axles.value, width: s.width }),
  };
  const faults = drawingFaults(layout);
  const first = faults[0];
  if (first)
    return refuse({
      code: 'cannot-be-drawn',
      path: 'layout',
      expected: 'a drawing in which nothing overlaps and nothing leaves its face',
      received: first,
      sentence: `These answers do not make a sound drawing: ${first}. Change the sizes or the number of slide-outs, and move or add the rest by hand.`,
    });
  return accept({ layout, left_out });
};

/** The layout alone. */
export const layoutFrom = (answers: Answers): Result<Layout> => {
  const made = startingLayout(answers);
  return made.ok ? accept(made.value.layout) : made;
};
