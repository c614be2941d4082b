import type { Point } from '../path';
import type { Primitive } from '../primitives';
import { along, type PartBox, type PartDrawing } from './part-drawing';

/** Three fields one over the other: stop, turn, back-up. */
const tail = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, w * 0.2),
  p.strokes('detail', [
    [
      [0, h * 0.36],
      [w, h * 0.36],
    ],
    [
      [0, h * 0.66],
      [w, h * 0.66],
    ],
  ]),
  p.disc('detail', w / 2, h * 0.18, w * 0.14),
];
const smallTail = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, w * 0.16),
  p.line('detail', [0, h / 2], [w, h / 2]),
  p.line('detail', [w / 2, 0], [w / 2, h / 2]),
];
const turn = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.poly(
    'opening',
    [
      [0, h * 0.1],
      [w, 0],
      [w, h],
      [w * 0.3, h],
    ],
    w * 0.12,
  ),
  p.line('detail', [w * 0.5, h * 0.12], [w * 0.6, h * 0.9]),
];
const head = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, h * 0.3),
  p.disc('fitting', w * 0.34, h / 2, h * 0.32),
  p.disc('detail', w * 0.34, h / 2, h * 0.14),
  p.disc('fitting', w * 0.76, h / 2, h * 0.2),
];
const pill = ({ p, w, h }: PartBox): readonly Primitive[] => [p.box('opening', 0, 0, w, h, h / 2)];
const clearance = (b: PartBox): readonly Primitive[] => [...pill(b), b.p.line('detail', [b.w / 2, 0], [b.w / 2, b.h])];
const bar = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.line('detail', [0, h / 2], [w, h / 2]),
  ...[0, 0.5, 1].map((t) => p.box('opening', t * (w - 0.1), 0, 0.1, h, h / 2)),
];

const porch = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.015),
  p.arc('fitting', w / 2, h * 0.16, w * 0.34, h * 0.62, 0, Math.PI),
  p.line('fitting', [w * 0.16, h * 0.16], [w * 0.84, h * 0.16]),
];
const step = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, h * 0.25),
  p.strokes('detail', [
    [
      [w * 0.3, h * 0.3],
      [w * 0.2, h * -0.5],
    ],
    [
      [w * 0.5, h * 0.3],
      [w * 0.5, h * -0.6],
    ],
    [
      [w * 0.7, h * 0.3],
      [w * 0.8, h * -0.5],
    ],
  ]),
];
const plate = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.02),
  p.box('detail', 0.015, 0.015, w - 0.03, h - 0.03, 0.01),
  p.dots(
    'mark',
    [
      [w * 0.25, h * 0.86],
      [w * 0.75, h * 0.86],
    ],
    0.008,
  ),
  p.box('fitting', w * 0.4, h, w * 0.2, 0.035, 0.01),
];
const reflector = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('fitting', 0, 0, w, h, 0.008),
  p.strokes(
    'detail',
    along([0, 0], [w, 0], 4).flatMap(([x]): readonly (readonly Point[])[] => [
      [
        [x - w * 0.1, 0],
        [x + w * 0.1, h],
      ],
      [
        [x + w * 0.1, 0],
        [x - w * 0.1, h],
      ],
    ]),
  ),
];
const camera = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.poly(
    'opening',
    [
      [0, 0],
      [w, 0],
      [w * 0.9, h],
      [w * 0.1, h],
    ],
    0.012,
  ),
  p.disc('fitting', w / 2, h * 0.42, h * 0.28),
  p.dots('mark', [[w / 2, h * 0.42]], h * 0.12),
];
const speaker = ({ p, w, h }: PartBox): readonly Primitive[] => {
  const r = Math.min(w, h) / 2;
  const grid = [0.38, 0.7].flatMap((k, i) =>
    Array.from(
      { length: i === 0 ? 6 : 11 },
      (_, j): Point => [w / 2 + r * k * Math.cos((j * 2 * Math.PI) / (i === 0 ? 6 : 11)), h / 2 + r * k * Math.sin((j * 2 * Math.PI) / (i === 0 ? 6 : 11))],
    ),
  );
  return [p.disc('opening', w / 2, h / 2, r), p.dots('mark', [[w / 2, h / 2], ...grid], r * 0.075)];
};
const bracket = ({ p, w, h }: PartBox): readonly Primitive[] => [
  p.box('opening', 0, 0, w, h, 0.008),
  p.dots(
    'detail',
    [
      [w * 0.1, h * 0.25],
      [w * 0.9, h * 0.25],
      [w * 0.1, h * 0.75],
      [w * 0.9, h * 0.75],
    ],
    0.007,
  ),
  p.box('fitting', w * 0.4, h * 0.15, w * 0.2, h * 0.7, 0.005),
];

export const lamps: readonly PartDrawing[] = [
  { parts: ['tail-lamp'], draw: tail },
  { parts: ['tail-lamp-small'], draw: smallTail },
  { parts: ['turn-lamp-front'], draw: turn },
  { parts: ['head-lamp'], draw: head },
  { parts: ['marker-lamp'], draw: pill },
  { parts: ['clearance-lamp'], draw: clearance },
  { parts: ['id-lamp-bar'], draw: bar },
  { parts: ['porch-lamp'], draw: porch },
  { parts: ['step-lamp'], draw: step },
  { parts: ['license-lamp-plate'], draw: plate },
  { parts: ['reflector'], draw: reflector },
  { parts: ['backup-camera'], draw: camera },
  { parts: ['outside-speaker'], draw: speaker },
  { parts: ['tv-bracket-plate'], draw: bracket },
];
