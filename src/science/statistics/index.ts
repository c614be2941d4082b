export { kendallUpperTail, type MannKendall, mannKendall } from './mann-kendall';
export { median, scaledMad } from './median';
export { type SenLine, senInterval, theilSen } from './theil-sen';
