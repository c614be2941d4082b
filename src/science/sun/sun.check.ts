import { AstroTime, Body, Equator, Horizon, Observer, SearchRiseSet } from 'astronomy-engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { civilDay, dayOf, instant, metres, parseInstant, type Result, radians, seconds, share } from '../../units';
import { clearSkyOver, DEGREE, type Face, faceOf, NIGHT, onFaces, RIM, type Site, SKY_MODELS, type Sky, sideAzimuths, sunAt, sunDay, sunSum, towards, underCloud } from '.';

/**
 * The tables are held in sun.agreement.ts. Here a second witness, a public library of astronomy by planetary series (MIT), good to a
 * thousandth of a degree: the sun without air over the whole earth, poles included, within 0.011° from 1950 to 2050; rise and set
 * within 10 s up to 60° of latitude, within 40 s up to 66°, where the sun meets the horizon at a slant. Then what must hold of any such law.
 */
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const refusal = (result: Result<unknown>): string => (result.ok ? 'answered' : `${result.refusals[0]?.code} ${result.refusals[0]?.path}`);

const site = (lat: number, lon: number, alt = 0): Site => ({ latitude: radians(lat * DEGREE), longitude: radians(lon * DEGREE), altitude: metres(alt) });
const DAY = 86_400_000;
const latitude = fc.double({ min: -90, max: 90, noNaN: true });
const longitude = fc.double({ min: -180, max: 180, noNaN: true });
const moment = fc.integer({ min: dayOf(1950, 1, 1) * 1440, max: dayOf(2050, 1, 1) * 1440 }).map((minute) => instant(minute * 60_000));
const faceAt = (tilt: number, azimuth: number): Face => value(faceOf(radians(tilt * DEGREE), radians(azimuth * DEGREE)));
const anyFace = fc.tuple(fc.double({ min: 0, max: 180, noNaN: true }), fc.double({ min: 0, max: 360, noNaN: true })).map(([t, a]) => faceAt(t, a));

