export * from './driving-pressure';
export * from './rain-through-plane';
