/**
 * How often each kind of opening or seam is the one that lets water in, before anything is known of this one. Nobody has
 * published such figures for rigs: these are ours, and only their order leans on what the trade says it finds. They are
 * here in one place so that they can be learned from confirmed finds instead.
 */
type WayIn = { readonly looks: string; readonly chance: number; readonly why: string };

/** Narrower kinds first: the first row that fits a station counts. */
export const WAYS_IN: readonly WayIn[] = [
  { looks: 'roof-edge', chance: 0.05, why: 'longest seam, in sun and water, with screws under an insert' },
  { looks: 'cap-seam', chance: 0.05, why: 'two shells that move against each other' },
  { looks: 'skylight', chance: 0.05, why: 'thin plastic flange that moves with heat' },
  { looks: 'corner-moulding', chance: 0.04, why: 'long upright seam with screws under an insert' },
  { looks: 'window', chance: 0.04, why: 'the opening that is found first by those who look for leaks' },
  { looks: 'vent-hatch', chance: 0.04, why: 'flange and screws on the roof' },
  { looks: 'slide-seals', chance: 0.04, why: 'rubber that is moved, torn and folded' },
  { looks: 'folding-seal', chance: 0.04, why: 'rubber that is moved, torn and folded' },
  { looks: 'aircon-roof', chance: 0.03, why: 'held by a pressed gasket alone' },
  { looks: 'pipe-vent', chance: 0.03, why: 'flange and screws on the roof' },
  { looks: 'fridge-vent-roof', chance: 0.03, why: 'flange and screws on the roof' },
  { looks: 'antenna', chance: 0.03, why: 'screws through the roof' },
  { looks: 'ladder-rack-foot', chance: 0.03, why: 'screws through the roof, under load' },
  { looks: 'entry-door', chance: 0.03, why: 'large frame that racks, with a sill that stands in water' },
  { looks: 'windscreen', chance: 0.03, why: 'large pane that moves with the body' },
  { looks: 'slide-box', chance: 0.03, why: 'flange that is leaned on whenever the room moves' },
  { looks: 'water-heater', chance: 0.03, why: 'large thin flange; the opening named first beside windows' },
  { looks: 'awning-rail', chance: 0.03, why: 'screws in a row under load' },
  { looks: 'opening-roof', chance: 0.03, why: 'flange and screws on the roof' },
  { looks: 'lamp', chance: 0.025, why: 'small gasket over a hole with wires' },
  { looks: 'solar-mount', chance: 0.02, why: 'cable entry on the roof' },
  { looks: 'roof-field', chance: 0.02, why: 'joint in the covering' },
  { looks: 'cord-hatch', chance: 0.02, why: 'small hinged flap' },
  { looks: 'range-vent', chance: 0.02, why: 'flap that sticks open' },
  { looks: 'compartment-door', chance: 0.02, why: 'its seal keeps out spray, not floods; it opens low on the wall' },
  { looks: 'inlet-power', chance: 0.015, why: 'small flange' },
  { looks: 'inlet-water', chance: 0.015, why: 'small flange' },
  { looks: 'furnace-exhaust', chance: 0.015, why: 'small flange' },
  { looks: 'fridge-vent-wall', chance: 0.015, why: 'made to let air through and to drain outward' },
  { looks: 'slide-topper', chance: 0.015, why: 'screws in a row' },
  { looks: 'battery-compartment', chance: 0.01, why: 'vented box apart from the room' },
  { looks: 'lp-compartment', chance: 0.01, why: 'vented box apart from the room' },
];

/** Kinds that are not on the list. */
export const OTHER_WAY_IN: WayIn = { looks: '', chance: 0.02, why: 'a hole in the shell' };

export type Grade = 'S0' | 'S1' | 'S2' | 'S3' | 'S4' | 'S5';
export const GRADES: readonly Grade[] = ['S0', 'S1', 'S2', 'S3', 'S4', 'S5'];

/** By how much the odds of letting water in change with the true state of the bead; ours. */
export const ODDS_BY_STATE: Readonly<Record<Grade, number>> = { S0: 0.3, S1: 0.5, S2: 0.9, S3: 2.5, S4: 7, S5: 12 };

/** How often a bead is graded as it is, and how often one step beside it on either side; ours. */
export const GRADED_RIGHT = 0.7;
/** A grade says half as much after so many years; ours. [a] */
export const GRADE_HALF_LIFE_A = 2;

/** By how much the odds change with the age of the bead; ours, after the two to three years of trade practice and makers' yearly looks. */
export const ODDS_BY_AGE: readonly (readonly [under_a: number, odds: number])[] = [
  [1, 0.5],
  [3, 0.8],
  [6, 1.3],
  [10, 1.8],
  [Number.POSITIVE_INFINITY, 2.3],
];
