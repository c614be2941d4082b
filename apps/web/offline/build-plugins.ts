import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { CONTENT_POLICY } from '../../content-policy.ts';

/** What the service worker is told at build time: every file of this version, and one name for all of them. */
export type Precache = { readonly version: string; readonly files: readonly string[] };

const SERVICE_WORKER = 'service-worker.js';

const digest = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex').slice(0, 16);

const filesUnder = (folder: string, prefix = ''): readonly string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((f) => (f.isDirectory() ? filesUnder(join(folder, f.name), `${prefix}${f.name}/`) : [`${prefix}${f.name}`]));

/** Lists and hashes everything that was built, and writes the list at the head of the service worker. */
export const precacheList = (): Plugin => {
  let publicFolder = '';
  return {
    name: 'precache-list',
    apply: 'build',
    enforce: 'post',
    configResolved: (config) => {
      publicFolder = config.publicDir;
    },
    generateBundle(_, bundle) {
      const sums = new Map<string, string>();
      for (const [name, file] of Object.entries(bundle))
        if (name !== SERVICE_WORKER && !name.endsWith('.map')) sums.set(name, digest(file.type === 'chunk' ? file.code : file.source));
      for (const name of filesUnder(publicFolder)) sums.set(name, digest(readFileSync(join(publicFolder, name))));
      const files = [...sums.keys()].sort();
      const worker = bundle[SERVICE_WORKER];
      if (worker?.type !== 'chunk') throw new Error('the service worker was not built');
      if (worker.imports.length > 0) throw new Error('the service worker must be one file: it may import nothing that other chunks share');
      const version = digest(worker.code + files.map((f) => `${f} ${sums.get(f)}`).join('\n'));
      const told: Precache = { version, files };
      worker.code = `self.SEAMWARD_PRECACHE=${JSON.stringify(told)};\n${worker.code}`;
    },
  };
};

/** The content policy in the page itself, for hosts that set no headers. */
export const contentPolicy = (): Plugin => ({
  name: 'content-policy',
  apply: 'build',
  transformIndexHtml: () => [{ tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_POLICY.join('; ') }, injectTo: 'head-prepend' }],
});
