import { existsSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer as createSecureServer } from 'node:https';
import { extname, join, normalize, sep } from 'node:path';
import { serve as listen } from '@hono/node-server';
import { Hono } from 'hono';
import { CONTENT_POLICY } from '../content-policy';

export type ServeOptions = {
  /** Folder of the built web app. */
  readonly folder: string;
  readonly host: string;
  readonly port: number;
  readonly tls?: { readonly cert: string; readonly key: string };
};

const MEDIA: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.txt': 'text/plain; charset=utf-8',
};

/** A page cannot forbid by itself that others frame it: only a header can. */
const POLICY = [...CONTENT_POLICY, "frame-ancestors 'self'"].join('; ');

const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/** Hashed files never change; the page and its service worker must always be asked for anew. */
const cacheOf = (path: string): string => (path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache');

/** The static site as a request handler: GET and HEAD of files under one folder, nothing else. */
export const site = (folder: string): Hono => {
  const app = new Hono();
  app.on(['GET', 'HEAD'], '*', async (context) => {
    const asked = decodeSafely(new URL(context.req.url).pathname);
    const path = asked === undefined ? undefined : asked === '/' ? '/index.html' : asked;
    const file = path === undefined ? undefined : join(folder, normalize(path));
    const inside = file?.startsWith(folder + sep) === true;
    const media = path === undefined ? undefined : MEDIA[extname(path)];
    const bytes = inside && media !== undefined && file !== undefined ? await readFile(file).catch(() => undefined) : undefined;
    if (bytes === undefined || media === undefined || path === undefined) return context.text('Not here.', 404, HEADERS);
    return context.body(new Uint8Array(bytes), 200, { ...HEADERS, 'Content-Type': media, 'Cache-Control': cacheOf(path) });
  });
  app.all('*', (context) => context.text('This server only hands out files.', 405, { ...HEADERS, Allow: 'GET, HEAD' }));
  return app;
};

const decodeSafely = (path: string): string | undefined => {
  try {
    const decoded = decodeURIComponent(path);
    return decoded.includes('\0') ? undefined : decoded;
  } catch {
    return undefined;
  }
};

export type Serving = { readonly address: string; readonly close: () => Promise<void> };

/** Starts serving; rejects with a plain sentence when it cannot. */
export const serve = async (options: ServeOptions): Promise<Serving> => {
  if (!existsSync(join(options.folder, 'index.html'))) throw new Error('The web app has not been built yet. Run: npm run build');
  const secure = options.tls && { createServer: createSecureServer, serverOptions: { cert: readPem(options.tls.cert, 'certificate'), key: readPem(options.tls.key, 'key') } };
  return new Promise((resolve, reject) => {
    const server = listen({ fetch: site(options.folder).fetch, hostname: options.host, port: options.port, ...secure }, (info) => {
      const host = options.host === '127.0.0.1' || options.host === '0.0.0.0' ? 'localhost' : options.host;
      resolve({
        address: `${secure ? 'https' : 'http'}://${host}:${info.port}`,
        close: () => new Promise((done) => server.close(() => done())),
      });
    });
    server.on('error', (error: NodeJS.ErrnoException) => reject(new Error(whyNot(error, options))));
  });
};

const whyNot = (error: NodeJS.ErrnoException, { host, port }: ServeOptions): string => {
  if (error.code === 'EADDRINUSE') return `Port ${port} is already in use. Choose another: PORT=${port + 1} npm start`;
  if (error.code === 'EACCES') return `Port ${port} may not be opened by this user. Choose one above 1023.`;
  return `Cannot serve on ${host}:${port}: ${error.message}`;
};

const readPem = (path: string, what: string): Buffer => {
  try {
    return readFileSync(path);
  } catch {
    throw new Error(`The ${what} file ${path} cannot be read.`);
  }
};
