import type { Point } from '../path';
import type { Primitive } from '../primitives';
import type { PartBox, PartDrawing } from './part-drawing';

const plate = ({ p, w, h }: PartBox, r = 0.2): Primitive => p.box('opening', 0, 0, w, h, Math.min(w, h) * r);
const middle = ({ w, h }: PartBox): { readonly cx: number; readonly cy: number; readonly s: number } => ({ cx: w / 2, cy: h / 2, s: Math.min(w, h) });

/** Points on a circle, the first at the top. */
const roundabout = (cx: number, cy: number, r: number, count: number): readonly Point[] =>
  Array.from({ length: count }, (_, i) => {
    const a = Math.PI / 2 + (i * 2 * Math.PI) / count;
    return [cx + r * Math.cos(a), cy + r * Math.sin(a)] as const;
  });

/** A round socket under a lid, with its number of blades. */
const socket =
  (blades: number, double: boolean) =>
  (b: PartBox): readonly Primitive[] => {
    const { cx, cy, s } = middle(b);
    return [
      plate(b),
      b.p.disc('fitting', cx, cy, s * 0.34),
      ...(double ? [b.p.disc('detail', cx, cy, s * 0.27)] : []),
      b.p.strokes(
        'opening',
        roundabout(cx, cy, s * 0.17, blades).map(([x, y]) => [
          [x - s * 0.05, y],
          [x + s * 0.05, y],
        ]),
      ),
      b.p.line('detail', [b.w * 0.2, b.h * 0.94], [b.w * 0.8, b.h * 0.94]),
    ];
  };

const outlet = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [plate(b, 0.14), p.box('fitting', w * 0.2, h * 0.54, w * 0.6, h * 0.3, 0.012), p.box('fitting', w * 0.2, h * 0.14, w * 0.6, h * 0.3, 0.012)];
};

const cord = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [plate(b, 0.16), p.box('fitting', w * 0.12, h * 0.12, w * 0.76, h * 0.76, 0.012), p.arc('opening', w * 0.5, h * 0.12, w * 0.2, h * 0.2, 0, Math.PI)];
};

const cable = (b: PartBox): readonly Primitive[] => {
  const { cx, cy, s } = middle(b);
  return [plate(b, 0.14), b.p.disc('fitting', cx, cy, s * 0.25), b.p.dots('mark', [[cx, cy]], s * 0.09)];
};

const solar = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [plate(b, 0.14), p.disc('fitting', w * 0.32, h / 2, w * 0.15), p.disc('fitting', w * 0.68, h / 2, w * 0.15)];
};

/** Water in: a ring with three lugs to turn it by. */
const city = (b: PartBox): readonly Primitive[] => {
  const { cx, cy, s } = middle(b);
  const [inner, outer] = [roundabout(cx, cy, s * 0.26, 3), roundabout(cx, cy, s * 0.42, 3)];
  return [
    b.p.disc('opening', cx, cy, s * 0.5),
    b.p.disc('fitting', cx, cy, s * 0.26),
    b.p.strokes(
      'detail',
      inner.map((q, i) => [q, outer[i] ?? q]),
    ),
    b.p.disc('detail', cx, cy, s * 0.1),
  ];
};

const gravity = (b: PartBox): readonly Primitive[] => {
  const { cx, cy, s } = middle(b);
  return [plate(b), b.p.disc('fitting', cx, cy, s * 0.34), b.p.line('opening', [cx - s * 0.2, cy], [cx + s * 0.2, cy]), b.p.dots('mark', [[cx, cy - s * 0.2]], s * 0.045)];
};

const combo = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [
    plate(b, 0.12),
    p.disc('fitting', w * 0.3, h * 0.5, h * 0.24),
    p.disc('fitting', w * 0.7, h * 0.5, h * 0.24),
    p.line('detail', [w * 0.18, h * 0.5], [w * 0.42, h * 0.5]),
    p.dots('mark', [[w * 0.7, h * 0.5]], h * 0.07),
  ];
};

const flush = (b: PartBox): readonly Primitive[] => {
  const { cx, cy, s } = middle(b);
  return [
    b.p.disc('opening', cx, cy, s * 0.5),
    b.p.strokes('detail', [
      [
        [cx - s * 0.3, cy],
        [cx + s * 0.3, cy],
      ],
      [
        [cx, cy - s * 0.3],
        [cx, cy + s * 0.3],
      ],
    ]),
  ];
};

const shower = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [
    plate(b, 0.12),
    p.box('fitting', w * 0.06, h * 0.1, w * 0.88, h * 0.8, 0.02),
    p.disc('detail', w * 0.24, h * 0.5, h * 0.17),
    p.disc('detail', w * 0.44, h * 0.5, h * 0.17),
    p.bent(
      'opening',
      [
        [w * 0.6, h * 0.26],
        [w * 0.72, h * 0.74],
        [w * 0.86, h * 0.74],
        [w * 0.86, h * 0.34],
      ],
      h * 0.2,
    ),
  ];
};

const gas = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [
    plate(b, 0.1),
    p.strokes('opening', [
      [
        [w * 0.2, h * 0.5],
        [w * 0.72, h * 0.5],
      ],
      [
        [w * 0.46, h * 0.5],
        [w * 0.46, h * 0.8],
      ],
      [
        [w * 0.32, h * 0.8],
        [w * 0.6, h * 0.8],
      ],
    ]),
    p.disc('detail', w * 0.8, h * 0.5, h * 0.14),
  ];
};

const fuel = (b: PartBox): readonly Primitive[] => {
  const { p, w, h } = b;
  return [
    plate(b, 0.3),
    p.disc('fitting', w / 2, h / 2, w * 0.3),
    p.strokes('opening', [
      [
        [w * 0.42, h * 0.36],
        [w * 0.58, h * 0.64],
      ],
    ]),
    p.line('detail', [w * 0.04, h * 0.34], [w * 0.04, h * 0.66]),
  ];
};

export const inlets: readonly PartDrawing[] = [
  { parts: ['power-inlet-*'], draw: socket(3, false) },
  { parts: ['power-inlet-50a'], draw: socket(4, true) },
  { parts: ['outlet-exterior'], draw: outlet },
  { parts: ['cord-hatch'], draw: cord },
  { parts: ['cable-tv-inlet'], draw: cable },
  { parts: ['solar-port'], draw: solar },
  { parts: ['city-water-inlet'], draw: city },
  { parts: ['gravity-water-fill'], draw: gravity },
  { parts: ['water-fill-combo'], draw: combo },
  { parts: ['tank-flush-inlet'], draw: flush },
  { parts: ['outside-shower'], draw: shower },
  { parts: ['quick-connect-gas'], draw: gas },
  { parts: ['fuel-filler'], draw: fuel },
];
