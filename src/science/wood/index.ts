export * from './equilibrium-moisture';
export * from './pin-meter-temperature';
