import type { Agreement, AgreementRow, PublishedRow } from '../../terms';
import { dayOf, instant, metres, parseInstant, type QuantityId, radians, seconds, toSi } from '../../units';
import { apparentPlace, clearSkyOver, type Face, faceOf, horizonVector, onFaces, type Sky, type SkyModel, type Sun, sideAzimuths, sunAt, sunSum, towards } from '.';

const given = (n: unknown, quantity: QuantityId, unit: string): number => toSi(Number(n), quantity, unit);
const angle = (n: unknown) => radians(given(n, 'angle', 'deg'));
const inDegrees = (rad: number): number => (rad * 180) / Math.PI;
const siteOf = (r: PublishedRow) => ({ latitude: angle(r.lat_deg), longitude: angle(r.lon_deg), altitude: metres(Number(r.alt_m)) });
const timeOf = (text: unknown) => parseInstant(String(text)) ?? instant(Number.NaN);
const sunOf = (r: PublishedRow): Sun | undefined => {
  const sun = sunAt(timeOf(r.utc), siteOf(r));
  return sun.ok ? sun.value : undefined;
};

/** Angle between two directions given by height and azimuth. [°] */
const apart = (h: number, a: number, k: number, b: number): number => inDegrees(Math.acos(Math.min(1, Math.sin(h) * Math.sin(k) + Math.cos(h) * Math.cos(k) * Math.cos(a - b))));

const clearSky = (r: PublishedRow): ((sun: Sun) => Sky) => {
  const sky = clearSkyOver({ altitude: metres(Number(r.alt_m)), turbidity: 3 });
  if (!sky.ok) throw new Error(JSON.stringify(sky.refusals));
  return sky.value;
};
const faceAt = (tilt: number, azimuth: number): Face => {
  const face = faceOf(radians(tilt), radians(azimuth));
  if (!face.ok) throw new Error(JSON.stringify(face.refusals));
  return face.value;
};
const WALL = Math.PI / 2;
const ROOF = faceAt(0, 0);
const rigFaces = (r: PublishedRow): readonly Face[] => {
  const looks = sideAzimuths(angle(r.nose_heading_deg));
  return [ROOF, faceAt(WALL, looks.front), faceAt(WALL, looks.curb), faceAt(WALL, looks.rear), faceAt(WALL, looks.road)];
};
const SIDES = ['roof', 'front', 'right', 'rear', 'left'] as const;
const MODELS: Readonly<Record<string, SkyModel>> = { iso: 'even', isotropic: 'even', haydavies: 'hay-davies', perez: 'perez' };

/** Within 1 %, or within what little light is worth. */
const row = (label: string, expected: unknown, got: number | undefined, least: number): AgreementRow => ({
  label,
  expected: Number(expected),
  got: got ?? 'refused',
  tolerance: Math.max(least, 0.01 * Number(expected)),
});

const hourly = (r: PublishedRow): readonly AgreementRow[] => {
  const sun = sunOf(r);
  if (sun === undefined) return [];
  const sky = clearSky(r)(sun);
  const label = `${r.site} ${r.utc}`;
  const faces = rigFaces(r);
  return [
    row(`${label} global`, r.ghi_Wm2, sky.global, 2),
    row(`${label} direct`, r.dni_Wm2, sky.direct, 2),
    row(`${label} diffuse`, r.dhi_Wm2, sky.diffuse, 2),
    ...['iso', 'haydavies', 'perez'].flatMap((name) => {
      const on = onFaces(sun, sky, 0.2, MODELS[name] ?? 'even');
      return SIDES.map((side, i) => row(`${label} ${name} ${side}`, r[`${name}_${side}_Wm2`], on(faces[i] ?? ROOF).total, 2));
    }),
  ];
};

const MJ = 1e6;
const HALF_HOUR = seconds(1800);

