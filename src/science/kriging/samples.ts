import { accept, type Result, refuse } from '../../units';

/** One reading at one place. */
export type Sample = { readonly x: number; readonly y: number; readonly value: number };

/** Readings of which no two stand at the same place, and how many repeats went into their means. */
export type Samples = { readonly samples: readonly Sample[]; readonly repeats: number };

/**
 * Readings taken again at the very same place count as one, their mean: two rows for one place would make the system singular.
 *
 * @param within  how near still is the same place; nothing by default
 * @returns  places in the order in which they first came; or a refusal when nothing can be reckoned
 * @valid    at least one reading, all of them finite
 */
export const places = (given: readonly Sample[], within = 0): Result<Samples> => {
  const unusable = given.findIndex((s) => !Number.isFinite(s.x) || !Number.isFinite(s.y) || !Number.isFinite(s.value));
  if (unusable >= 0)
    return refuse({
      code: 'not-a-number',
      path: 'values',
      expected: 'readings that are numbers, each with its place',
      received: `reading ${unusable + 1}`,
      sentence: `Reading ${unusable + 1} has no number or no place. Leave it out.`,
    });
  if (given.length === 0)
    return refuse({
      code: 'too-few',
      path: 'values',
      expected: 'at least one reading',
      received: '0',
      sentence: 'There is no reading yet, so nothing can be said of the places between.',
    });
  const groups: Sample[][] = [];
  for (const s of given) {
    const here = groups.find(([first]) => first !== undefined && Math.hypot(s.x - first.x, s.y - first.y) <= within);
    if (here) here.push(s);
    else groups.push([s]);
  }
  const samples = groups.map((here): Sample => {
    const [first] = here as [Sample];
    return here.length === 1 ? first : { x: first.x, y: first.y, value: here.reduce((sum, s) => sum + s.value, 0) / here.length };
  });
  return accept({ samples, repeats: given.length - samples.length });
};
