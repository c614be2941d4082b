import { teller, typed } from '../apps/demo/teller';
import { kindById } from '../src/entries';
import { type Line, writeLogbook } from '../src/logbook';
import { type Answers, layoutFrom } from '../src/rig';
import type { FacePoint, Side } from '../src/terms';

/**
 * Two invented rigs that read high and do not leak: one has stood in a damp shed, the other sweats in a cold night.
 * The figures of their air are chosen so that tables outside this project name what follows: air of 20 °C and 85 % brings
 * wood to about 18 % (Wood Handbook, FPL-GTR-190, table 4-2: 70 °F, 85 %: 17.9 %), and air of 18 °C and 70 % has its dew
 * point near 12.4 °C, well above a wall of 8 °C.
 */
const METER = 'Two-pin, black';

const answers = (name: string): Answers => ({
  name,
  kind: 'travel-trailer',
  year: 2009,
  skin: 'corrugated-aluminium',
  construction: 'hung',
  roof: 'epdm',
  slides_road: 0,
  slides_curb: 0,
});

const celsius = (text: string) => typed(text, 'temperature', 'c');
const percent = (text: string) => typed(text, 'relative-humidity', 'percent');

type Wall = { readonly face: string; readonly side?: Side; readonly at: readonly (readonly [...FacePoint, percent: string])[] };

const begin = (rig: string, device: string, name: string, at: string) => {
  const story = teller(rig, device, 'Kim', (kind) => kindById(kind)?.version ?? 1);
  const told = answers(name);
  const layout = layoutFrom(told);
  if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
  const whole = { at: 'rig' } as const;
  const { kind, skin, construction, roof } = told;
  story.tell({ at, kind: 'rig-described', place: whole, body: { name, kind, year: typed('2009', 'count', 'count'), skin, construction, roof } });
  story.tell({ at, kind: 'layout-placed', place: whole, body: { layout: layout.value } });
  story.tell({
    at,
    kind: 'meter',
    place: whole,
    body: { name: METER, scale: 'pin', calibrated_at: celsius('20'), correction: 'linear', repeatability: typed('0.5', 'moisture-content', 'percent') },
  });
  const read = (when: string, { face, side = 'inside', at: points }: Wall, wood_c: string, more: Readonly<Record<string, unknown>>): void => {
    points.forEach(([x, y, figure], i) => {
      const minute = String(Math.floor(i / 2)).padStart(2, '0');
      story.tell({
        at: `${when.slice(0, 14)}${minute}:${i % 2 === 0 ? '00' : '30'}${when.slice(19)}`,
        kind: 'wood-moisture-pin',
        place: { at: 'point', face, side, point_m: [x, y] },
        body: { reading: typed(figure, 'moisture-content', 'percent'), wood_temperature: celsius(wood_c), material: 'plywood', ...more, meter: METER },
      });
    });
  };
  return { story, read, whole };
};

