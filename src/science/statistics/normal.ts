import { chanceAbove } from '../kriging';

/** Chance that a normal figure of mean 0 and deviation 1 lies at z or above. */
export const normalUpperTail = (z: number): number => chanceAbove(0, 1, z);

const FAR = 12;
const HALVINGS = 60;

/** The z that a normal figure lies above with this chance, 0 < chance < 1, by halving. */
export const normalAbove = (chance: number): number => {
  let low = -FAR;
  let high = FAR;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (normalUpperTail(middle) > chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};
