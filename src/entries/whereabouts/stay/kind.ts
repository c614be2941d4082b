import { defineKind, type Fields } from '../../../terms';
import { line, reading, readingIf, wordIn } from '../../line';
import { span } from '../../span';

const covers = [
  { id: 'open', word: 'In the open' },
  { id: 'roofed', word: 'Under a roof' },
  { id: 'covered', word: 'Under a cover' },
  { id: 'indoors', word: 'Indoors' },
] as const;

const grounds = [
  { id: 'paved', word: 'Paved' },
  { id: 'gravel', word: 'Gravel' },
  { id: 'grass', word: 'Grass' },
  { id: 'soil', word: 'Bare soil' },
  { id: 'sand', word: 'Sand' },
  { id: 'other', word: 'Something else' },
] as const;

const slides = [
  { id: 'in', word: 'Slides in' },
  { id: 'out', word: 'Slides out' },
  { id: 'some-out', word: 'Some slides out' },
  { id: 'none', word: 'No slides' },
] as const;

const tilt = span('angle', 'deg', -15, 15);
const usualTilt = span('angle', 'deg', -6, 6);

const fields = {
  place_name: { type: 'text', label: 'Where', meaning: 'A name you will know it by; no address is needed.', most: 120 },
  heading: {
    type: 'number',
    label: 'Heading of the nose',
    meaning: 'Clockwise from north: 0 north, 90 east.',
    quantity: 'angle',
    limits: span('angle', 'deg', 0, 360),
    optional: true,
  },
  nose_up: { type: 'number', label: 'Nose up', meaning: 'Negative when the nose is low.', quantity: 'angle', limits: tilt, usual: usualTilt, optional: true },
  curb_up: { type: 'number', label: 'Curb side up', meaning: 'Negative when the curb side is low.', quantity: 'angle', limits: tilt, usual: usualTilt, optional: true },
  cover: { type: 'choice', label: 'Overhead', options: covers, optional: true },
  ground: { type: 'choice', label: 'Ground', options: grounds, optional: true },
  slides: { type: 'choice', label: 'Slides', options: slides, optional: true },
} as const satisfies Fields;

export const stay = defineKind()({
  id: 'stay',
  group: 'whereabouts',
  version: 1,
  title: 'Stay',
  meaning: 'A span of time parked in one place; its days are those of the entry, and a stay that goes on has begun at its instant.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'series' },
  line: (body, preferences) =>
    line(
      body.place_name,
      body.heading && `heading ${reading(body.heading, 'angle', preferences)}`,
      readingIf('nose up ', body.nose_up, 'angle', preferences),
      readingIf('curb side up ', body.curb_up, 'angle', preferences),
      wordIn(covers, body.cover),
      wordIn(grounds, body.ground),
      wordIn(slides, body.slides),
    ),
});
