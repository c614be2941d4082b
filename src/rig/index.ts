export * from './describe';
export * from './rig';
