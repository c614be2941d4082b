/** How a skin takes up sunlight and gives off heat, by how it looks. */
export type SkinColour = {
  readonly id: string;
  readonly word: string;
  /** [1] */
  readonly absorptance: number;
  /** [1] */
  readonly emittance: number;
  readonly source: string;
};

const NON_METAL = 0.9;

/**
 * Five looks and one metal. A colour seen by eye tells sunlight only roughly, because half of it is not seen: take a step more as ±0.1.
 * Bare, bright metal is left out: it gives off little heat and can run hotter than white paint.
 */
export const SKIN_COLOURS: readonly SkinColour[] = [
  { id: 'white', word: 'clean white', absorptance: 0.2, emittance: NON_METAL, source: 'A good white coating reflects 0.8: cool-roof definitions page of a national laboratory' },
  { id: 'light', word: 'light, or white gone dull', absorptance: 0.45, emittance: NON_METAL, source: 'Light surface of the ASHRAE sol-air rule: α/h 0.026 at h 17' },
  { id: 'medium', word: 'middling, such as grey or tan', absorptance: 0.65, emittance: NON_METAL, source: 'Ours: between the light and the dark of the ASHRAE rule' },
  { id: 'dark', word: 'dark', absorptance: 0.9, emittance: NON_METAL, source: 'Dark surface of the ASHRAE sol-air rule: α/h 0.053 at h 17' },
  { id: 'black', word: 'black', absorptance: 0.95, emittance: NON_METAL, source: 'Reference black of the cool-roof definitions page' },
  {
    id: 'aluminium-coat',
    word: 'aluminium roof coating',
    absorptance: 0.4,
    emittance: 0.5,
    source: 'Ours: emittance in between, as the cool-roof definitions page says of such coatings',
  },
];

export const skinColour = (id: string): SkinColour | undefined => SKIN_COLOURS.find((c) => c.id === id);
