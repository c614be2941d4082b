/** Name of an error that carries its words across to the page: what happened, what is safe, what to do. */
export const SPOKEN = 'SpokenTrouble';
