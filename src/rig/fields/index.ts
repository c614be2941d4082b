export { fieldsOf } from './fields-of';
export type { Field, Fields } from './types';
