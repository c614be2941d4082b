import { accept, figure, type Kelvin, type MoistureContent, moistureContent, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

export const pinMeterTemperature: Validity = {
  of: 'wood_temperature',
  least: 273.15,
  most: 323.15,
  words: 'wood from 0 to 50 °C; frozen wood cannot be read',
  source: 'two resistance-meter manuals',
};
export const pinMeterReading: Validity = {
  of: 'reading',
  least: 0.07,
  most: 0.3,
  words: 'readings from 7 to 30 %; above that a pin meter tells only that the wood is wet, below it only that it is dry',
  source: 'two resistance-meter manuals; Electric Moisture Meters for Wood, FPL-GTR-6, abstract',
};

/** What two makers' charts differ by after correction: carried as uncertainty. [kg/kg] */
export const PIN_METER_UNCERTAINTY = moistureContent(0.01);

const within = (reading: MoistureContent, wood_temperature: Kelvin): Result<undefined> => {
  if (!holds(wood_temperature, pinMeterTemperature)) return outsideValidity(pinMeterTemperature, `${figure(wood_temperature - 273.15, 1)} °C`);
  return holds(reading, pinMeterReading) ? accept(undefined) : outsideValidity(pinMeterReading, `${figure(reading * 100, 1)} %`);
};

/**
 * What a pin meter would have shown had the wood been as warm as its calibration: half a point for every 5 °C.
 *
 * @param reading           as shown, already corrected for the kind of wood if the meter does that. [kg/kg]
 * @param wood_temperature  of the wood, not of the air. [K]
 * @param calibrated_at     temperature the meter was calibrated for; 20 °C unless its manual says otherwise. [K]
 * @returns                 corrected reading. [kg/kg]
 * @valid                   wood 0…50 °C, readings 7…30 % (source 1, 2); outside: a refusal `outside-validity`
 * @agrees                  exact against source 1's own rule; within 1.1 points of four values of source 2's chart
 * @assumes                 the rule is applied within 5 °C of calibration too, where source 1 calls it unnecessary: the step stays below half a point
 * @source                  1. Resistance-meter manual, correction page: 0.5 % for every 5 °C from 20 °C
 *                          2. Pin-probe meter manual, p. 37, temperature chart (whole numbers)
 */
export const pinMeterLinear = (reading: MoistureContent, wood_temperature: Kelvin, calibrated_at: Kelvin): Result<MoistureContent> => {
  const allowed = within(reading, wood_temperature);
  return allowed.ok ? accept(moistureContent(reading + 0.001 * (calibrated_at - wood_temperature))) : allowed;
};

/**
 * The same by the curve of Pfaff and Garrahan, for those who prefer it; steeper in the cold.
 *
 * @param reading           on the Douglas-fir scale, as shown. [kg/kg]
 * @param wood_temperature  of the wood. [K]
 * @returns                 corrected reading. [kg/kg]
 * @valid                   wood 0…50 °C, readings 7…30 %; outside: a refusal `outside-validity`
 * @agrees                  within 1.6 points of the chart in a pin-probe meter manual, p. 37
 * @assumes                 the kind of wood is left as read: a = 1, b = 0
 * @source                  1. Pfaff and Garrahan 1986; Garrahan 1988; coefficients as used by Straube, Onysko and Schumacher 2002: from memory, unconfirmed
 */
export const pinMeterPfaffGarrahan = (reading: MoistureContent, wood_temperature: Kelvin): Result<MoistureContent> => {
  const allowed = within(reading, wood_temperature);
  if (!allowed.ok) return allowed;
  const R = reading * 100;
  const T = wood_temperature - 273.15;
  return accept(moistureContent((R + 0.567 - 0.026 * T + 0.000051 * T ** 2) / (0.881 * 1.0056 ** T) / 100));
};