const annual = (r: PublishedRow): readonly AgreementRow[] => {
  const sky = clearSky(r);
  const span = { from: timeOf('2026-01-01T00:00:00Z'), to: timeOf('2027-01-01T00:00:00Z'), step: HALF_HOUR };
  const sum = sunSum({ site: siteOf(r), ...span, sky, faces: rigFaces(r), albedo: Number(r.albedo), model: MODELS[String(r.sky_model)] ?? 'even' });
  const of = (joules: number | undefined) => (sum.ok && joules !== undefined ? joules / MJ : undefined);
  const label = `${r.site} heading ${r.nose_heading_deg}°, ${r.sky_model}`;
  return [
    row(`${label} global`, r.ghi_MJm2, of(sum.ok ? sum.value.global : undefined), 0),
    row(`${label} direct`, r.dni_MJm2, of(sum.ok ? sum.value.direct : undefined), 0),
    row(`${label} diffuse`, r.dhi_MJm2, of(sum.ok ? sum.value.diffuse : undefined), 0),
    ...SIDES.map((side, i) => row(`${label} ${side}`, r[`${side}_MJm2`], of(sum.ok ? sum.value.faces[i] : undefined), 0)),
  ];
};

const QUARTERS = ['north', 'east', 'south', 'west'] as const;

const monthly = (r: PublishedRow): readonly AgreementRow[] => {
  const month = Number(r.month);
  const start = (y: number, m: number) => instant(dayOf(y, m, 1) * 86_400_000);
  const sum = sunSum({
    site: siteOf(r),
    from: start(2026, month),
    to: month === 12 ? start(2027, 1) : start(2026, month + 1),
    step: HALF_HOUR,
    sky: clearSky(r),
    faces: QUARTERS.map((_, i) => faceAt(WALL, i * WALL)),
    albedo: 0.2,
    model: 'hay-davies',
  });
  if (!sum.ok) return [];
  const { outside_air, global, diffuse, faces } = sum.value;
  const label = `${r.site}, month ${month}`;
  return [
    row(`${label} outside the air`, r.extraterrestrial_horizontal_MJm2, outside_air / MJ, 0.05),
    row(`${label} global`, r.ghi_MJm2, global / MJ, 0.05),
    row(`${label} diffuse`, r.dhi_MJm2, diffuse / MJ, 0.05),
    ...QUARTERS.map((quarter, i) => row(`${label} ${quarter}`, r[`vert_${quarter}_MJm2`], (faces[i] ?? Number.NaN) / MJ, 0.05)),
  ];
};

/** Worked examples of books: each speaks of its own step on the way, so each is run through that step. */
const examples: Readonly<Record<string, (i: Readonly<Record<string, unknown>>) => readonly (readonly [string, number, number])[]>> = {
  // The example counts in even time, ours in clock time: 69 s, less than a thousandth of a degree.
  'meeus-25a': () => {
    const p = apparentPlace(instant(timeOf('1992-10-13T00:00:00Z') - 69_000));
    const full = (rad: number): number => (inDegrees(rad) + 36_000_000) % 360;
    return [
      ['apparent_longitude_deg', full(p.longitude), 0.01],
      ['right_ascension_deg', full(p.right_ascension), 0.01],
      ['declination_deg', inDegrees(p.declination), 0.01],
      ['distance_AU', p.distance, 0.0001],
    ];
  },
  // Azimuths of the book are from south, west positive.
  'db-1-6-1': (i) => {
    const sun = horizonVector(angle(i.lat_deg), angle(i.declination_deg), ((Number(i.solar_time_h) - 12) * Math.PI) / 12);
    const cos = towards(sun, faceAt(angle(i.slope_deg), Math.PI + angle(i.surface_azimuth_deg_from_south_west_positive)));
    return [
      ['cos_incidence', cos, 0.002],
      ['incidence_deg', inDegrees(Math.acos(cos)), 0.3],
    ];
  },
};

const IMPLEMENTATION = 'an independent implementation, see';

