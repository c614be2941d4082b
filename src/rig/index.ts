export * from './rig';
