import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kelvin, metresPerSecond, type Result, radians, share } from '../../units';
import {
  applicationGate,
  DEW_MARGIN,
  dewMargin,
  faceInWeather,
  SKIN_COLOURS,
  type SkinColour,
  type Surroundings,
  skinColour,
  skyEmissivity,
  skyShare,
  solAir,
  surfaceTemperature,
  windFilm,
} from '.';

/**
 * Three worked surfaces are held in surface.agreement.ts, the sol-air rule by its cases. Here: the index that ASTM E1980-11 makes of such
 * temperatures, by its own closed form, within the 2 points the standard allows it, from absorptance 0.15 and emittance 0.7; the worked sky of a building
 * simulation's reference; wind's film against the standard's three bands. Then what must hold of any such balance.
 */
const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.refusals));
  return result.value;
};
const refusal = (result: Result<unknown>): string => (result.ok ? 'answered' : `${result.refusals[0]?.code} ${result.refusals[0]?.path}`);
const at = (celsius: number) => kelvin(celsius + 273.15);

describe('the balance of a surface', () => {
  const standard = (absorptance: number, emittance: number, film: number): number =>
    value(
      surfaceTemperature({
        air: kelvin(310),
        irradiance: 1000,
        film,
        sky_emissivity: (300 / 310) ** 4,
        sky_share: 1,
        absorptance: share(absorptance),
        emittance: share(emittance),
      }),
    ).surface;

  // Closed form, equation 4 of the standard: the fraction as read on a public page, its three coefficients from memory, unconfirmed.
  it.each([5, 12, 30])('gives the reflectance index of ASTM E1980-11 within 2 points at a film of %d', (film) => {
    for (let a = 0.15; a <= 0.951; a += 0.05)
      for (let e = 0.7; e <= 0.951; e += 0.05) {
        const x = ((a - 0.029 * e) * (8.797 + film)) / (9.5205 * e + film);
        const index = 123.97 - 141.35 * x + 9.655 * x ** 2;
        const ours = (100 * (standard(0.95, 0.9, film) - standard(a, e, film))) / (standard(0.95, 0.9, film) - standard(0.2, 0.9, film));
        expect(Math.abs(ours - index), `absorptance ${a}, emittance ${e}`).toBeLessThan(2);
      }
  });

  const colour = fc.constantFrom(...SKIN_COLOURS);
  const weather = fc.record({
    air: fc.double({ min: 225, max: 330, noNaN: true }).map(kelvin),
    irradiance: fc.double({ min: 0, max: 1300, noNaN: true }),
    film: fc.double({ min: 2.8, max: 70, noNaN: true }),
    sky_emissivity: fc.double({ min: 0.55, max: 1, noNaN: true }),
    sky_share: fc.double({ min: 0, max: 1, noNaN: true }),
  });

  it('balances: what comes in goes out, to a hundredth of a watt', () => {
    fc.assert(
      fc.property(weather, colour, (w, c) => {
        const t = value(surfaceTemperature({ ...w, absorptance: share(c.absorptance), emittance: share(c.emittance) }));
        const sky = w.sky_share * w.sky_emissivity + 1 - w.sky_share;
        const gains = c.absorptance * w.irradiance + c.emittance * 5.670374419e-8 * sky * w.air ** 4;
        const losses = c.emittance * 5.670374419e-8 * t.surface ** 4 + w.film * (t.surface - w.air);
        expect(Math.abs(gains - losses)).toBeLessThan(0.01);
        expect(w.air + t.by_sky + t.by_sun).toBeCloseTo(t.surface, 6);
      }),
    );
  });

  it('is warmer with more sun and a darker skin, nearer the air with more wind, and never above the air at night', () => {
    fc.assert(
      fc.property(weather, (w) => {
        const of = (more: Partial<Surroundings>, absorptance = 0.5) => value(surfaceTemperature({ ...w, absorptance: share(absorptance), emittance: share(0.9), ...more }));
        expect(of({ irradiance: w.irradiance + 50 }).surface).toBeGreaterThan(of({}).surface);
        if (w.irradiance > 1) expect(of({}, 0.9).surface).toBeGreaterThan(of({}, 0.2).surface);
        expect(Math.abs(of({ film: w.film + 5 }).surface - w.air)).toBeLessThanOrEqual(Math.abs(of({}).surface - w.air) + 1e-9);
        const night = of({ irradiance: 0 });
        expect(night.surface).toBeLessThanOrEqual(w.air + 1e-9);
        expect(night.uncertainty).toBeGreaterThanOrEqual(1);
      }),
    );
  });

  it('cools a roof by 3 to 5 K below the air on a clear night with some wind, a wall less, and hardly any under cloud', () => {
    const night = (cover: number, tilt: number): number =>
      value(
        faceInWeather({ air: at(10), dew_point: at(8), wind: metresPerSecond(3), cover: share(cover), irradiance: 0, tilt: radians(tilt), colour: SKIN_COLOURS[0] as SkinColour }),
      ).by_sky;
    expect(night(0, 0)).toBeGreaterThan(-5);
    expect(night(0, 0)).toBeLessThan(-3);
    expect(night(0, Math.PI / 2)).toBeGreaterThan(-2);
    expect(night(1, 0)).toBeGreaterThan(-1.5);
  });

  it('refuses what no weather has', () => {
    const sane = { air: at(20), irradiance: 500, film: 12, sky_emissivity: 0.8, sky_share: 1, absorptance: share(0.5), emittance: share(0.9) };
    expect(refusal(surfaceTemperature({ ...sane, air: at(-60) }))).toBe('outside-validity air_temperature');
    expect(refusal(surfaceTemperature({ ...sane, irradiance: -1 }))).toBe('outside-validity irradiance');
    expect(refusal(surfaceTemperature({ ...sane, irradiance: Number.NaN }))).toBe('outside-validity irradiance');
    expect(refusal(solAir({ air: at(20), irradiance: 500, absorptance: share(0.5), emittance: share(0.9), film: 0, deficit: 0 }))).toBe('outside-validity film');
  });
});

