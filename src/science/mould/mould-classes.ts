/** How readily a surface grows mould. The material behind decides, not how clean it looks. */
export type MouldClassId = 'very-sensitive' | 'sensitive' | 'medium-resistant' | 'resistant';

export type MouldClass = {
  readonly id: MouldClassId;
  readonly examples: string;
  /** How fast, before and from index 1, against pine sapwood. */
  readonly k1_below: number;
  readonly k1_from: number;
  /** The largest index: A + B x − C x². */
  readonly A: number;
  readonly B: number;
  readonly C: number;
  /** Lowest critical humidity. [%] */
  readonly humidity_least: number;
};

/** Viitanen and Ojanen 2007, Ojanen and others 2010, as read in public implementations: vtt-mould-classes.csv. */
export const mouldClasses: readonly MouldClass[] = [
  { id: 'very-sensitive', examples: 'pine sapwood, untreated wood', k1_below: 1, k1_from: 2, A: 1, B: 7, C: 2, humidity_least: 80 },
  { id: 'sensitive', examples: 'planed or spruce wood, glued boards, paper-faced foam', k1_below: 0.578, k1_from: 0.386, A: 0.3, B: 6, C: 1, humidity_least: 80 },
  { id: 'medium-resistant', examples: 'mineral wool, polyester wool, cement', k1_below: 0.072, k1_from: 0.097, A: 0, B: 5, C: 1.5, humidity_least: 85 },
  { id: 'resistant', examples: 'smooth polyurethane, glass, metal', k1_below: 0.033, k1_from: 0.014, A: 0, B: 3, C: 1, humidity_least: 85 },
];

export const mouldClass = (id: MouldClassId): MouldClass => {
  const found = mouldClasses.find((c) => c.id === id);
  if (!found) throw new Error(`no mould class ${id}`);
  return found;
};
