import { toSi } from '../src/units';
import { type CaseRun, through, type Values } from './case-through';

/** Runs for the sun, its light on faces, and how warm faces get. */
const n = (v: unknown): number => Number(v);

const place = (i: Values): Values => ({ latitude_deg: i.lat_deg, longitude_deg: i.lon_deg, altitude_m: i.elevation_m ?? i.altitude_m ?? 0 });

const position: CaseRun = (i) => {
  const a = through('sun-position', { ...place(i), utc: i.utc });
  const deg = (key: string): number => a.figure(key, 'deg');
  return {
    apparent_zenith_deg: 90 - deg('apparent_elevation_deg'),
    apparent_elevation_deg: deg('apparent_elevation_deg'),
    true_elevation_deg: deg('elevation_deg'),
    azimuth_deg: deg('azimuth_deg'),
    geocentric_declination_deg: deg('declination_deg'),
    geocentric_right_ascension_deg: deg('right_ascension_deg'),
    observer_hour_angle_deg: deg('hour_angle_deg'),
    equation_of_time_min: a.figure('equation_of_time_min', 'min'),
  };
};

/** Hours by which the clock of a case is ahead of UTC. */
const ZONES: Readonly<Record<string, number>> = { UTC: 0, 'UTC-07:00 (no DST)': -7, 'Asia/Shanghai': 8 };

const riseAndSet: CaseRun = (i) => {
  const a = through('sunrise-sunset', { ...place(i), day: i.date });
  const minutes = (key: string): number => {
    const [, h, m] = /T(\d\d):(\d\d)Z$/.exec(a.word(key)) ?? [];
    return (60 * n(h) + n(m) + 60 * (ZONES[String(i.zone)] ?? Number.NaN) + 1440) % 1440;
  };
  return { sunrise_min: minutes('rise'), sunset_min: minutes('set') };
};

const airMassAt = (apparent_zenith_deg: unknown): number => through('clear-sky', { sun_elevation_deg: 90 - n(apparent_zenith_deg) }).figure('air_mass_number', 'number');

/** The case gives the air that the light crosses; the worksheet works it out from height, altitude and barometer, so the barometer is set to give it. */
const clearSky: CaseRun = (i) => {
  const at = through('standard-atmosphere', { altitude_m: i.altitude_m }).figure('pressure_kpa', 'hpa');
  const barometer = (1013.25 * n(i.absolute_air_mass)) / ((airMassAt(i.apparent_zenith_deg) * at) / 1013.25);
  const a = through('clear-sky', {
    sun_elevation_deg: 90 - n(i.apparent_zenith_deg),
    altitude_m: i.altitude_m,
    turbidity_number: i.linke_turbidity,
    extraterrestrial_wm2: i.extraterrestrial_Wm2,
    barometer_hpa: barometer,
  });
  return { ghi_Wm2: a.figure('global_wm2', 'wm2'), dni_Wm2: a.figure('direct_wm2', 'wm2'), dhi_Wm2: a.figure('diffuse_wm2', 'wm2') };
};

const cloud: CaseRun = (i) => ({ global_ratio: through('clear-sky', { sun_elevation_deg: 45, cloud_percent: (100 * n(i.cloud_okta)) / 8 }).figure('left_percent', 'fraction') });

const MODELS = { isotropic: 'even', haydavies: 'hay-davies', perez: 'perez' } as const;

const onFace: CaseRun = (i) => {
  const by = (sky: string) =>
    through('sun-on-face', {
      sun_elevation_deg: 90 - n(i.apparent_zenith_deg),
      sun_azimuth_deg: i.sun_azimuth_deg,
      direct_wm2: i.dni_Wm2,
      diffuse_wm2: i.dhi_Wm2,
      tilt_deg: i.surface_tilt_deg,
      azimuth_deg: i.surface_azimuth_deg,
      extraterrestrial_wm2: i.dni_extra_Wm2,
      ground_percent: 100 * n(i.ground_albedo),
      sky,
    });
  const each = Object.entries(MODELS).flatMap(([name, sky]) => {
    const a = by(sky);
    return [
      [`${name}_total_Wm2`, a.figure('total_wm2', 'wm2')],
      [`${name}_sky_diffuse_Wm2`, a.figure('sky_part_wm2', 'wm2')],
    ] as const;
  });
  const a = by('even');
  return { ...Object.fromEntries(each), beam_Wm2: a.figure('direct_part_wm2', 'wm2'), ground_Wm2: a.figure('ground_part_wm2', 'wm2') };
};

