import type { Agreement } from '../../terms';
import { kelvin, share } from '../../units';
import { surfaceTemperature } from '.';

/** Standard sun, air and sky of ASTM E1980-11, medium wind. */
const STANDARD = { air: kelvin(310), irradiance: 1000, film: 12, sky_emissivity: (300 / 310) ** 4, sky_share: 1 };

export const surfaceAgreements: readonly Agreement[] = [
  {
    quantity: 'Surface in the sun, from its heat balance',
    source: 'Solar reflectance index calculator at the conditions of ASTM E1980-11, medium wind',
    table: 'src/science/surface/reference-surfaces.csv',
    rows: 3,
    allowed: { by: 'difference', most: 0.1, unit: 'K' },
    remark: 'The arithmetic only. A real skin on a real day is good to ±30 % of its rise over the air.',
    measure: (rows) =>
      rows.map((r) => {
        const t = surfaceTemperature({ ...STANDARD, absorptance: share(1 - Number(r.solar_reflectance)), emittance: share(Number(r.ir_emittance)) });
        return { label: String(r.what), expected: Number(r.surface_k), got: t.ok ? t.value.surface : 'refused' };
      }),
  },
];
