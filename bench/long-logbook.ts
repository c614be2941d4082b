import { teller, typed } from '../apps/demo/teller';
import { asksAt, kindById, soundBody } from '../src/entries';
import type { Line } from '../src/logbook';
import { layoutFrom } from '../src/rig';
import type { Station } from '../src/terms';

export const LONG_RIG = '01890000-0000-7000-8000-0000000000b1';

const two = (n: number): string => String(n).padStart(2, '0');

/** A station's answer in one round: readings as numbers, beads that age, otherwise sound. Invented; only its size and mixture matter here. */
const answer = (kind: string, round: number, nth: number): object | undefined => {
  if (kind === 'tyre-pressure')
    return { pressure: typed(String(60 + ((round + nth) % 7)), 'gauge-pressure', 'psi'), tyre_temperature: typed(String(50 + (nth % 30)), 'temperature', 'f') };
  if (kind === 'tyre-tread') return { depth: typed('6', 'small-length', '32in') };
  if (kind === 'tyre-date-code') return { code: '2315' };
  if (kind === 'seal-grade') return { grade: `S${Math.min(4, Math.floor(((nth % 5) * (round + 1)) / 20))}` };
  const declared = kindById(kind);
  return declared ? soundBody(declared) : undefined;
};

/**
 * A long logbook of one rig: `entries` lines over ten years, rounds spread evenly.
 *
 * @param entries   how many lines in all
 * @param stations  how many stations; the largest layout with the most slides comes closest
 */
export const longLogbook = (entries: number, stations = 150): readonly Line[] => {
  const story = teller(LONG_RIG, '01890000-0000-7000-8000-0000000000b2', 'bench', (kind) => kindById(kind)?.version ?? 1);
  const layout = layoutFrom({ name: 'Long', kind: 'fifth-wheel', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' });
  if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
  const base = layout.value.stations;
  const more = Array.from({ length: Math.max(0, stations - base.length) }, (_, i): Station => {
    const like = base[i % base.length];
    if (!like) throw new Error('no stations');
    return { ...like, id: `${like.id}.more.${i}`, name: `${like.name}, ${i}` };
  });
  const all = [...base, ...more].slice(0, stations);
  const whole = { at: 'rig' } as const;
  story.tell({
    at: '2016-01-01T08:00:00Z',
    kind: 'rig-described',
    place: whole,
    body: { name: 'Long', kind: 'fifth-wheel', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' },
  });
  story.tell({ at: '2016-01-01T08:01:00Z', kind: 'layout-placed', place: whole, body: { layout: { ...layout.value, stations: all } } });
  const perRound = all.length;
  const rounds = Math.ceil((entries - 2) / perRound);
  const monthsApart = Math.max(1, Math.floor(120 / rounds));
  let left = entries - story.lines().length;
  for (let round = 0; left > 0; round += 1) {
    const month = (round * monthsApart) % 120;
    const day = `${2016 + Math.floor(month / 12)}-${two((month % 12) + 1)}-${two(1 + (Math.floor((round * monthsApart) / 120) % 28))}`;
    let minute = 0;
    for (const [nth, station] of all.entries()) {
      if (left === 0) break;
      const asked = asksAt(station, 'outside').asks;
      const kind = asked[round % asked.length];
      const body = kind ? answer(kind.id, round, nth) : undefined;
      if (!kind || body === undefined) continue;
      minute += 1;
      const at = `${day}T${two(8 + Math.floor(minute / 60))}:${two(minute % 60)}:00Z`;
      story.tell({ at, kind: kind.id, place: { at: 'station', station: station.id, side: 'outside' }, body });
      left -= 1;
    }
  }
  return story.lines();
};
