import { defineKind, type Fields } from '../../../terms';
import { line } from '../../line';

const chocks = [
  { id: 'away', word: 'Away', line: 'taken from the wheels, after hitching' },
  { id: 'in-place', word: 'Still in place' },
] as const;

const cords = [
  { id: 'stowed', word: 'Stowed', line: 'power, water and drain hoses off and put away' },
  { id: 'connected', word: 'Something still connected' },
] as const;

const jacks = [
  { id: 'up', word: 'Up', line: 'stabilisers, levellers, tongue jack or legs raised fully' },
  { id: 'down', word: 'Something still down' },
  { id: 'none', word: 'There are none' },
] as const;

const fields = {
  chocks: { type: 'choice', label: 'Wheel chocks', options: chocks },
  cords: { type: 'choice', label: 'Cords and hoses', options: cords },
  jacks: { type: 'choice', label: 'Jacks and legs', options: jacks },
} as const satisfies Fields;

export const stowed = defineKind()({
  id: 'stowed',
  group: 'observation',
  version: 1,
  title: 'Stowed for the road',
  meaning: 'What has no station of its own and must be away before the wheels turn: chocks, cords and hoses, jacks; each is answered for itself.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  line: (body) =>
    line(
      body.chocks === 'away' ? 'chocks away' : 'chocks still in place',
      body.cords === 'stowed' ? 'cords and hoses stowed' : 'cord or hose still connected',
      body.jacks === 'up' ? 'jacks up' : body.jacks === 'down' && 'a jack still down',
    ),
});