/** The example sums an hour, sun 62.2° from overhead; the sun is turned until level ground and face get light in the ratio it gives. */
const hourOnSlope: CaseRun = (i) => {
  const [z, s] = [(62.2 * Math.PI) / 180, (n(i.slope_deg) * Math.PI) / 180];
  const aside = Math.acos((n(i.Rb) * Math.cos(z) - Math.cos(z) * Math.cos(s)) / (Math.sin(z) * Math.sin(s)));
  const mean = (megajoules: unknown): number => (n(megajoules) * 1e6) / 3600;
  const a = through('sun-on-face', {
    sun_elevation_deg: 90 - 62.2,
    sun_azimuth_deg: 180 - (aside * 180) / Math.PI,
    direct_wm2: mean(i.Ib_MJm2) / Math.cos(z),
    diffuse_wm2: mean(i.Id_MJm2),
    tilt_deg: i.slope_deg,
    azimuth_deg: 180,
    ground_percent: 100 * n(i.ground_albedo),
    sky: 'even',
  });
  const sum = (key: string): number => (a.figure(key, 'wm2') * 3600) / 1e6;
  return { IT_MJm2: sum('total_wm2'), beam_MJm2: sum('direct_part_wm2'), diffuse_MJm2: sum('sky_part_wm2'), ground_MJm2: sum('ground_part_wm2') };
};

const rig = (i: Values): Values => ({ ...place(i), heading_deg: i.nose_heading_deg, turbidity_number: i.linke_turbidity, ground_percent: 100 * n(i.ground_albedo) });
const SIDES = { roof: 'roof', front: 'front', right: 'curb', rear: 'rear', left: 'road' } as const;

const onRig: CaseRun = (i) => {
  const a = through('sun-on-rig', { ...rig(i), utc: i.utc });
  const sides = Object.entries(SIDES).map(([side, ours]) => [`${side}_Wm2`, a.figure(`${ours}_wm2`, 'wm2')] as const);
  return { ...Object.fromEntries(sides), ghi_Wm2: a.figure('global_wm2', 'wm2'), dni_Wm2: a.figure('direct_wm2', 'wm2'), dhi_Wm2: a.figure('diffuse_wm2', 'wm2') };
};

const overYear: CaseRun = (i) => {
  const a = through('clear-sky-sum', { ...rig(i), from: `${i.year}-01-01T00:00:00Z`, to: `${n(i.year) + 1}-01-01T00:00:00Z` });
  const sides = Object.entries(SIDES).map(([side, ours]) => [`${side}_MJm2`, a.figure(`${ours}_mjm2`, 'mjm2')] as const);
  return { ...Object.fromEntries(sides), dni_MJm2: a.figure('direct_mjm2', 'mjm2'), dhi_MJm2: a.figure('diffuse_mjm2', 'mjm2') };
};

/** Any place and time will do: sides look by the nose alone. */
const looks: CaseRun = (i) => {
  const a = through('sun-on-rig', { latitude_deg: 40, longitude_deg: -100, utc: '2026-06-21T18:00:00Z', heading_deg: i.nose_heading_deg });
  const deg = (side: string): number => a.figure(`${side}_looks_deg`, 'deg');
  return { front_deg: deg('front'), right_deg: deg('curb'), rear_deg: deg('rear'), left_deg: deg('road') };
};

/** Where a case gives α/h, h is taken as the handbook's: 17 W/(m² K), or 3 Btu/(h ft² °F). */
const FILM = 17;
const FILM_BTU = 3;
const EMITTANCE = 0.9;

