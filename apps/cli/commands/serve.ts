import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Command } from 'commander';
import { serve } from '../../server/serve';
import { EXIT, print, Stop } from '../outcome';

const DEFAULT_PORT = 8420;

type Options = { readonly host: string; readonly port?: string; readonly cert?: string; readonly key?: string };

/** Built, this file lies in dist/cli beside dist/web; unbuilt, three folders below the root. */
const webFolder = (): string => {
  const here = dirname(fileURLToPath(import.meta.url));
  const folder = [join(here, '..', 'web'), join(here, '..', '..', '..', 'dist', 'web')].find((f) => existsSync(join(f, 'index.html')));
  if (folder === undefined) throw new Stop('The web app has not been built yet. Run: npm run build');
  return folder;
};

const portOf = (text: string): number => {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) throw new Stop(`port: expected a whole number from 0 to 65535; received “${text}”`, EXIT.refused);
  return port;
};

export const addServe = (program: Command): void => {
  program
    .command('serve')
    .description('serve the web app from this machine; nothing is stored on the server')
    .option('--host <address>', 'address to listen on; this machine only unless told otherwise', process.env['HOST'] ?? '127.0.0.1')
    .option('--port <number>', `port (default: PORT, or ${DEFAULT_PORT})`)
    .option('--cert <file>', 'certificate (PEM) for HTTPS')
    .option('--key <file>', 'private key (PEM) for HTTPS')
    .action(async (options: Options) => {
      if ((options.cert === undefined) !== (options.key === undefined)) throw new Stop('HTTPS needs both --cert and --key.', EXIT.refused);
      const tls = options.cert !== undefined && options.key !== undefined ? { tls: { cert: options.cert, key: options.key } } : {};
      const serving = await serve({ folder: webFolder(), host: options.host, port: portOf(options.port ?? process.env['PORT'] ?? String(DEFAULT_PORT)), ...tls }).catch(
        (error: Error) => {
          throw new Stop(error.message);
        },
      );
      print(`Seamward is at ${serving.address}`);
      if (options.cert === undefined && options.host !== '127.0.0.1' && options.host !== 'localhost')
        print('Other devices reach it by plain HTTP: they cannot keep it for use without a signal. Give --cert and --key for HTTPS.');
      const stop = (): void => void serving.close().then(() => process.exit(EXIT.ok));
      process.once('SIGINT', stop);
      process.once('SIGTERM', stop);
    });
};