describe('the sky', () => {
  it('of the reference’s example, 20 °C with a dew point of 10 °C and no cloud, shines with 0.815', () =>
    expect(Math.abs(value(skyEmissivity(kelvin(283), share(0))) - 0.815)).toBeLessThan(0.001));

  it('shines more in damp air and under cloud, never more than a black body', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 29, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (dew, cover) => {
        const e = value(skyEmissivity(at(dew), share(cover)));
        expect(e).toBeGreaterThan(0.6);
        expect(e).toBeLessThanOrEqual(1);
        expect(value(skyEmissivity(at(dew + 1), share(cover)))).toBeGreaterThanOrEqual(e);
        expect(e).toBeGreaterThanOrEqual(value(skyEmissivity(at(dew), share(0))));
      }),
    );
  });

  it('counts fully for a roof, a third for a wall, not at all for an underside', () => {
    expect(skyShare(radians(0))).toBe(1);
    expect(skyShare(radians(Math.PI / 2))).toBeCloseTo(0.354, 3);
    expect(skyShare(radians(Math.PI))).toBeCloseTo(0, 12);
  });

  it('is refused for air it was not made for', () => {
    expect(refusal(skyEmissivity(at(31), share(0)))).toBe('outside-validity dew_point');
    expect(refusal(skyEmissivity(at(10), share(1.1)))).toBe('outside-validity cloud');
  });
});

describe('the wind’s film', () => {
  it.each([
    [1, 5],
    [4, 12],
    [8, 30],
  ])('at %d m/s lies within 30 %% of the standard’s %d W/(m² K)', (wind, film) => expect(Math.abs(value(windFilm(metresPerSecond(wind))) / film - 1)).toBeLessThan(0.3));

  it('is refused for a storm, and for less than no wind', () => {
    expect(refusal(windFilm(metresPerSecond(26)))).toBe('outside-validity wind');
    expect(refusal(windFilm(metresPerSecond(-1)))).toBe('outside-validity wind');
  });
});

