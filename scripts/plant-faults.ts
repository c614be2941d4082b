/**
 * Plants each fault of checks/planted-faults.json in turn and runs the checks that should notice.
 * A fault counts as caught only when a check ran and failed on it: a file that does not load proves nothing.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Fault, faults } from './planted-fault';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const folder = join(root, '.seamward', 'faults');

type Verdict = { readonly fault: Fault; readonly caught: boolean; readonly why: string };

type Report = {
  readonly numFailedTests: number;
  readonly testResults: readonly { readonly message: string; readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[] }[];
};

const verdict = (fault: Fault, report: string): Verdict => {
  try {
    const r = JSON.parse(readFileSync(report, 'utf8')) as Report;
    const misplaced = r.testResults.find((t) => t.message.includes('must stand exactly once'));
    if (misplaced) return { fault, caught: false, why: 'the place to plant it was not found exactly once' };
    const first = r.testResults.flatMap((t) => t.assertionResults).find((a) => a.status === 'failed');
    return first ? { fault, caught: true, why: first.fullName } : { fault, caught: false, why: 'every check stayed green' };
  } catch {
    return { fault, caught: false, why: 'the checks did not run' };
  }
};

const plant = (fault: Fault): Promise<Verdict> =>
  new Promise((resolve) => {
    const report = join(folder, `${fault.name}.json`);
    const args = [join(root, 'node_modules/vitest/vitest.mjs'), 'run', ...fault.checks, '--reporter=json', `--outputFile=${report}`];
    const child = spawn(process.execPath, args, { cwd: root, stdio: 'ignore', env: { ...process.env, SEAMWARD_FAULT: fault.name } });
    child.on('exit', () => resolve(verdict(fault, report)));
  });

rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const waiting = [...faults()];
const verdicts: Verdict[] = [];
const worker = async (): Promise<void> => {
  for (let fault = waiting.shift(); fault !== undefined; fault = waiting.shift()) {
    const v = await plant(fault);
    verdicts.push(v);
    console.log(`${v.caught ? 'caught' : 'MISSED'}  ${fault.name}: ${v.why}`);
  }
};
await Promise.all([worker(), worker()]);

const caught = verdicts.filter((v) => v.caught).length;
const missed = verdicts.length - caught;
const out = process.argv[2];
if (out) writeFileSync(out, JSON.stringify({ caught, missed }));
console.log(`${caught} faults caught, ${missed} missed`);
process.exit(missed === 0 && caught >= 15 ? 0 : 1);
