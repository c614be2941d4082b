import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import type { Command } from 'commander';
import { verifier } from '../../../src/logbook';
import { bodyCheck, cannotRead, nodeHash } from '../logbook-file';
import { EXIT, print, printJson } from '../outcome';

type Options = { readonly json?: boolean };

export const addVerify = (program: Command): void => {
  program
    .command('verify')
    .description('verify a logbook file: chain, closing line, schema; set-aside lines by number')
    .argument('<log>', 'a .jsonl logbook')
    .option('--json', 'print JSON')
    .action(async (path: string, options: Options) => {
      const verify = verifier({ check: bodyCheck, hash: nodeHash });
      let lastByte = 10;
      try {
        const bytes = createReadStream(path);
        bytes.on('data', (chunk) => {
          if (typeof chunk !== 'string') lastByte = chunk.at(-1) ?? lastByte;
        });
        for await (const line of createInterface({ input: bytes, crlfDelay: Number.POSITIVE_INFINITY })) verify.line(line);
      } catch (error) {
        throw cannotRead(path, error);
      }
      const verification = verify.end(lastByte !== 10);
      if (options.json) printJson(verification);
      else print(verification.sentences.join('\n') + (verification.entries > 0 ? `\nDigest ${verification.digest}` : ''));
      process.exitCode = verification.whole ? EXIT.ok : EXIT.damaged;
    });
};
