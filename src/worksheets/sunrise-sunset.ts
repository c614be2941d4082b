import { RIM, sunDay } from '../science';
import { defineWorksheet, memory, seen } from '../terms';
import { accept, figure, parseDay, refuse } from '../units';
import { inDegrees, showTime, siteFrom, siteInputs } from './sun-inputs';
import { step } from './working';

const NONE_UP = 'none: the sun stays up';
const NONE_DOWN = 'none: the sun stays down';

export const sunriseSunset = defineWorksheet({
  id: 'sunrise-sunset',
  title: 'Sunrise and sunset',
  tells: 'When the sun rises, stands highest and sets at a place on a day, and how long there is daylight.',
  example: { latitude_deg: 39, longitude_deg: -105, day: '2026-08-02' },
  inputs: { ...siteInputs, day: { type: 'text', meaning: 'the day at that place, as year-month-day', example: '2026-08-02' } },
  results: {
    rise: { type: 'text', meaning: 'when its upper rim comes up, in UTC' },
    noon: { type: 'text', meaning: 'when it stands highest, in UTC' },
    set: { type: 'text', meaning: 'when its upper rim goes down, in UTC' },
    highest_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'how high it stands then', decimals: 1 },
    daylight_h: { type: 'number', quantity: 'duration', unit: 'h', meaning: 'how long some of it is seen', decimals: 2 },
  },
  calculate: (given) => {
    const day = parseDay(given.day.trim());
    if (day === undefined)
      return refuse({
        code: 'no-such-day',
        path: 'day',
        expected: 'a day such as 2026-08-02',
        received: `“${given.day}”`,
        sentence: `“${given.day}” is not a day. Type year, month and day: 2026-08-02.`,
      });
    const found = sunDay(day, siteFrom(given));
    if (!found.ok) return found;
    const d = found.value;
    const none = d.highest >= RIM ? NONE_UP : NONE_DOWN;
    const [rise, set] = [d.rise, d.set].map((at) => (at === undefined ? none : showTime(at)));
    return accept({
      result: { rise: rise ?? none, noon: showTime(d.noon), set: set ?? none, highest_deg: d.highest, daylight_h: d.daylight },
      working: [
        step('Noon by the sun', 'hour angle 0, from mean noon of that longitude', given.day.trim(), `${showTime(d.noon)}, ${inDegrees(d.highest, 1)} high`),
        step('Upper rim on the horizon', 'middle of the sun at −0.833°: 34′ bent by the air, 16′ its half width', 'searched from noon back and on', `${rise} and ${set}`),
        step('Daylight', 'set − rise', '', `${figure(d.daylight / 3600, 2)} h`),
      ],
    });
  },
  sources: [
    memory('Meeus, Astronomical Algorithms, 2nd ed. (1998), chapters 15 and 25; the rim at −0.833° is the usual convention'),
    seen('NREL/TP-560-34302 (2008), printed sunrises and sunsets; US Naval Observatory tables; both as quoted in public code'),
  ],
  limits: [
    'To the minute at best: a ridge, a hill to stand on or strange air moves it by minutes, near the poles by more.',
    'The day is the one into which noon by the sun falls; times are in UTC and may carry the date before or after.',
  ],
  cautions: [],
});
