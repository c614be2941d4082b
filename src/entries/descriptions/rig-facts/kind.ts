import { applyFacts, type Rig } from '../../../rig';
import { defineKind, type Fields } from '../../../terms';
import { line, reading, readingIf } from '../../line';
import { span } from '../../span';

const walkable = [
  { id: 'yes', word: 'Yes', line: 'its maker says so' },
  { id: 'no', word: 'No' },
  { id: 'unknown', word: 'Not known', line: 'treated as no; a ladder at the back proves nothing' },
] as const;

const fields = {
  roof_walkable: { type: 'choice', label: 'May the roof be walked on', meaning: 'Only the maker’s word makes it so.', options: walkable, optional: true },
  warranty_months: { type: 'number', label: 'Inspection asked for by the warranty, every', quantity: 'months', limits: { least: 1, most: 60 }, optional: true },
  stud_spacing: {
    type: 'number',
    label: 'Wall frame members, middle to middle',
    meaning: 'Measured inside on a framed wall, by knocking or with a stud finder; a typical spacing is taken until then.',
    quantity: 'length',
    units: { us: 'in', metric: 'cm' },
    limits: span('length', 'm', 0.1, 2),
    usual: span('length', 'in', 10, 32),
    optional: true,
  },
  height_note: { type: 'text', label: 'Note on height', meaning: 'What stands highest, and when: antenna up, vent open.', most: 200, optional: true },
} as const satisfies Fields;

export const rigFacts = defineKind<Rig>()({
  id: 'rig-facts',
  group: 'description',
  version: 1,
  title: 'Facts about the rig',
  meaning: 'What is known about the rig as a whole and cannot be seen on it; what is not given stays as it was.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: {
    mode: 'describes',
    apply: (rig, { roof_walkable, warranty_months, stud_spacing }) =>
      applyFacts(rig, {
        ...(roof_walkable === undefined ? {} : { roof_walkable }),
        ...(warranty_months === undefined ? {} : { warranty_months: warranty_months.si }),
        ...(stud_spacing === undefined ? {} : { stud_spacing_m: stud_spacing.si }),
      }),
  },
  line: (body, preferences) =>
    line(
      body.roof_walkable && { yes: 'roof may be walked on', no: 'roof not to be walked on', unknown: 'not known whether the roof may be walked on' }[body.roof_walkable],
      body.warranty_months && `inspection every ${reading(body.warranty_months, 'months', preferences)}`,
      readingIf('wall frame every ', body.stud_spacing, 'length', preferences),
      body.height_note,
    ) || 'No facts given',
});
