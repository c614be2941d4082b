export * from './describe';
export { drawingFaults } from './drawing-faults';
export * from './faces';
export * from './parts';
export * from './rig';
export * from './shapes';
export * from './sizes';
export * from './starting-layout';
export { ARM_REACH_M, BEAD_DOWN_SIDES_M, beadLength, REACH_FROM_GROUND_M } from './station-facts';
