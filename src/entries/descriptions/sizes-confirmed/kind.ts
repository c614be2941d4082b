import { applySize, type Overall, type Rig } from '../../../rig';
import { defineKind, type Fields } from '../../../terms';
import type { Typed } from '../../../units';
import { line, readingIf } from '../../line';
import { span } from '../../span';

const size = (label: string, least_m: number, most_m: number) =>
  ({ type: 'number', label, quantity: 'length', limits: span('length', 'm', least_m, most_m), optional: true }) as const;

const fields = {
  length: size('Length over all', 1.5, 20),
  body_length: size('Length of the body', 1.5, 20),
  width: size('Width', 1, 4),
  height: size('Height', 0.8, 5),
} as const satisfies Fields;

const OVERALL: Readonly<Record<keyof typeof fields, keyof Overall>> = { length: 'length_m', body_length: 'body_length_m', width: 'width_m', height: 'height_m' };

export const sizesConfirmed = defineKind<Rig>()({
  id: 'sizes-confirmed',
  group: 'description',
  version: 1,
  title: 'Sizes confirmed',
  meaning: 'Sizes of the whole rig that a person has measured; the drawing stops calling these typical. It moves no station.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  refuse: (body) =>
    Object.keys(body).length > 0
      ? []
      : [{ code: 'says-nothing', path: '', expected: 'at least one size', received: 'none', sentence: 'Give at least one size that was measured.' }],
  fold: {
    mode: 'describes',
    apply: (rig, body) => (Object.entries(body) as [keyof typeof fields, Typed][]).reduce((to, [key, value]) => applySize(to, OVERALL[key], value.si), rig),
  },
  line: (body, preferences) =>
    line(
      readingIf('length ', body.length, 'length', preferences),
      readingIf('body ', body.body_length, 'length', preferences),
      readingIf('width ', body.width, 'length', preferences),
      readingIf('height ', body.height, 'length', preferences),
    ),
});
