import type { Option } from '../terms';

/** Families of sealing materials, by what they are made of and never by maker. Which goes with which is judged elsewhere. */
export const SEALANTS = [
  { id: 'lap-self-levelling', word: 'Lap sealant, self-levelling', line: 'flows flat; only where it is level' },
  { id: 'lap-non-sag', word: 'Lap sealant, non-sag', line: 'stays where it is laid; for edges and walls' },
  { id: 'butyl-tape', word: 'Butyl tape', line: 'soft, grey or black, squeezed under a flange' },
  { id: 'butyl-gun', word: 'Butyl from a gun' },
  { id: 'silicone', word: 'Silicone', line: 'rubbery, smooth, nothing else sticks to it' },
  { id: 'polyurethane', word: 'Polyurethane' },
  { id: 'hybrid', word: 'Hybrid (silyl-ended)' },
  { id: 'polysulphide', word: 'Polysulphide', line: 'harms many plastics' },
  { id: 'acrylic', word: 'Acrylic' },
  { id: 'repair-tape', word: 'Faced repair tape' },
  { id: 'gasket', word: 'Gasket or rubber seal' },
  { id: 'other', word: 'Something else' },
  { id: 'unknown', word: 'Not known' },
] as const satisfies readonly Option[];

/** What a bead is laid on. */
export const SURFACES = [
  { id: 'epdm', word: 'EPDM rubber' },
  { id: 'tpo', word: 'TPO' },
  { id: 'pvc', word: 'PVC' },
  { id: 'coated', word: 'Coated roof' },
  { id: 'fibreglass', word: 'Fibreglass or gelcoat' },
  { id: 'painted-aluminium', word: 'Painted aluminium' },
  { id: 'bare-aluminium', word: 'Bare aluminium' },
  { id: 'painted-steel', word: 'Painted or galvanised steel' },
  { id: 'abs', word: 'ABS plastic' },
  { id: 'acrylic', word: 'Acrylic pane' },
  { id: 'polycarbonate', word: 'Polycarbonate' },
  { id: 'glass', word: 'Glass' },
  { id: 'wood', word: 'Wood' },
  { id: 'unknown', word: 'Not known' },
] as const satisfies readonly Option[];
