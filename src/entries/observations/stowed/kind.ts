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

const hitches = [
  { id: 'coupled-and-pinned', word: 'Coupled and pinned', line: 'the latch or jaws shut by themselves, the pin is in, and lifting or pulling does not part them' },
  { id: 'not-coupled', word: 'Not coupled, or not pinned' },
  { id: 'none', word: 'Nothing is towed' },
  { id: 'not-looked', word: 'Not looked at' },
] as const;

const chains = [
  { id: 'attached', word: 'Attached', line: 'crossed under the tongue, latched, with slack to turn and clear of the road' },
  { id: 'not-attached', word: 'Not attached' },
  { id: 'none', word: 'None on this hitch', line: 'as on a fifth wheel in the bed of a truck' },
] as const;

const breakaways = [
  { id: 'attached', word: 'Attached', line: 'to the towing vehicle itself, not to ball or chains' },
  { id: 'not-attached', word: 'Not attached' },
  { id: 'none', word: 'There is none', line: 'as on a trailer without brakes of its own' },
] as const;

const lamps = [
  { id: 'checked', word: 'Seen to work', line: 'plugged in; tail, brake and turn lamps seen from behind' },
  { id: 'fail', word: 'Something does not work' },
  { id: 'not-looked', word: 'Not looked at' },
] as const;

const coupled = { field: 'hitch', in: ['coupled-and-pinned'] } as const;

const fields = {
  chocks: { type: 'choice', label: 'Wheel chocks', options: chocks },
  cords: { type: 'choice', label: 'Cords and hoses', options: cords },
  jacks: { type: 'choice', label: 'Jacks and legs', options: jacks },
  hitch: { type: 'choice', label: 'Hitch', options: hitches },
  chains: { type: 'choice', label: 'Safety chains', options: chains, showIf: coupled },
  breakaway: { type: 'choice', label: 'Breakaway cable', options: breakaways, showIf: coupled },
  lamps: { type: 'choice', label: 'Tow plug and lamps', options: lamps, showIf: coupled },
} as const satisfies Fields;

export const stowed = defineKind()({
  id: 'stowed',
  group: 'observation',
  version: 2,
  title: 'Stowed and hitched for the road',
  meaning:
    'What has no station of its own and must be right before the wheels turn: chocks, cords and hoses, jacks, and on a towed rig hitch, chains, breakaway cable and plug; each is answered for itself.',
  places: ['rig'],
  sides: ['outside'],
  repeatable: false,
  fields,
  fold: { mode: 'latest' },
  upcasts: {
    // The first version did not ask about the hitch.
    1: (body: Readonly<Record<string, unknown>>) => ({ ...body, hitch: 'not-looked' }),
  },
  line: (body) =>
    line(
      body.chocks === 'away' ? 'chocks away' : 'chocks still in place',
      body.cords === 'stowed' ? 'cords and hoses stowed' : 'cord or hose still connected',
      body.jacks === 'up' ? 'jacks up' : body.jacks === 'down' && 'a jack still down',
      body.hitch === 'coupled-and-pinned' ? 'coupled and pinned' : body.hitch === 'not-coupled' && 'not coupled or not pinned',
      body.chains === 'attached' ? 'chains attached' : body.chains === 'not-attached' && 'chains not attached',
      body.breakaway === 'attached' ? 'breakaway cable attached' : body.breakaway === 'not-attached' && 'breakaway cable not attached',
      body.lamps === 'checked' ? 'lamps seen to work' : body.lamps === 'fail' && 'a lamp does not work',
    ),
});
