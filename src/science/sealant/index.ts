export * from './bead-length';
export * from './bead-section';
export * from './packages';
