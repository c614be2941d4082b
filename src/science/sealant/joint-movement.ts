import { accept, figure, type Kelvin, type Metres, metres, type Result, refuse } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';
import type { Expansion } from './thermal-expansion';

export const partTemperature: Validity = { of: 'temperature', least: 203.15, most: 393.15, words: 'parts of −70 to 120 °C', source: 'ours: beyond what sealants are made for' };

/** One side of a seam: what it is made of, and how cold and how hot it gets. */
export type SeamPart = { readonly expansion: Expansion; readonly coldest: Kelvin; readonly hottest: Kelvin };

export type Seam = {
  /** From where the two parts are fixed to each other to the far end of the bead. [m] */
  readonly length: Metres;
  readonly one: SeamPart;
  readonly other: SeamPart;
  /** Both parts of one make: then they share a coefficient, whatever it is. */
  readonly alike: boolean;
  /** When the bead was or will be laid: a span where it is not known. [K] */
  readonly laid_coldest: Kelvin;
  readonly laid_warmest: Kelvin;
};

export type JointMovement = {
  /** The most by which the first part outgrows the other, counted from the day of laying. [m] */
  readonly grows: Metres;
  /** The most by which it falls short. [m] */
  readonly shrinks: Metres;
  /** The larger of the two. [m] */
  readonly most: Metres;
  /** What it comes to at least, with the kindest coefficients of the sources. [m] */
  readonly least: Metres;
};

/** Pairs of coefficients at the corners of what the sources say. */
const corners = ({ one, other, alike }: Seam): readonly (readonly [number, number])[] =>
  alike
    ? [
        [one.expansion.low, other.expansion.low],
        [one.expansion.high, other.expansion.high],
      ]
    : [one.expansion.low, one.expansion.high].flatMap((a) => [other.expansion.low, other.expansion.high].map((b) => [a, b] as const));

/** How close to nothing a span comes. */
const nearest = (spread: readonly number[]): number => {
  const [low, high] = [Math.min(...spread), Math.max(...spread)];
  return low <= 0 && high >= 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
};

/** Hottest before coldest and the warmer laying before the colder are slips, not seams. */
const crossed = (seam: Seam): Result<never> | undefined => {
  const pairs = [
    ['one_hottest', seam.one.coldest, seam.one.hottest],
    ['other_hottest', seam.other.coldest, seam.other.hottest],
    ['laid_warmest', seam.laid_coldest, seam.laid_warmest],
  ] as const;
  const wrong = pairs.filter(([, low, high]) => high < low);
  if (wrong.length === 0) return undefined;
  return refuse(
    ...wrong.map(([path, low, high]) => ({
      code: 'limits-crossed',
      path,
      expected: `${figure(low - 273.15, 1)} °C or more`,
      received: `${figure(high - 273.15, 1)} °C`,
      sentence: 'The warmer end is colder than the colder end. Change them over.',
    })),
  );
};

/**
 * How far two parts of a seam move against each other through the seasons, because one gets hotter or stretches more than the other.
 *
 * @param seam  length, the two parts with their coldest and hottest, and how warm both were when the bead was laid
 * @returns     most growth and most shrinking of the first part against the other, and the least the movement comes to. [m]
 * @valid       parts of −70…120 °C (refused otherwise)
 * @agrees      0.005 in against three worked panels of two schools' and makers' bulletins, exactly with four closed forms
 * @assumes     the parts are fixed to each other at one place and free to slide from there; both are as warm as each other on the day of laying;
 *              hottest together and coldest together. Screws every hand's width hold a flange back: then this is more than the seam sees
 * @source      1. ΔL = α L ΔT: Cornell University ARCH 262, J. Ochshorn, assignment 3 (fall 2005 and 2007); SCGMA technical bulletin, Sealant joint design
 *              2. the difference of two parts |α₁ΔT₁ − α₂ΔT₂| L: closed form
 */
export const jointMovement = (seam: Seam): Result<JointMovement> => {
  const temperatures = { one_coldest: seam.one.coldest, one_hottest: seam.one.hottest, other_coldest: seam.other.coldest, other_hottest: seam.other.hottest };
  for (const [of, t] of Object.entries({ ...temperatures, laid_coldest: seam.laid_coldest, laid_warmest: seam.laid_warmest }))
    if (!holds(t, partTemperature)) return outsideValidity({ ...partTemperature, of }, `${figure(t - 273.15, 1)} °C`);
  const slip = crossed(seam);
  if (slip) return slip;
  const states = [
    [seam.one.hottest, seam.other.hottest],
    [seam.one.coldest, seam.other.coldest],
  ] as const;
  // Growth is linear in each coefficient and in the temperature of laying, so its extremes lie at the corners.
  const spreads = states.flatMap(([t1, t2]) =>
    [seam.laid_coldest, seam.laid_warmest].map((laid) => corners(seam).map(([a1, a2]) => (a1 * (t1 - laid) - a2 * (t2 - laid)) * seam.length)),
  );
  const all = spreads.flat();
  const grows = Math.max(0, ...all);
  const shrinks = Math.max(0, -Math.min(...all));
  return accept({ grows: metres(grows), shrinks: metres(shrinks), most: metres(Math.max(grows, shrinks)), least: metres(Math.max(...spreads.map(nearest))) });
};
