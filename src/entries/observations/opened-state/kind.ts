import { defineKind, type Fields } from '../../../terms';
import { line, readingIf, wordOf } from '../../line';
import { span } from '../../span';

const states = [
  { id: 'shut', word: 'Shut' },
  { id: 'open', word: 'Open' },
  { id: 'not-known', word: 'Not known', line: 'counts as open to its full angle' },
] as const;

const fields = {
  state: { type: 'choice', label: 'It stands', options: states },
  angle: {
    type: 'number',
    label: 'Opened by',
    meaning: '0° shut, 180° folded flat back.',
    quantity: 'angle',
    limits: span('angle', 'deg', 0, 270),
    optional: true,
    showIf: { field: 'state', in: ['open'] },
  },
} as const satisfies Fields;

export const openedState = defineKind()({
  id: 'opened-state',
  group: 'observation',
  version: 1,
  title: 'Open or shut',
  meaning: 'How a door, hatch or window stands now, asked before a slide moves past it; it says nothing about its condition.',
  places: ['station'],
  sides: ['outside'],
  adds: (station, side) => side === 'outside' && station.hinge !== undefined,
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  line: (body, preferences) => line(body.state === 'not-known' ? 'open or shut: not known' : wordOf(states, body.state), readingIf('by ', body.angle, 'angle', preferences)),
});