const solAir: CaseRun = (i) => {
  const a = through('sol-air', {
    air_temperature_c: i.outdoor_C ?? i.air_C,
    irradiance_wm2: i.irradiance_Wm2 ?? i.irradiance_W_m2,
    absorptance_percent: 100 * n(i.absorptance ?? n(i.alpha_over_h_m2KW) * FILM),
    film_wm2k: i.film_coeff_W_m2K ?? FILM,
    emittance_percent: 100 * n(i.emittance ?? EMITTANCE),
    deficit_wm2: i.longwave_deficit_W_m2 ?? (n(i.longwave_correction_K) * FILM) / EMITTANCE,
  });
  return { sol_air_C: a.figure('sol_air_c', 'c') };
};

const solAirBtu: CaseRun = (i) => {
  const correction = toSi(n(i.longwave_correction_F), 'temperature-difference', 'df');
  const a = through('sol-air', {
    air_temperature_f: i.air_F,
    irradiance_btuhft2: i.irradiance_Btu_h_ft2,
    absorptance_percent: 100 * n(i.absorptance_over_film_ft2hF_per_Btu) * FILM_BTU,
    film_btuhft2f: FILM_BTU,
    emittance_percent: 100 * EMITTANCE,
    deficit_wm2: (correction * toSi(FILM_BTU, 'heat-transfer', 'btuhft2f')) / EMITTANCE,
  });
  return { sol_air_F: a.figure('sol_air_c', 'f') };
};

/** The same rule with a film of 12.4 + 6.1 ε and a sky that shines back 61 W/m² less, at any air temperature. */
const roofRise: CaseRun = (i) => {
  const a = through('sol-air', {
    air_temperature_c: 20,
    irradiance_wm2: 1000,
    absorptance_percent: 100 * (1 - n(i.solar_reflectance)),
    film_wm2k: 12.4 + 6.1 * n(i.ir_emittance),
    emittance_percent: 100 * n(i.ir_emittance),
    deficit_wm2: 61,
  });
  return { rise_C: a.figure('sol_air_c', 'c') - 20 };
};

/** Where a case gives the dew point alone, air as warm as that and full of water has it. */
const leastSurface: CaseRun = (i) => {
  const fahrenheit = 'air_F' in i;
  const a = through('surface-temperature', {
    ...(fahrenheit ? { air_temperature_f: i.air_F, relative_humidity_percent: i.rh_pct, needed_df: i.margin_F } : {}),
    ...(fahrenheit ? {} : { air_temperature_c: i.dew_point_C, relative_humidity_percent: 100, needed_k: i.margin_K }),
    wind_ms: 2,
    irradiance_wm2: 0,
  });
  return { min_surface_F: a.figure('least_surface_c', 'f'), min_surface_C: a.figure('least_surface_c', 'c') };
};

const gate: CaseRun = (i) => {
  const a = through('application-gate', {
    surface_c: i.surface_C,
    dew_point_c: i.dew_point_C,
    least_surface_c: i.min_surface_C,
    most_surface_c: i.max_surface_C,
    needed_k: i.dew_margin_K,
  });
  return { allowed: a.word('allowed') === 'yes' };
};

export const sunRuns: Readonly<Record<string, CaseRun>> = {
  'solar position, topocentric (zenith from vertical, azimuth clockwise from true north)': position,
  'sunrise and sunset (upper limb, standard refraction)': riseAndSet,
  'relative optical air mass, Kasten & Young 1989': (i) => ({ air_mass: airMassAt(i.apparent_zenith_deg) }),
  'clear-sky beam and diffuse, Ineichen-Perez with Linke turbidity': clearSky,
  'cloud attenuation of global irradiance, Kasten & Czeplak': cloud,
  'tilted irradiance by sky model from given components': onFace,
  'tilted irradiation, isotropic sky': hourOnSlope,
  'clear-sky irradiance on roof and four walls of a vehicle, hourly': onRig,
  'clear-sky annual dose on roof and four walls of a parked vehicle': overYear,
  'face azimuths from nose heading': looks,
  'sol-air temperature': solAir,
  'sol-air temperature, te = to + alpha E/ho - eps dR/ho': (i, expected) => ('air_F' in i ? solAirBtu : solAir)(i, expected),
  'maximum roof temperature rise above air, (1-R) I0 = (hc+hr) dT + hr 10, hr = 6.1 eps, hc = 12.4, I0 = 1000': roofRise,
  'lowest surface temperature allowed above dew point': leastSurface,
  'application gate verdict': gate,
};
