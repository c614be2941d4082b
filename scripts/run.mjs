// Runs one of the project's TypeScript scripts: `node scripts/run.mjs scripts/scores.ts …`.
import { ensureInstalled, tool } from './install.mjs';

ensureInstalled();
process.exit(tool('tsx/dist/cli.mjs', process.argv.slice(2)));
