import type { Command } from 'commander';
import { verifyFile } from '../../../src/adapters/logbook-file';
import { cannotRead, VERIFY } from '../logbook-file';
import { EXIT, print, printJson } from '../outcome';

type Options = { readonly json?: boolean };

export const addVerify = (program: Command): void => {
  program
    .command('verify')
    .description('verify a logbook file: chain, closing line, schema; set-aside lines by number')
    .argument('<log>', 'a .jsonl logbook')
    .option('--json', 'print JSON')
    .action(async (path: string, options: Options) => {
      const verification = await verifyFile(path, VERIFY).catch((error: unknown) => {
        throw cannotRead(path, error);
      });
      if (options.json) printJson(verification);
      else print(verification.sentences.join('\n') + (verification.entries > 0 ? `\nDigest ${verification.digest}` : ''));
      process.exitCode = verification.whole ? EXIT.ok : EXIT.damaged;
    });
};
