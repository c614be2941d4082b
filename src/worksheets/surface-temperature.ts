import { airValidity, DEW_MARGIN, type DewStanding, dewMargin, dewPoint, faceInWeather, filmWind, lightValidity, SKIN_COLOURS, skinColour } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, figure, kelvin, metresPerSecond, radians, relativeHumidity, share } from '../units';
import { cloudInput, watts } from './sun-inputs';
import { step } from './working';

const SAYS: Readonly<Record<DewStanding, string>> = {
  wet: 'dew or frost: the face is colder than the dew point',
  'too-near': 'too near the dew point',
  'too-close': 'too close to say; measure the face itself',
  clear: 'far enough above the dew point',
};
const difference = (meaning: string) => ({ type: 'number', quantity: 'temperature-difference', unit: 'k', meaning, decimals: 1 }) as const;
const temperature = (meaning: string) => ({ type: 'number', quantity: 'temperature', unit: 'c', meaning, decimals: 1 }) as const;
const celsius = (k: number): string => `${figure(k - 273.15, 1)} °C`;

export const surfaceTemperatureSheet = defineWorksheet({
  id: 'surface-temperature',
  title: 'How warm a face is, and how far from dew',
  tells: 'How warm the outside of a face is in an hour of given weather, by day or night, and whether it is dry enough to put something on.',
  example: { air_temperature_c: 8, relative_humidity_percent: 90, wind_ms: 1, irradiance_wm2: 0, colour: 'white' },
  inputs: {
    air_temperature_c: { type: 'number', quantity: 'temperature', unit: 'c', meaning: 'temperature of the air', limits: { least: airValidity.least, most: airValidity.most } },
    relative_humidity_percent: { type: 'number', quantity: 'relative-humidity', unit: 'percent', meaning: 'relative humidity of the air', limits: { least: 0.01, most: 1 } },
    wind_ms: {
      type: 'number',
      quantity: 'speed',
      unit: 'ms',
      meaning: 'wind at the face; a forecast gives it for ten metres up, in the open',
      limits: { least: filmWind.least, most: filmWind.most },
    },
    irradiance_wm2: {
      type: 'number',
      quantity: 'irradiance',
      unit: 'wm2',
      meaning: 'sunlight on the face, from the worksheet sun-on-rig; 0 at night',
      limits: { least: lightValidity.least, most: lightValidity.most },
    },
    colour: { type: 'word', meaning: 'how the skin looks', words: SKIN_COLOURS.map((c) => c.id), otherwise: 'white' },
    tilt_deg: { type: 'number', quantity: 'angle', unit: 'deg', meaning: 'tilt of the face: 0 a roof, 90 a wall', limits: { least: 0, most: Math.PI }, otherwise: 0 },
    cloud_percent: cloudInput,
    needed_k: {
      type: 'number',
      quantity: 'temperature-difference',
      unit: 'k',
      meaning: 'how much warmer than the dew point the face must be; the product’s sheet may ask for more',
      limits: { least: 0, most: 20 },
      otherwise: DEW_MARGIN,
    },
  },
  results: {
    says: { type: 'text', meaning: 'whether it is far enough above the dew point' },
    surface_c: temperature('temperature of the face'),
    plus_minus_k: difference('how far that may be off; carry it along'),
    by_sun_k: difference('what the sun adds'),
    by_sky_k: difference('what the open sky takes'),
    dew_point_c: temperature('dew point of the air'),
    margin_k: difference('how much warmer than the dew point the face is; below 0 it is colder'),
    least_surface_c: temperature('the coldest face allowed'),
  },
  calculate: (i) => {
    const dew = dewPoint(kelvin(i.air_temperature_c), relativeHumidity(i.relative_humidity_percent));
    if (!dew.ok) return { ok: false, refusals: dew.refusals.map((r) => (r.path === 'dry_bulb' ? { ...r, path: 'air_temperature' } : r)) };
    const look = skinColour(i.colour);
    if (look === undefined) throw new Error(`a word that is no colour: ${i.colour}`);
    const found = faceInWeather({
      air: kelvin(i.air_temperature_c),
      dew_point: dew.value,
      wind: metresPerSecond(i.wind_ms),
      cover: share(i.cloud_percent),
      irradiance: i.irradiance_wm2,
      tilt: radians(i.tilt_deg),
      colour: look,
    });
    if (!found.ok) return { ok: false, refusals: found.refusals.map((r) => (r.path === 'dew_point' ? { ...r, path: 'relative_humidity' } : r)) };
    const t = found.value;
    const d = dewMargin(t.surface, dew.value, i.needed_k, t.uncertainty);
    return accept({
      result: {
        says: SAYS[d.standing],
        surface_c: t.surface,
        plus_minus_k: t.uncertainty,
        by_sun_k: t.by_sun,
        by_sky_k: t.by_sky,
        dew_point_c: dew.value,
        margin_k: d.margin,
        least_surface_c: d.least,
      },
      working: [
        step('Dew point', 'see the worksheet dew-point', `${celsius(i.air_temperature_c)}, ${figure(i.relative_humidity_percent * 100, 0)} %`, celsius(dew.value)),
        step(
          'How strongly the sky shines back',
          '(0.787 + 0.764 ln(T_dew/273)) (1 + 0.0224 N − 0.0035 N² + 0.00028 N³)',
          `N = ${figure(10 * i.cloud_percent, 1)} tenths; ${figure(t.sky_share * 100, 0)} % of the sky counts for this tilt`,
          figure(t.sky_emissivity, 3),
        ),
        step('What the wind takes', 'h = 2.8 + 3.0 v', `v = ${figure(i.wind_ms, 1)} m/s`, `${figure(t.film, 1)} W/(m² K)`),
        step(
          'The face, where gains and losses meet',
          'α I + ε σ (F ε_sky + 1 − F) T_air⁴ = ε σ T⁴ + h (T − T_air)',
          `${look.word}: α = ${figure(look.absorptance, 2)}, ε = ${figure(look.emittance, 2)}; I = ${watts(i.irradiance_wm2)}`,
          `${celsius(t.surface)}: sun ${figure(t.by_sun, 1)} K, sky ${figure(t.by_sky, 1)} K`,
        ),
        step('How far that may be off', '√((0.3 × sun)² + (0.3 × sky)² + 1 K²)', '', `± ${figure(t.uncertainty, 1)} K`),
        step('Margin over the dew point', 'face − dew point', `${celsius(t.surface)} − ${celsius(dew.value)}; needed ${figure(i.needed_k, 1)} K`, `${figure(d.margin, 1)} K`),
      ],
      remarks: t.surface < 273.15 && d.margin < 0 ? ['Below freezing hoar forms instead of dew.'] : [],
    });
  },
  sources: [
    seen('ASTM E1980-11, balance of a surface in the sun, as quoted on public pages'),
    seen('Clark and Allen 1978 with the cloud factor of Walton 1983; Watmuff, Charters and Proctor 1977: as used in a public building simulation'),
    seen('ISO 8502-4 practice as quoted on coating inspection pages: at least 3 K above the dew point'),
    seen('Cool-roof definitions page of a national laboratory: colours, and ±30 % on the rise of a roof in sun'),
    ours('Sky’s part taken as uncertain as the sun’s; 1 K left open in any case; shares of colours between'),
  ],
  limits: [
    'A thin skin with insulation behind it, after an hour of the same weather. Over a warm cabin, a frame or a full tank it differs.',
    'Sunlight and cloud from a forecast are uncertain on top of this. An infrared thermometer on matt tape beats any of it.',
    'Bare bright metal is not among the colours: it can run hotter than paint and colder than it looks.',
  ],
  cautions: ['Wet or frosted roofs are slippery, and dew forms on a roof before it does on the ground.'],
});
