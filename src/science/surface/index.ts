export * from './application-gate';
export * from './dew-margin';
export * from './face-in-weather';
export * from './skin-colour';
export * from './sky-emissivity';
export * from './sol-air';
export * from './surface-temperature';
export * from './wind-film';
