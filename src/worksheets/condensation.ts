import { type Condensation, condensation, condensationHumidity, saturationValidity, TRIPLE_POINT } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, figure, kelvin, relativeHumidity } from '../units';
import { step } from './working';

const SAYS: Readonly<Record<Condensation['skin'], string>> = {
  sweats: 'the skin sweats by itself; this wet needs no leak',
  'too-close': 'too close to say; measure again in the coldest hour',
  dry: 'the skin stays dry; this wet is not condensation',
};

const temperature = (meaning: string, most = saturationValidity.most) =>
  ({ type: 'number', quantity: 'temperature', unit: 'c', meaning, limits: { least: saturationValidity.least, most } }) as const;
const difference = (meaning: string) => ({ type: 'number', quantity: 'temperature-difference', unit: 'k', meaning, decimals: 1 }) as const;

export const condensationSheet = defineWorksheet({
  id: 'condensation',
  title: 'Does the skin sweat?',
  tells: 'Whether a wall or window is wet because it is colder than the dew point of the air in the room: rule this out before a leak is named.',
  example: { air_temperature_c: 20, relative_humidity_percent: 65, skin_temperature_c: 6 },
  inputs: {
    air_temperature_c: temperature('temperature of the air in the room'),
    relative_humidity_percent: {
      type: 'number',
      quantity: 'relative-humidity',
      unit: 'percent',
      meaning: 'relative humidity of that air',
      limits: { least: condensationHumidity.least, most: condensationHumidity.most },
    },
    skin_temperature_c: temperature('temperature of the surface itself', 373.15),
  },
  results: {
    says: { type: 'text', meaning: 'whether the skin sweats' },
    dew_point_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'a surface colder than this is wet', decimals: 1 },
    margin_k: difference('how much warmer than the dew point the skin is; below 0 it is colder'),
    plus_minus_k: difference('what hygrometer and thermometer leave open; carry it along'),
  },
  calculate: ({ air_temperature_c: air, relative_humidity_percent: h, skin_temperature_c: skin }) => {
    const found = condensation(kelvin(air), relativeHumidity(h), kelvin(skin));
    if (!found.ok) return found;
    const c = found.value;
    const dew = `${figure(c.dew_point - 273.15, 1)} °C`;
    return accept({
      result: { says: SAYS[c.skin], dew_point_c: c.dew_point, margin_k: c.margin, plus_minus_k: c.uncertainty },
      working: [
        step('Dew point of the air', 'see the worksheet dew-point', `${figure(air - 273.15, 1)} °C, ${figure(h * 100, 0)} %`, dew),
        step('Margin', 'skin − dew point', `${figure(skin - 273.15, 1)} °C − ${dew}`, `${figure(c.margin, 1)} K`),
        step('What the instruments leave open', '√(dew point for 5 points of humidity ² + 1 K²)', '', `± ${figure(c.uncertainty, 1)} K`),
      ],
      remarks: [
        'The margin now says nothing about last night: a wall may have sweated in its coldest hour and be warm when you measure.',
        ...(skin <= TRIPLE_POINT ? ['Below freezing hoar forms instead of dew, and runs as water when it thaws.'] : []),
      ],
    });
  },
  sources: [
    seen('ASHRAE Handbook – Fundamentals (2017), chapter 1, equations 5 and 6', 'https://github.com/psychrometrics/psychrolib'),
    ours('Small hygrometers are taken to be good to 5 points of humidity and surface thermometers to 1 K; the two are added as squares'),
  ],
  limits: [
    'The air that touches the skin counts. In a cupboard or behind a mattress it is damper and colder than in the room.',
    'An infrared thermometer reads shiny metal and glass wrong; put matt tape on it first.',
    'A skin that sweats does not rule out a leak as well.',
  ],
  cautions: [],
});
