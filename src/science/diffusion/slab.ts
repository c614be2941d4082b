import { accept, figure, type Metres, type Result, type Seconds, type Share, seconds, share } from '../../units';
import { holds, outsideValidity, type Validity } from '../validity';

const SOURCE = 'Crank, The Mathematics of Diffusion, 2nd edition (1975), plane sheet: from memory, unconfirmed';

export const fractionValidity: Validity = { of: 'fraction_left', least: 1e-4, most: 0.9999, words: '0.01 to 99.99 % left', source: SOURCE };

export const wayValidity: Validity = { of: 'way', least: 1e-5, most: 20, words: 'ways from a hundredth of a millimetre to 20 m', source: 'ours' };
export const diffusivityValidity: Validity = {
  of: 'diffusivity',
  least: 1e-14,
  most: 1e-5,
  words: '0.001 to 864 000 mm² a day',
  source: 'ours, from hardly at all to free vapour in air',
};

/** Below this the far face is not felt yet, and the share lost grows with the root of time. */
const EARLY = 0.01;

/**
 * How much of the excess moisture is still in a slab.
 *
 * @param fourier  D t / L²: L is the way to the open face, half the thickness where both faces are open, all of it where one is. [1]
 * @returns        fraction of the excess that is left. [1]
 * @agrees         0.0002 against five values of the same closed form, which are from memory, unconfirmed
 * @assumes        evenly wet at first; the open face is dry at once; nothing moves but along the one way
 * @source         1. Crank, The Mathematics of Diffusion, 2nd edition (1975), plane sheet: from memory, unconfirmed
 */
export const fractionLeft = (fourier: number): Share => {
  if (fourier < EARLY) return share(1 - 2 * Math.sqrt(Math.max(0, fourier) / Math.PI));
  let sum = 0;
  for (let n = 0; n < 40; n++) {
    const k = ((2 * n + 1) * Math.PI) ** 2;
    sum += (8 / k) * Math.exp((-k * fourier) / 4);
  }
  return share(sum);
};

const HALVINGS = 60;
/** Less than a ten-thousandth is left well before this. */
const LATE = 5;

/** D t / L² at which this fraction is left, by halving. */
const fourierAt = (fraction_left: number): number => {
  let low = 0;
  let high = LATE;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (fractionLeft(middle) > fraction_left) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

/**
 * How long a slab takes until only this much of its excess moisture is left. Twice the way takes four times as long.
 *
 * @param way            from the wettest place to the open face: half the thickness where both faces are open. [m]
 * @param diffusivity    of moisture in the material along that way. [m²/s]
 * @param fraction_left  of the excess. [1]
 * @returns              time. [s]
 * @valid                0.01…99.99 % left; outside: a refusal `outside-validity`
 * @agrees               half is gone at D t / L² = 0.197, closed form, from memory, unconfirmed
 * @assumes              as `fractionLeft`; the diffusivity is known, which it hardly ever is: take the answer as an order of magnitude
 * @source               1. Crank, The Mathematics of Diffusion, 2nd edition (1975), plane sheet: from memory, unconfirmed
 */
export const dryingTime = (way: Metres, diffusivity: number, fraction_left: Share): Result<Seconds> => {
  if (!holds(way, wayValidity)) return outsideValidity(wayValidity, `${figure(way * 1000, 2)} mm`);
  // So small in SI that the slack of `holds` would let nothing at all pass.
  if (!(diffusivity >= diffusivityValidity.least && diffusivity <= diffusivityValidity.most)) return outsideValidity(diffusivityValidity, `${diffusivity} m²/s`);
  if (!holds(fraction_left, fractionValidity)) return outsideValidity(fractionValidity, `${figure(fraction_left * 100, 3)} %`);
  return accept(seconds((fourierAt(fraction_left) * way ** 2) / diffusivity));
};

/** How many times longer one way takes to dry than another: the square of their ratio, whatever the material. */
export const timesLonger = (way: Metres, than: Metres): number => (way / than) ** 2;