describe('the sun against a second witness', () => {
  it('stands where the library says, anywhere and at any time from 1950 to 2050, without air', () => {
    fc.assert(
      fc.property(latitude, longitude, moment, (lat, lon, at) => {
        const sun = value(sunAt(at, site(lat, lon)));
        const observer = new Observer(lat, lon, 0);
        const equator = Equator(Body.Sun, new Date(at), observer, true, true);
        const seen = Horizon(new Date(at), observer, equator.ra, equator.dec);
        const [h, a] = [seen.altitude * DEGREE, seen.azimuth * DEGREE];
        const cos = Math.sin(sun.elevation) * Math.sin(h) + Math.cos(sun.elevation) * Math.cos(h) * Math.cos(sun.azimuth - a);
        expect(Math.acos(Math.min(1, cos)) / DEGREE).toBeLessThan(0.011);
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    [60, 10],
    [66, 40],
  ])('rises and sets when the library says, to %d° of latitude within %d s', (most, within) => {
    fc.assert(
      fc.property(fc.double({ min: -most, max: most, noNaN: true }), longitude, fc.integer({ min: dayOf(1960, 1, 1), max: dayOf(2040, 1, 1) }), (lat, lon, day) => {
        const ours = value(sunDay(civilDay(day), site(lat, lon)));
        const noon = new AstroTime(new Date(ours.noon));
        const observer = new Observer(lat, lon, 0);
        const midnights = [-DAY / 2, DAY / 2].map((off) => value(sunAt(instant(ours.noon + off), site(lat, lon))).elevation);
        // Within a tenth of a degree of grazing the horizon, either answer is right.
        if ([ours.highest, ...midnights].some((h) => Math.abs(h - RIM) < 0.1 * DEGREE)) return;
        for (const [mine, theirs] of [
          [ours.rise, SearchRiseSet(Body.Sun, observer, 1, noon, -0.5)],
          [ours.set, SearchRiseSet(Body.Sun, observer, -1, noon, 0.5)],
        ] as const) {
          expect(mine === undefined).toBe(theirs === null);
          if (mine !== undefined && theirs !== null) expect(Math.abs(mine - theirs.date.getTime()) / 1000).toBeLessThan(within);
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('the day of the sun', () => {
  it('has no rise and set in polar summer and winter, and says which by its noon', () => {
    const tromso = site(69.65, 18.96);
    const june = value(sunDay(dayOf(2026, 6, 21), tromso));
    expect([june.rise, june.set, june.daylight]).toEqual([undefined, undefined, 86_400]);
    expect(june.highest).toBeGreaterThan(0);
    const december = value(sunDay(dayOf(2026, 12, 21), tromso));
    expect([december.rise, december.set, december.daylight]).toEqual([undefined, undefined, 0]);
    expect(december.highest).toBeLessThan(RIM);
  });

  it('is answered at both poles on every day of a year', () => {
    for (const lat of [-90, 90])
      for (let day = dayOf(2026, 1, 1); day < dayOf(2027, 1, 1); day = civilDay(day + 1)) {
        const d = value(sunDay(day, site(lat, 0)));
        expect(Number.isFinite(d.noon) && d.daylight >= 0 && d.daylight <= 86_400).toBe(true);
      }
  });

  it('holds noon between rise and set, and day and night of opposite latitudes in balance', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), longitude, fc.integer({ min: dayOf(2000, 1, 1), max: dayOf(2040, 1, 1) }), (lat, lon, day) => {
        const here = value(sunDay(civilDay(day), site(lat, lon)));
        expect(here.rise ?? Number.NaN).toBeLessThan(here.noon);
        expect(here.set ?? Number.NaN).toBeGreaterThan(here.noon);
        const opposite = value(sunDay(civilDay(day), site(-lat, lon)));
        // Both gain by the rim and the bending of light: up to 11 minutes each at 60°.
        const both = (here.daylight + opposite.daylight) / 60 - 1440;
        expect(both).toBeGreaterThan(10);
        expect(both).toBeLessThan(45);
      }),
    );
  });
});

describe('faces', () => {
  it('look clockwise from the nose', () => {
    fc.assert(
      fc.property(fc.double({ min: -360, max: 720, noNaN: true }), (heading) => {
        const looks = sideAzimuths(radians(heading * DEGREE));
        for (const a of Object.values(looks)) expect(a >= 0 && a <= 2 * Math.PI).toBe(true);
        expect(Math.sin(looks.curb - looks.front)).toBeCloseTo(1, 9);
        expect(Math.cos(looks.rear - looks.front)).toBeCloseTo(-1, 9);
        expect(Math.sin(looks.road - looks.front)).toBeCloseTo(-1, 9);
      }),
    );
  });

  it('get the sun from in front only: a face and its back never both', () => {
    fc.assert(
      fc.property(latitude, longitude, moment, fc.double({ min: 0, max: 90, noNaN: true }), fc.double({ min: 0, max: 360, noNaN: true }), (lat, lon, at, tilt, azimuth) => {
        const sun = value(sunAt(at, site(lat, lon)));
        expect(Math.hypot(sun.east, sun.north, sun.up)).toBeCloseTo(1, 9);
        expect(towards(sun, faceAt(tilt, azimuth)) + towards(sun, faceAt(180 - tilt, azimuth + 180 > 360 ? azimuth - 180 : azimuth + 180))).toBeCloseTo(0, 9);
      }),
    );
  });
});

describe('light on faces', () => {
  const clear = value(clearSkyOver({ altitude: metres(300), turbidity: 3 }));

  it('is never below nothing nor more than the sun sends to a face that looks at it and the sky together', () => {
    fc.assert(
      fc.property(latitude, longitude, moment, anyFace, fc.constantFrom(...SKY_MODELS), fc.double({ min: 0, max: 1, noNaN: true }), (lat, lon, at, face, model, cover) => {
        const sun = value(sunAt(at, site(lat, lon)));
        const sky = value(underCloud(clear(sun), sun.up, share(cover)));
        const light = onFaces(sun, sky, 0.2, model)(face);
        for (const part of [light.direct, light.sky, light.ground, sky.direct, sky.diffuse]) expect(part).toBeGreaterThanOrEqual(-1e-9);
        expect(light.total).toBeLessThan(1500);
        if (sun.apparent_elevation <= 0) expect(light.total).toBe(0);
      }),
    );
  });

  it('on a roof is the light of level ground, by every model, while the sun is more than 5° up', () => {
    fc.assert(
      fc.property(latitude, longitude, moment, fc.constantFrom(...SKY_MODELS), (lat, lon, at, model) => {
        const sun = value(sunAt(at, site(lat, lon)));
        if (sun.apparent_elevation < 5.01 * DEGREE) return;
        const sky = clear(sun);
        expect(onFaces(sun, sky, 0.5, model)(faceAt(0, 0)).total).toBeCloseTo(sky.global, 6);
      }),
    );
  });

  it('falls as clouds come, and all of it is scattered under a full cover', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 85, noNaN: true }), fc.double({ min: 0, max: 0.98, noNaN: true }), (elevation, cover) => {
        const sun = { up: Math.sin(elevation * DEGREE), apparent_elevation: elevation * DEGREE, extraterrestrial: 1361 };
        const of = (c: number): Sky => value(underCloud(clear(sun), sun.up, share(c)));
        expect(of(cover + 0.02).global).toBeLessThan(of(cover).global);
        expect(of(cover + 0.02).direct).toBeLessThan(of(cover).direct);
        expect(of(1).direct).toBeCloseTo(0, 9);
      }),
    );
    expect(value(underCloud(NIGHT, -0.3, share(0.5)))).toEqual(NIGHT);
  });
});

describe('a sum over a span', () => {
  const sky = value(clearSkyOver({ altitude: metres(340), turbidity: 3 }));
  const span = {
    site: site(33.45, -112.07, 340),
    from: parseInstant('2026-06-21T15:00:00Z') ?? instant(0),
    to: parseInstant('2026-06-21T21:00:00Z') ?? instant(0),
    step: seconds(600),
    sky,
    faces: [faceAt(0, 0)],
    albedo: 0.2,
    model: 'hay-davies' as const,
  };

  it('is the sum of its parts, however it is cut', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 35 }), (tens) => {
        const cut = instant(span.from + tens * 600_000);
        const [whole, a, b] = [span, { ...span, to: cut }, { ...span, from: cut }].map((s) => value(sunSum(s)).faces[0] ?? Number.NaN);
        expect((a ?? 0) + (b ?? 0)).toBeCloseTo(whole ?? 0, 3);
      }),
    );
  });

  it('counts a last, shorter step for what it is', () => {
    const odd = value(sunSum({ ...span, step: seconds(1700) }));
    expect(odd.sunlit).toBeCloseTo(6 * 3600, 6);
    expect((odd.faces[0] ?? 0) / (value(sunSum(span)).faces[0] ?? 1)).toBeCloseTo(1, 3);
  });

  it('refuses a span that ends before it begins, too many steps, and years beyond the series', () => {
    expect(refusal(sunSum({ ...span, to: span.from }))).toBe('ends-before-it-begins to');
    expect(refusal(sunSum({ ...span, step: seconds(0.01) }))).toBe('too-many-steps step');
    expect(refusal(sunSum({ ...span, step: seconds(0) }))).toBe('too-many-steps step');
    expect(refusal(sunSum({ ...span, to: instant(1e15) }))).toBe('outside-validity to');
  });
});

describe('what cannot be', () => {
  const now = instant(dayOf(2026, 5, 3) * 86_400_000);
  it('is refused: no such place, no such time, no such air, no such face', () => {
    expect(refusal(sunAt(now, site(90.1, 0)))).toBe('outside-validity latitude');
    expect(refusal(sunAt(now, site(0, 181)))).toBe('outside-validity longitude');
    expect(refusal(sunAt(now, site(0, 0, 9000)))).toBe('outside-validity altitude');
    expect(refusal(sunAt(instant(Number.NaN), site(0, 0)))).toBe('outside-validity utc');
    expect(refusal(sunDay(civilDay(99_999), site(0, 0)))).toBe('outside-validity day');
    expect(refusal(clearSkyOver({ altitude: metres(0), turbidity: 0.5 }))).toBe('outside-validity turbidity');
    expect(refusal(underCloud(NIGHT, 1, share(1.2)))).toBe('outside-validity cloud');
    expect(refusal(faceOf(radians(-0.1), radians(0)))).toBe('outside-validity tilt');
    expect(refusal(faceOf(radians(0), radians(7)))).toBe('outside-validity azimuth');
  });
});
