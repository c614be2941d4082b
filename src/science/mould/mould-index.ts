import { accept, type Kelvin, type RelativeHumidity, type Result } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import { type MouldClassId, mouldClass } from './mould-classes';
import { grows, growthADay, mouldHumidity } from './mould-growth';

/** A stretch of time with one climate at the surface; one hour of a record, or weeks. */
export type MouldSpell = {
  readonly hours: number;
  /** Of the surface. [K] */
  readonly temperature: Kelvin;
  /** At the surface. [1] */
  readonly relative_humidity: RelativeHumidity;
};

export type MouldCourse = {
  /** At the end, 0 to 6. */
  readonly index: number;
  readonly highest: number;
  /** After each spell. */
  readonly after: readonly number[];
};

const SCALE_END = 6;
/** A dry spell takes off at once, then rests, then goes on slowly. Hours and index a day. */
const FIRST_H = 6;
const REST_UNTIL_H = 24;
const FIRST_A_DAY = 0.032;
const LATER_A_DAY = 0.016;

const climate: Validity = { of: 'temperature', least: 173.15, most: 373.15, words: 'surfaces from −100 to 100 °C', source: 'the climate a wall can have' };

const mouldStart: Validity = { of: 'start', least: 0, most: SCALE_END, words: 'an index from 0 to 6', source: 'the scale of the model' };
const declineFactor: Validity = { of: 'decline', least: 0, most: 1, words: 'a factor from 0 to 1', source: 'improved VTT model, from memory, unconfirmed' };

const declineADay = (dry_hours: number): number => (dry_hours <= FIRST_H ? FIRST_A_DAY : dry_hours <= REST_UNTIL_H ? 0 : LATER_A_DAY);

const spellHours: Validity = { of: 'hours', least: 0, most: 1e6, words: '0 to a million hours', source: 'ours' };

const faultOf = (spell: MouldSpell, i: number): Result<never> | undefined => {
  const at = (list: string, validity: Validity): Validity => ({ ...validity, of: `${list}[${i}]` });
  if (!holds(spell.hours, spellHours)) return outsideValidity(at('hours', spellHours), `${spell.hours} h`);
  if (!holds(spell.temperature, climate)) return outsideValidity(at('temperatures', climate), `${spell.temperature - 273.15} °C`);
  if (!holds(spell.relative_humidity, mouldHumidity)) return outsideValidity(at('humidities', mouldHumidity), `${spell.relative_humidity * 100} %`);
  return undefined;
};

/**
 * How far mould would come on a surface through times of damp and dry, hour by hour. A class of risk, not the truth about a wall.
 *
 * @param spells   one after another; an hourly record is spells of one hour
 * @param surface  how readily the material grows mould
 * @param decline  how fast growth fades in dry times: 1, 0.5, 0.25 or 0.1 (from memory, unconfirmed)
 * @param start    the index it begins with, 0…6
 * @returns        index at the end, the highest on the way, and after each spell; it never goes below 0, where the scale begins
 * @valid          humidity 0…100 %; growth between 0 and 50 °C, rest outside
 * @agrees         0.03 against eight cases at constant climate and two that dry, 0.05 against daily cycling, made by another implementation
 *                 that keeps the cubic between 20 and 25 °C, which is worth up to 0.01
 * @assumes        explicit steps of one hour, the last of a spell shorter where it ends between; the climate at the surface is known, which it rarely is inside a wall
 * @source         1. Hukka and Viitanen 1999, Wood Science and Technology 33:475; Ojanen and others 2010: equations read in public implementations
 */
export const mouldThrough = (spells: readonly MouldSpell[], surface: MouldClassId, decline = 1, start = 0): Result<MouldCourse> => {
  const of = mouldClass(surface);
  if (!holds(start, mouldStart)) return outsideValidity(mouldStart, String(start));
  if (!holds(decline, declineFactor)) return outsideValidity(declineFactor, String(decline));
  for (const [i, spell] of spells.entries()) {
    const fault = faultOf(spell, i);
    if (fault) return fault;
  }
  let index = start;
  let highest = index;
  let dry_hours = 0;
  const after: number[] = [];
  for (const { hours, temperature, relative_humidity } of spells) {
    const [T, RH] = [temperature - 273.15, relative_humidity * 100];
    const damp = grows(T, RH, of);
    for (let left = hours; left > 0; left -= 1) {
      const step = Math.min(1, left);
      dry_hours = damp ? 0 : dry_hours + step;
      const change = damp ? growthADay(T, RH, index, of) : -decline * declineADay(dry_hours);
      index = Math.max(0, index + (change * step) / 24);
      highest = Math.max(highest, index);
    }
    after.push(index);
  }
  return accept({ index, highest, after });
};

const STEPS: readonly string[] = [
  'none',
  'the first, under a microscope only',
  'several colonies, under a microscope only',
  'to be seen, on less than a tenth of the surface',
  'to be seen, on a tenth to half of the surface',
  'to be seen, on more than half of the surface',
  'on nearly all of the surface',
];

/** What an index means: the step of the scale it has reached. */
export const mouldWords = (index: number): string => STEPS[Math.floor(index)] ?? STEPS[SCALE_END] ?? '';

export type MouldRisk = 'low' | 'middle' | 'high';

/** Below 1 nothing is there; from 3 it is to be seen: the limit of a building standard, from memory, unconfirmed. */
export const mouldRisk = (index: number): MouldRisk => (index < 1 ? 'low' : index < 3 ? 'middle' : 'high');
