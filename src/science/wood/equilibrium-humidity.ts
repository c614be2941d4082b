import { accept, figure, type Kelvin, type MoistureContent, type RelativeHumidity, type Result, relativeHumidity } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import { emcHumidity, emcTemperature, equilibriumMoisture } from './equilibrium-moisture';

/** Halvings of the humidities in the table down to a hundred-millionth. */
const HALVINGS = 30;

const moistureAt = (temperature: Kelvin, h: number): number => {
  const m = equilibriumMoisture(temperature, relativeHumidity(h));
  return m.ok ? m.value : Number.NaN;
};

/** What moisture contents equation 4-5 reaches at this temperature, from its driest to its dampest air. */
const contents = (temperature: Kelvin): Validity => {
  const least = moistureAt(temperature, emcHumidity.least);
  const most = moistureAt(temperature, emcHumidity.most);
  const words = `${figure(least * 100, 1)} to ${figure(most * 100, 1)} % moisture at this temperature, which go with ${emcHumidity.words}`;
  return { of: 'moisture_content', least, most, words, source: emcHumidity.source };
};

/**
 * The air in which wood would keep this moisture content: what the air in a wall is like whose wood reads this.
 *
 * @param temperature       of the wood and the air about it. [K]
 * @param moisture_content  of the wood, corrected. [kg/kg]
 * @returns                 relative humidity in equilibrium with it. [1]
 * @valid                   30…200 °F and moisture contents that go with 5…95 % (source 1); outside: a refusal `outside-validity`
 * @agrees                  0.8 point of humidity against three values of table 4-2 read backwards
 * @assumes                 as equilibrium moisture; that content rises with humidity all the way, so that halving finds the one answer
 * @source                  1. Glass and Zelinka, Wood Handbook, chapter 4, FPL-GTR-282 (2021), equation 4-5, solved for the humidity
 */
export const equilibriumHumidity = (temperature: Kelvin, moisture_content: MoistureContent): Result<RelativeHumidity> => {
  if (!holds(temperature, emcTemperature)) return outsideValidity(emcTemperature, `${figure(temperature - 273.15, 1)} °C`);
  const reached = contents(temperature);
  if (!holds(moisture_content, reached)) return outsideValidity(reached, `${figure(moisture_content * 100, 1)} %`);
  let low = emcHumidity.least;
  let high = emcHumidity.most;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (moistureAt(temperature, middle) < moisture_content) low = middle;
    else high = middle;
  }
  return accept(relativeHumidity((low + high) / 2));
};