export const sunAgreements: readonly Agreement[] = [
  {
    quantity: 'Where the sun stands, as it is seen',
    source: `NREL solar position algorithm, NREL/TP-560-34302 (2008), by ${IMPLEMENTATION} solar-position-spa.source.md`,
    table: 'src/science/sun/solar-position-spa.csv',
    rows: 420,
    allowed: { by: 'difference', most: 0.011, unit: '°' },
    remark: 'Angle between the two directions, day and night, 34° south to 65° north. The short series leaves out the pull of the planets.',
    measure: (rows) =>
      rows.map((r) => {
        const sun = sunOf(r);
        const label = `${r.site} ${r.utc}`;
        if (sun === undefined) return { label, expected: 0, got: 'refused' };
        return { label, expected: 0, got: apart(sun.apparent_elevation, sun.azimuth, angle(r.elevation_apparent_deg), angle(r.azimuth_deg)) };
      }),
  },
  {
    quantity: 'Equation of time',
    source: 'the same',
    table: 'src/science/sun/solar-position-spa.csv',
    rows: 420,
    allowed: { by: 'difference', most: 0.05, unit: 'min' },
    remark: 'The same hundredth of a degree, as time.',
    measure: (rows) => rows.map((r) => ({ label: `${r.site} ${r.utc}`, expected: Number(r.eot_min), got: (sunOf(r)?.place.equation_of_time ?? Number.NaN) / 60 })),
  },
  {
    quantity: 'Worked examples: place of the sun, angle on a tilted face',
    source: 'Meeus, Astronomical Algorithms (1998), example 25.a; Duffie and Beckman, Solar Engineering of Thermal Processes (2013), example 1.6.1',
    table: 'src/science/sun/worked-examples.jsonl',
    rows: 6,
    allowed: { by: 'own', most: 1, unit: 'of its tolerance' },
    remark: 'Steps on the way that no worksheet gives by themselves.',
    measure: (rows) =>
      rows.flatMap((r) =>
        (examples[String(r.id)]?.(r.inputs as Readonly<Record<string, unknown>>) ?? []).map(([key, got, tolerance]) => ({
          label: `${r.id} ${key}`,
          expected: Number((r.expected as Readonly<Record<string, unknown>>)[key]),
          got,
          tolerance,
        })),
      ),
  },
  {
    quantity: 'Clear sky on roof and sides, by the hour',
    source: `Ineichen and Perez 2002; even sky, Hay and Davies, Perez 1990, by ${IMPLEMENTATION} hourly-faces-clear.source.md`,
    table: 'src/science/sun/hourly-faces-clear.csv',
    rows: 51 * 18,
    allowed: { by: 'own', most: 1, unit: 'of 1 % or 2 W/m²' },
    remark: 'Four days on 26° to 45° north and 34° south, from sunrise to sunset.',
    measure: (rows) => rows.flatMap(hourly),
  },
  {
    quantity: 'Clear sky on roof and sides, by the year',
    source: `the same, in 5-minute steps, by ${IMPLEMENTATION} annual-faces-clear.source.md`,
    table: 'src/science/sun/annual-faces-clear.csv',
    rows: 84 * 8,
    allowed: { by: 'own', most: 1, unit: 'of 1 %' },
    remark: 'Ours in half-hours: the step costs less than a thousandth.',
    measure: (rows) => rows.flatMap(annual),
  },
  {
    quantity: 'Clear sky on walls to the four quarters, by the month',
    source: `the same, in 5-minute steps, by ${IMPLEMENTATION} monthly-clear-by-azimuth.source.md`,
    table: 'src/science/sun/monthly-clear-by-azimuth.csv',
    rows: 84 * 7,
    allowed: { by: 'own', most: 1, unit: 'of 1 % or 0.05 MJ/m²' },
    remark: 'A Fairbanks December is printed with three digits only.',
    measure: (rows) => rows.flatMap(monthly),
  },
];
