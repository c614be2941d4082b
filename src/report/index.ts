export { planDocument } from './plan-document';
export { planText } from './plan-text';
