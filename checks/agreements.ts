import { airAgreements } from '../src/science/air/air.agreement';
import { krigingAgreements } from '../src/science/kriging/kriging.agreement';
import { sealantAgreements } from '../src/science/sealant/sealant.agreement';
import { statisticsAgreements } from '../src/science/statistics/statistics.agreement';
import { sunAgreements } from '../src/science/sun/sun.agreement';
import { surfaceAgreements } from '../src/science/surface/surface.agreement';
import { tyreAgreements } from '../src/science/tyre/tyre.agreement';
import { woodAgreements } from '../src/science/wood/wood.agreement';
import type { Agreement } from '../src/terms';
import { type Measured, measureAgreement } from './agreement';
import { caseAgreements } from './case-agreements';

/** Every agreement of the house. The check gates each, `npm run scores` prints them. */
export const agreements: readonly Agreement[] = [
  ...woodAgreements,
  ...airAgreements,
  ...tyreAgreements,
  ...sealantAgreements,
  ...statisticsAgreements,
  ...krigingAgreements,
  ...sunAgreements,
  ...surfaceAgreements,
  ...caseAgreements,
];

const amount = (n: number, { by, unit }: Agreement['allowed']): string => {
  if (!Number.isFinite(n)) return 'words differ or refused';
  if (by === 'ratio') return `${Number((n * 100).toPrecision(2))} %`;
  if (by === 'own') return n === 0 ? 'none' : `${Number(n.toPrecision(2))} of its tolerance`;
  return n < 1e-6 ? 'none' : `${Number(n.toPrecision(2))} ${unit}`;
};

const allowedWords = ({ allowed }: Agreement): string => (allowed.by === 'own' ? 'each row’s own tolerance' : allowed.most < 1e-6 ? 'exact' : amount(allowed.most, allowed));

const line = (m: Measured): string =>
  `| ${m.agreement.quantity} | ${m.agreement.source} | ${m.rows}${m.rows === m.agreement.rows ? '' : ` of ${m.agreement.rows}`} | ${amount(m.worst, m.agreement.allowed)}${m.worst_at === '' || m.worst < 1e-6 ? '' : ` (${m.worst_at})`} | ${allowedWords(m.agreement)} |${m.passes ? '' : ' **out**'}`;

/** The agreement table as markdown. README shows it; a check compares the two. */
export const agreementTable = (): string =>
  ['| quantity | source | rows | worst deviation | allowed |', '| --- | --- | ---: | --- | --- |', ...agreements.map((a) => line(measureAgreement(a)))].join('\n');

export const allWithinLimits = (): boolean => agreements.every((a) => measureAgreement(a).passes);
