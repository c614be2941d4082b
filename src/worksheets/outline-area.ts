import { longestExtent, outlineArea, type PlanePoint } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, refuse, showIn } from '../units';
import { step } from './working';

const place = { least: -100, most: 100 };
const MOST_CORNERS = 100;

export const outlineAreaSheet = defineWorksheet({
  id: 'outline-area',
  title: 'Area and extent of an outline',
  tells: 'How large a drawn outline is: a bubble, a soft patch, a stain.',
  example: { x_m: [0.7, 1.1, 1.1, 0.7], y_m: [1.1, 1.1, 1.5, 1.5] },
  inputs: {
    x_m: {
      type: 'numbers',
      quantity: 'length',
      unit: 'm',
      meaning: 'first coordinate of each corner, in the order met on the way round',
      limits: place,
      least: 3,
      most: MOST_CORNERS,
    },
    y_m: { type: 'numbers', quantity: 'length', unit: 'm', meaning: 'second coordinate of each, in the same order', limits: place, least: 3, most: MOST_CORNERS },
  },
  results: {
    area_m2: { type: 'number', quantity: 'area', unit: 'm2', meaning: 'area inside', decimals: 3 },
    area_ft2: { type: 'number', quantity: 'area', unit: 'ft2', meaning: 'the same', decimals: 1 },
    longest_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'longest straight line between two corners', decimals: 2 },
    longest_in: { type: 'number', quantity: 'length', unit: 'in', meaning: 'the same', decimals: 0 },
  },
  calculate: ({ x_m, y_m }) => {
    if (x_m.length !== y_m.length)
      return refuse({
        code: 'lengths-differ',
        path: 'y',
        expected: `${x_m.length} figures, one for each corner`,
        received: String(y_m.length),
        sentence: `There are ${x_m.length} corners along x and ${y_m.length} along y. Give one for each, in the same order.`,
      });
    const points = x_m.map((x, i): PlanePoint => [x, y_m[i] ?? Number.NaN]);
    const area = outlineArea(points);
    if (!area.ok) return area;
    const longest = longestExtent(points);
    const terms = points.slice(0, 3).map(([x, y], i) => {
      const [u, v] = points[(i + 1) % points.length] ?? [x, y];
      return `(${figure(x, 2)} × ${figure(v, 2)} − ${figure(u, 2)} × ${figure(y, 2)})`;
    });
    return accept({
      result: { area_m2: area.value, area_ft2: area.value, longest_m: longest, longest_in: longest },
      working: [
        step(
          'Area by the surveyor’s formula',
          'A = ½ |Σ (xᵢ yᵢ₊₁ − xᵢ₊₁ yᵢ)|',
          `½ |${terms.join(' + ')}${points.length > 3 ? ' + …' : ''}|`,
          `${figure(area.value, 3)} m² (${showIn(area.value, 'area', 'ft2')})`,
        ),
        step('Longest extent', 'the farthest two corners', `${points.length} corners`, `${figure(longest, 2)} m (${showIn(longest, 'length', 'in')})`),
      ],
    });
  },
  sources: [
    seen(
      'Surveyor’s (shoelace) formula, as stated and worked in the Rosetta Code task “Shoelace formula for polygonal area”',
      'https://rosettacode.org/wiki/Shoelace_formula_for_polygonal_area',
    ),
  ],
  limits: ['A flat face and straight edges between corners; a hand-drawn outline is good to a finger’s width at best.'],
  cautions: [],
});
