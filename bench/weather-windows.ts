import { type Job, readForecast, USUAL_CONDITIONS, weatherWindows } from '../src/plan';
import { blankRig, layoutFrom, type Rig } from '../src/rig';
import { instant, metres, radians } from '../src/units';
import { ms, type Row } from './table';
import { interleaved, type Timing } from './timing';

const JOBS = 40;
const HOURS = 168;
const FACES = ['roof', 'front', 'curb', 'rear', 'road', 'under'];
const START = Date.UTC(2026, 9, 4, 4);

/** A week of changing weather, invented: no two hours alike, rain every third day. */
const table = (): string => {
  const lines = Array.from({ length: HOURS }, (_, i) => {
    const air = 12 + 8 * Math.sin(((i - 9) / 24) * 2 * Math.PI) + (i % 5) / 10;
    const wet = Math.floor(i / 24) % 3 === 2;
    return `${new Date(START + i * 3_600_000).toISOString()},${air.toFixed(1)},${(6 + (i % 7) / 10).toFixed(1)},${5 + (i % 11)},${(i * 7) % 100},${wet ? 60 : i % 10},${wet ? 1 : 0}`;
  });
  return ['time,air_temperature_c,dew_point_c,wind_kmh,cloud_percent,rain_chance_percent,rain_mm', ...lines].join('\n');
};

const rig = (): Rig => {
  const layout = layoutFrom({ name: 'Bench', kind: 'travel-trailer', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' });
  if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
  return { ...blankRig('bench'), name: 'Bench', ...layout.value };
};

const MATERIALS = ['lap-self-levelling', 'lap-non-sag', 'hybrid', 'polyurethane', 'butyl-tape'];

/** Forty beads round the rig, on all six faces, of five kinds of product. */
const jobs = (on: Rig): readonly Job[] =>
  Array.from({ length: JOBS }, (_, i): Job => {
    const stations = on.stations.filter((s) => s.face === FACES[i % FACES.length]);
    const station = stations[i % stations.length];
    if (!station) throw new Error(`no station on ${FACES[i % FACES.length]}`);
    const material = MATERIALS[i % MATERIALS.length] ?? '';
    return {
      id: `job/${i}`,
      title: 'Seal open',
      station: station.id,
      findings: [],
      urgency: 'before-rain',
      who: 'yourself',
      remedy: 'reseal-roof-strip',
      steps: [],
      minutes: [30, 90],
      cautions: [],
      materials: [{ material, words: material, packages: 1, package_words: 'cartridge', because: '' }],
    };
  });

/** Windows of a week for forty jobs on six faces, in both colours; against reading the same forecast from its file. */
export const weatherRow = (): Row => {
  const on = rig();
  const text = table();
  const read = readForecast(text);
  if (!read.ok) throw new Error(read.refusals[0]?.sentence);
  const { hours } = read.value;
  const asked = {
    jobs: jobs(on),
    hours,
    now: instant(START),
    clock: () => -240,
    parked: { cover: 'open', heading: radians(2.2) } as const,
    conditions: USUAL_CONDITIONS,
  };
  const site = { latitude: radians(0.63), longitude: radians(-1.395), altitude: metres(270) };
  const windows = () => {
    const found = weatherWindows(on, asked, site);
    if (!found.ok || found.value.jobs.length !== JOBS || !found.value.best) throw new Error('the bench finds no windows');
  };
  const times = interleaved({ windows, file: () => readForecast(text) }, 25);
  const { windows: t, file } = times as { readonly windows: Timing; readonly file: Timing };
  return {
    what: `windows for ${JOBS} jobs over ${HOURS / 24} days of hours on ${FACES.length} faces`,
    goal: '30 ms',
    reached: `${ms(t.median)} (${ms(t.least)} to ${ms(t.most)})`,
    ratio: `${(t.median / file.median).toFixed(1)} × reading the forecast from its table`,
    met: t.median <= 30,
  };
};
