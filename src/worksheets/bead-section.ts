import { BEAD_SHAPES, type BeadShapeId, beadSection, beadShape, wetSection } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, metres, refuse, share } from '../units';
import { put, step } from './working';

const shapes = BEAD_SHAPES.map((s) => s.id) as readonly BeadShapeId[] as readonly [BeadShapeId, ...BeadShapeId[]];

/** Thinner than a coat of paint is no bead. [m] */
const LEAST_DEPTH = 0.0002;

export const beadSectionSheet = defineWorksheet({
  id: 'bead-section',
  title: 'Section of a bead',
  tells: 'How thick a bead is across, dry as wanted and wet as laid.',
  example: { shape: 'cap', width_mm: 25, depth_mm: 6 },
  inputs: {
    shape: { type: 'word', meaning: BEAD_SHAPES.map((s) => `${s.id}: ${s.words}`).join('; '), words: shapes },
    width_mm: { type: 'number', quantity: 'small-length', unit: 'mm', meaning: 'width, leg of a fillet or diameter of a round bead', limits: { least: 0.0005, most: 0.15 } },
    depth_mm: { type: 'number', quantity: 'small-length', unit: 'mm', meaning: 'depth or height, for the shapes that need it', limits: { least: 0, most: 0.05 }, otherwise: 0 },
    solids_percent: {
      type: 'number',
      quantity: 'share',
      unit: 'percent',
      meaning: 'share of the wet volume that stays; 100 for a sealant that cures without shrinking',
      limits: { least: 0.2, most: 1 },
      otherwise: 100,
    },
  },
  results: {
    section_mm2: { type: 'number', quantity: 'area', unit: 'mm2', meaning: 'section of the dry bead', decimals: 0 },
    wet_section_mm2: { type: 'number', quantity: 'area', unit: 'mm2', meaning: 'section to lay', decimals: 0 },
  },
  calculate: ({ shape, width_mm: w, depth_mm: d, solids_percent }) => {
    const s = beadShape(shape as BeadShapeId);
    if (s.needs_depth && d < LEAST_DEPTH)
      return refuse({
        code: d === 0 ? 'missing' : 'below-limit',
        path: 'depth_mm',
        expected: `a depth of ${put(LEAST_DEPTH, 'small-length', 'mm', 1)} mm or more for ${s.id}`,
        received: d === 0 ? 'nothing' : `${put(d, 'small-length', 'mm', 3)} mm`,
        sentence: `A ${s.id} bead needs its depth or height as well.`,
      });
    const dry = beadSection(s.id as BeadShapeId, metres(w), metres(d));
    const wet = wetSection(dry, share(solids_percent));
    const mm = (si: number): string => put(si, 'small-length', 'mm', 1);
    const mm2 = (si: number): string => put(si, 'area', 'mm2', 0);
    return accept({
      result: { section_mm2: dry, wet_section_mm2: wet },
      working: [
        step(`Section: ${s.words}`, s.formula, s.needs_depth ? `w = ${mm(w)} mm, d = ${mm(d)} mm` : `w = ${mm(w)} mm`, `${mm2(dry)} mm²`),
        step('To lay wet', 'A / solids by volume', `${mm2(dry)} mm² / ${put(solids_percent, 'share', 'fraction', 2)}`, `${mm2(wet)} mm²`),
      ],
    });
  },
  sources: [
    ours('closed forms of plane geometry'),
    seen('Factor 0.9 of a tooled joint: worked example of a public calculator'),
    seen('Solids of 55 to 63 % by weight on one data sheet of a solvent-borne lap sealant'),
  ],
  limits: ['An even bead. Data sheets mostly print solids by weight, which is higher than by volume: the bead needed is then larger still.'],
  cautions: ['Solvent-borne sealants give off flammable vapour that is heavier than air: work outdoors or aired, pilot lights and appliances off, gloves on.'],
});
