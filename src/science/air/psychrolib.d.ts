/** The part of the second witness that is asked; it is used in checks only. */
declare module 'psychrolib' {
  type Psychrolib = {
    readonly SI: unknown;
    readonly SetUnitSystem: (system: unknown) => void;
    readonly GetSatVapPres: (dry_bulb_c: number) => number;
    readonly GetTDewPointFromRelHum: (dry_bulb_c: number, relative_humidity: number) => number;
    readonly GetRelHumFromTDewPoint: (dry_bulb_c: number, dew_point_c: number) => number;
    readonly GetStandardAtmPressure: (altitude_m: number) => number;
  };
  const psychrolib: Psychrolib;
  export default psychrolib;
}
