import { agreementTable, allWithinLimits } from '../checks/agreements';

/** Prints how every calculation agrees with what others published; fails when one row is out of its limit or was dropped. */
process.stdout.write(`${agreementTable()}\n`);
process.exitCode = allWithinLimits() ? 0 : 1;