/** Indoors for four months at 20 °C and 85 %: every wall reads about 18 %, the dry places too. */
const dampShed = (): readonly Line[] => {
  const { story, read, whole } = begin('01890000-0000-7000-8000-000000000002', '01890000-0000-7000-8000-0000000000d2', 'Bittern', '2026-06-01T09:00:00-04:00');
  story.tell({
    at: '2026-10-10T08:50:00-04:00',
    observed_at: '2026-06-01/2026-10-10',
    kind: 'stay',
    place: whole,
    body: { place_name: 'Shed by the pond', cover: 'indoors', ground: 'soil', slides: 'none' },
  });
  story.tell({
    at: '2026-10-10T08:55:00-04:00',
    observed_at: '2026-06-01/2026-10-10',
    kind: 'lived-air',
    place: whole,
    body: { temperature: celsius('20'), relative_humidity: percent('85') },
  });
  const dry = { dry_reference: true, surface: 'dry' };
  read(
    '2026-10-10T09:00:00-04:00',
    {
      face: 'road',
      at: [
        [2.2, 1.3, '17.8'],
        [3.4, 1.3, '18.1'],
        [5.2, 1.4, '17.9'],
        [6.6, 1.3, '18.2'],
      ],
    },
    '20',
    dry,
  );
  read(
    '2026-10-10T10:00:00-04:00',
    {
      face: 'road',
      at: [
        [0.6, 1.2, '18.3'],
        [0.9, 1.3, '17.7'],
        [1.3, 1.2, '18.4'],
        [1.6, 1.0, '18.0'],
        [0.9, 2.4, '17.6'],
        [2.8, 2.4, '18.2'],
        [4.4, 1.0, '18.5'],
        [6.0, 2.4, '17.9'],
        [7.2, 1.4, '18.1'],
        [7.2, 1.0, '17.8'],
      ],
    },
    '20',
    { surface: 'dry' },
  );
  read(
    '2026-10-10T11:00:00-04:00',
    {
      face: 'curb',
      at: [
        [1.2, 1.2, '18.0'],
        [2.6, 1.4, '17.8'],
        [5.0, 1.3, '18.2'],
        [6.8, 1.2, '18.1'],
      ],
    },
    '20',
    dry,
  );
  read(
    '2026-10-10T12:00:00-04:00',
    {
      face: 'curb',
      at: [
        [0.6, 1.3, '18.2'],
        [1.9, 1.2, '17.7'],
        [2.0, 2.4, '18.4'],
        [4.2, 1.1, '18.3'],
        [5.8, 2.4, '17.8'],
        [7.3, 1.1, '18.5'],
      ],
    },
    '20',
    { surface: 'dry' },
  );
  return story.lines();
};

/** A night of frost with the heater low: beads of water on the wall below two windows, the meter jumps, and by noon it is gone. */
const coldNight = (): readonly Line[] => {
  const { story, read, whole } = begin('01890000-0000-7000-8000-000000000003', '01890000-0000-7000-8000-0000000000d3', 'Dipper', '2025-11-20T09:00:00-05:00');
  story.tell({
    at: '2026-01-14T06:50:00-05:00',
    observed_at: '2025-12-20/2026-01-14',
    kind: 'stay',
    place: whole,
    body: { place_name: 'Ridge site', cover: 'open', ground: 'gravel', slides: 'none' },
  });
  story.tell({
    at: '2026-01-14T06:55:00-05:00',
    observed_at: '2025-12-20/2026-01-13',
    kind: 'lived-air',
    place: whole,
    body: { temperature: celsius('18'), relative_humidity: percent('60') },
  });
  const below = [
    [1.0, 1.35],
    [1.3, 1.35],
    [1.15, 1.2],
  ] as const;
  for (const [i, [x, y]] of below.entries())
    story.tell({
      at: `2026-01-14T07:0${i}:00-05:00`,
      kind: 'air-and-skin',
      place: { at: 'point', face: 'curb', side: 'inside', point_m: [x, y] },
      body: { air_temperature: celsius('18'), relative_humidity: percent('70'), skin_temperature: celsius('8') },
    });
  story.tell({
    at: '2026-01-14T07:05:00-05:00',
    kind: 'inside-signs',
    place: { at: 'point', face: 'curb', side: 'inside', point_m: [1.15, 1.2] },
    body: { verdict: 'something-wrong', signs: ['water'] },
    note: 'Beads of water all over the cold wall.',
  });
  read(
    '2026-01-14T08:00:00-05:00',
    {
      face: 'curb',
      at: [
        [3.6, 1.3, '11.6'],
        [5.0, 1.3, '11.4'],
        [6.8, 1.2, '11.9'],
      ],
    },
    '12',
    { dry_reference: true, surface: 'dry' },
  );
  read('2026-01-14T09:00:00-05:00', { face: 'curb', at: below.map(([x, y], i) => [x, y, ['23.5', '22.0', '24.5'][i] ?? ''] as const) }, '8', { surface: 'wet' });
  // Beside them, wiped dry: what stays on the wall still lifts the figure.
  read(
    '2026-01-14T10:00:00-05:00',
    {
      face: 'curb',
      at: [
        [0.9, 1.2, '20.5'],
        [1.4, 1.2, '19.8'],
      ],
    },
    '8',
    { surface: 'dry' },
  );
  return story.lines();
};

/** As files: an app takes them in, the command reads them. */
export const DAMP_SHED = (): string => writeLogbook(dampShed());
export const COLD_NIGHT = (): string => writeLogbook(coldNight());
