import type { Primitive } from '../primitives';
import { along, type PartBox, type PartDrawing, slats } from './part-drawing';

const louvre =
  (count: number, radius = 0.02) =>
  ({ p, w, h }: PartBox): readonly Primitive[] => [p.box('opening', 0, 0, w, h, radius), p.strokes('detail', slats(w * 0.07, h * 0.06, w * 0.86, h * 0.88, count))];

/** Two latches tell the upper grille from the lower one. */
const upperGrille = (b: PartBox): readonly Primitive[] => [
  ...louvre(5)(b),
  b.p.box('fitting', b.w * 0.1, b.h * 0.4, 0.05, 0.05, 0.01),
  b.p.box('fitting', b.w * 0.9 - 0.05, b.h * 0.4, 0.05, 0.05, 0.01),
];

const heater = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.03),
  p.box('fitting', 0.025, 0.025, w - 0.05, h - 0.05, 0.02),
  p.box('fitting', w * 0.16, h * 0.52, w * 0.68, h * 0.32, 0.02),
  p.strokes('detail', slats(w * 0.2, h * 0.53, w * 0.6, h * 0.3, 4)),
  p.disc('fitting', w * 0.34, h * 0.26, h * 0.1),
  p.disc('detail', w * 0.66, h * 0.26, h * 0.06),
];

const tallHeater = (b: PartBox): readonly Primitive[] => [...heater(b), b.p.line('opening', [b.w * 0.1, b.h * 0.45], [b.w * 0.9, b.h * 0.45])];

/** No storage behind it: one square grille and a round flue. */
const onDemand = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.03),
  p.box('fitting', 0.03, 0.03, w - 0.06, h - 0.06, 0.02),
  p.disc('opening', w * 0.5, h * 0.62, w * 0.2),
  p.disc('detail', w * 0.5, h * 0.62, w * 0.12),
  p.strokes('detail', slats(w * 0.2, h * 0.1, w * 0.6, h * 0.22, 3)),
];

/** Air in and fumes out, side by side. */
const furnace = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.02),
  p.disc('fitting', w * 0.29, h * 0.5, h * 0.28),
  p.disc('fitting', w * 0.71, h * 0.5, h * 0.28),
  p.disc('detail', w * 0.29, h * 0.5, h * 0.14),
  p.disc('detail', w * 0.71, h * 0.5, h * 0.14),
];

const furnaceDoor = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.025),
  p.box('fitting', 0.03, 0.03, w - 0.06, h - 0.06, 0.015),
  p.disc('fitting', w * 0.3, h * 0.62, h * 0.11),
  p.disc('fitting', w * 0.7, h * 0.62, h * 0.11),
  p.strokes('detail', slats(w * 0.18, h * 0.14, w * 0.64, h * 0.2, 2)),
  p.dots(
    'mark',
    [
      [w * 0.06, h * 0.1],
      [w * 0.94, h * 0.1],
      [w * 0.06, h * 0.9],
      [w * 0.94, h * 0.9],
    ],
    0.008,
  ),
];

const flue = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const r = Math.min(w, h) / 2;
  return [p.disc('opening', w / 2, h / 2, r), p.disc('fitting', w / 2, h / 2, r * 0.66), p.disc('detail', w / 2, h / 2, r * 0.32)];
};

const flueBox = (b: PartBox): readonly Primitive[] => [
  b.p.box('opening', 0, 0, b.w, b.h, 0.02),
  b.p.disc('fitting', b.w / 2, b.h * 0.56, b.w * 0.34),
  b.p.disc('detail', b.w / 2, b.h * 0.56, b.w * 0.18),
  b.p.line('detail', [b.w * 0.15, b.h * 0.1], [b.w * 0.85, b.h * 0.1]),
];

/** A flap that hangs down and opens with the fan. */
const hood = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.02),
  p.box('fitting', w * 0.08, h * 0.14, w * 0.84, h * 0.62, 0.01),
  p.line('opening', [w * 0.08, h * 0.76], [w * 0.92, h * 0.76]),
  p.line('detail', [w * 0.44, h * 0.24], [w * 0.56, h * 0.24]),
];

const roundVent = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const r = Math.min(w, h) / 2;
  return [
    p.disc('opening', w / 2, h / 2, r),
    p.strokes(
      'detail',
      along([w / 2, h / 2 - r * 0.8], [w / 2, h / 2 + r * 0.8], 4).map(([x, y]) => [
        [x - r * 0.6, y],
        [x + r * 0.6, y],
      ]),
    ),
  ];
};

const smallVent = ({ p, w, h }: PartBox): readonly Primitive[] => [p.box('opening', 0, 0, w, h, 0.02), p.strokes('detail', slats(w * 0.18, h * 0.12, w * 0.64, h * 0.76, 3))];

const stove = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, h * 0.2),
  p.strokes('detail', slats(w * 0.08, h * 0.18, w * 0.36, h * 0.64, 3)),
  p.strokes('detail', slats(w * 0.56, h * 0.18, w * 0.36, h * 0.64, 3)),
];

export const vents: readonly PartDrawing[] = [
  { parts: ['water-heater-*'], draw: heater },
  { parts: ['water-heater-10gal'], draw: tallHeater },
  { parts: ['water-heater-ondemand'], draw: onDemand },
  { parts: ['furnace-vent'], draw: furnace },
  { parts: ['furnace-access-door'], draw: furnaceDoor },
  { parts: ['heater-flue-wall'], draw: flueBox },
  { parts: ['heater-flue-under'], draw: flue },
  { parts: ['fridge-vent-lower'], draw: louvre(6) },
  { parts: ['fridge-vent-upper'], draw: upperGrille },
  { parts: ['range-hood-vent'], draw: hood },
  { parts: ['battery-vent'], draw: roundVent },
  { parts: ['wall-vent-small'], draw: smallVent },
  { parts: ['stove-vent-lower'], draw: stove },
];
