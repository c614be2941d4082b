import { describe, expect, it } from 'vitest';
import { type Job, readForecast, USUAL_CONDITIONS, type WindowsAsked, weatherWindows } from '../plan';
import { asTable, type Told } from '../plan/forecast/trial-forecast';
import { station, trialRig } from '../plan/trial-logbook';
import { type Instant, metres, parseInstant, radians } from '../units';
import { windowsDocument, windowsText } from '.';

/** The windows in words: a person must read when, why not, how surely, and on what it rests, and nothing that is not known. */
const at = (text: string): Instant => parseInstant(text) as Instant;
const START = '2026-10-04T04:00:00+00:00';
const RIG = trialRig([station('roof.vent', 'roof-vent', { reach: 'roof', name: 'Roof vent' })], {
  faces: [{ id: 'roof', name: 'Roof', outline_m: [], x_axis: '', y_axis: '', inside_name: '' }],
});
const JOB: Job = {
  id: 'job/roof.vent',
  title: 'Seal cracked',
  station: 'roof.vent',
  findings: [],
  urgency: 'before-rain',
  who: 'yourself',
  remedy: 'reseal-roof-strip',
  steps: [],
  minutes: [30, 60],
  cautions: [],
  materials: [{ material: 'lap-non-sag', words: 'Lap sealant', packages: 1, package_words: 'cartridge', because: '' }],
};
const FAIR: Told = { air_c: 15, dew_c: 4, wind_kmh: 8, cloud: 100, chance: 5, rain_mm: 0 };

const said = (hours: readonly Told[], more: Partial<WindowsAsked> = {}, system: 'us' | 'metric' = 'metric') => {
  const read = readForecast(asTable(START, hours));
  if (!read.ok) throw new Error(read.refusals[0]?.sentence);
  const asked: WindowsAsked = {
    jobs: [JOB],
    hours: read.value.hours,
    now: at(START),
    clock: () => -240,
    parked: { cover: 'open', heading: radians(0) },
    conditions: USUAL_CONDITIONS,
    colour: 'white',
    ...more,
  };
  const found = weatherWindows(RIG, asked, { latitude: radians(0.63), longitude: radians(-1.395), altitude: metres(270) });
  if (!found.ok) throw new Error(found.refusals[0]?.sentence);
  const told = { now: asked.now, clock: asked.clock, conditions: asked.conditions, source: 'Table of hours', issued: at('2026-10-04T01:00:00Z') };
  return { text: windowsText(found.value, RIG, told, { system, units: {} }), json: windowsDocument(found.value, RIG), found: found.value };
};

describe('windows in words', () => {
  const days = (n: number, told: Told): readonly Told[] => Array.from({ length: 24 * n }, () => told);

  it('tell the best day, the order of work, the window and its chance of failing, and the age of the forecast', () => {
    const { text } = said(days(3, FAIR));
    expect(text).toContain('Table of hours, made 3 h ago');
    expect(text).toMatch(/Best day: Sun 4 Oct, 1 of 1 job/);
    expect(text).toMatch(/Roof vent: Seal cracked\. \d\d:\d\d strip, clean and prime; \d\d:\d\d seal; done/);
    expect(text).toMatch(/do not travel before Sun 11 Oct/);
    expect(text).toMatch(/Open Sun 4 Oct 08:00 to 18:00, surface 1\d °C to \d\d °C/);
    expect(text).toMatch(/Chance that rain\s+spoils it, to 24 h after: 5 to \d+ %/);
    expect(said(days(3, FAIR), {}, 'us').text).toMatch(/surface \d\d °F/);
  });

  it('say why there is none and until when, what is missing, and that a forecast is over', () => {
    const cold = said([...days(2, { ...FAIR, air_c: -8, dew_c: -14 }), ...days(1, { ...FAIR, dew_c: 15 })]);
    expect(cold.text).toMatch(/No window in this forecast: too cold until Tue 6 Oct/);
    expect(cold.text.replace(/\s+/g, ' ')).toMatch(/Closed Sun 4 Oct: 08:00 to \d\d:00 too cold \(surface down to −\d+ °C; 4 °C needed\)/);
    const hole = said(days(2, { ...FAIR, wind_kmh: null }));
    expect(hole.text).toContain('48 of 48 hours ahead lack something');
    expect(hole.text).toContain('the forecast lacks wind');
    const over = said(days(1, FAIR), { now: at('2026-11-04T04:00:00Z') });
    expect(over.text).toContain('lies in the past');
    expect(over.text).not.toContain('Best day');
  });

  it('name no figure that is not one', () => {
    for (const hours of [days(2, FAIR), days(2, { ...FAIR, chance: null }), days(2, { ...FAIR, air_c: -20, dew_c: null })]) {
      const { text, json } = said(hours);
      expect(text).not.toMatch(/NaN|undefined|Infinity|not known %/);
      expect(JSON.parse(json)).toMatchObject({ format: 'seamward-windows', version: 1, rig: { id: 'trial' } });
    }
  });

  it('stand in the JSON with every gate and every instant', () => {
    const { json, found } = said(days(2, FAIR));
    const { windows } = JSON.parse(json) as { readonly windows: { readonly jobs: readonly { readonly windows: readonly { readonly starts: number; readonly day: string }[] }[] } };
    expect(windows.jobs[0]?.windows.map((w) => w.starts)).toEqual(found.jobs[0]?.windows.map((w) => w.starts));
    expect(windows.jobs[0]?.windows[0]?.day).toBe('2026-10-04');
  });
});
