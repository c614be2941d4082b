export * from './cautions';
export * from './defects';
export * from './looks';
export * from './remedies';
export * from './seasons';
export * from './service';
export * from './sources';
export * from './trade-types';