describe('the distance from the dew point', () => {
  const standing = (surface: number, uncertainty: number) => dewMargin(at(surface), at(10), DEW_MARGIN, uncertainty).standing;

  it('is judged only where the uncertainty leaves no doubt', () => {
    expect([20, 14.5, 13, 11.5, 9.5, 8, 5].map((surface) => standing(surface, 1.5))).toEqual(['clear', 'clear', 'too-close', 'too-near', 'too-near', 'wet', 'wet']);
    expect(standing(11, 4)).toBe('too-close');
    expect(dewMargin(at(14), at(10), DEW_MARGIN, 1).margin).toBeCloseTo(4, 9);
    expect(dewMargin(at(14), at(10), DEW_MARGIN, 1).least).toBeCloseTo(at(13), 9);
  });

  it('never gets worse as the face warms', () => {
    const order = ['wet', 'too-near', 'too-close', 'clear'];
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 40, noNaN: true }),
        fc.double({ min: 0.1, max: 1.5, noNaN: true }),
        (surface, uncertainty) => order.indexOf(standing(surface + 0.5, uncertainty)) >= order.indexOf(standing(surface, uncertainty)),
      ),
    );
  });
});

describe('the gate of a product', () => {
  const limits = { least: at(4), most: at(37), dew_margin: DEW_MARGIN };
  const span = (coldest: number, warmest: number, open = 0) => ({ coldest: at(coldest), cold_open: open, warmest: at(warmest), warm_open: open });
  const gate = (coldest: number, warmest: number, dew: number, open = 0) => value(applicationGate(span(coldest, warmest, open), at(dew), limits));

  it('takes the coldest side against cold and dew, the warmest against heat; a limit itself is allowed', () => {
    expect(gate(20, 25, 10)).toEqual({ cold: 'kept', warm: 'kept', dew: 'clear', open: true });
    expect(gate(12, 30, 10)).toMatchObject({ dew: 'too-near', open: false });
    expect(gate(3, 20, -5)).toMatchObject({ cold: 'broken', warm: 'kept', open: false });
    expect(gate(20, 38, 10)).toMatchObject({ cold: 'kept', warm: 'broken', open: false });
    expect(gate(4, 37, -5).open).toBe(true);
  });

  it('says nothing for certain within what is open, and has no limit where a sheet gives none', () => {
    expect(gate(5, 20, -5, 2)).toMatchObject({ cold: 'too-close', open: false });
    expect(gate(20, 36, 5, 2)).toMatchObject({ warm: 'too-close', open: false });
    expect(value(applicationGate(span(-20, 80), at(-30), { dew_margin: 3 })).open).toBe(true);
    expect(refusal(applicationGate(span(-90, 20), at(-30), limits))).toBe('outside-validity surface');
  });

  it('never opens by more doubt', () => {
    const t = fc.double({ min: -10, max: 45, noNaN: true });
    fc.assert(
      fc.property(
        t,
        t,
        t,
        fc.double({ min: 0, max: 5, noNaN: true }),
        (a, b, dew, more) => !gate(Math.min(a, b), Math.max(a, b), dew, more + 1).open || gate(Math.min(a, b), Math.max(a, b), dew, more).open,
      ),
    );
  });
});

describe('colours', () => {
  it('are found by name, each once, from white to black', () => {
    expect(SKIN_COLOURS.map((c) => skinColour(c.id))).toEqual(SKIN_COLOURS);
    const paints = SKIN_COLOURS.filter((c) => c.emittance === 0.9).map((c) => c.absorptance);
    expect([...paints].sort((a, b) => a - b)).toEqual(paints);
    expect(skinColour('chrome')).toBeUndefined();
  });
});
