export * from './equilibrium-humidity';
export * from './equilibrium-moisture';
export * from './oven-dry';
export * from './pin-meter-temperature';
