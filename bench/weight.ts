import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { root } from '../journeys/browser';
import type { Row } from './table';

const web = join(root, 'dist', 'web');
const text = (path: string): string => readFileSync(join(web, path), 'utf8');
const kb = (path: string): number => gzipSync(readFileSync(join(web, path)), { level: 9 }).length / 1000;

/** Scripts that a script imports before it runs; lazily loaded ones do not count. */
const importsOf = (path: string): readonly string[] => [...text(path).matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g)].map(([, name = '']) => `assets/${name}`);

const withImports = (paths: readonly string[]): ReadonlySet<string> => {
  const all = new Set<string>();
  const waiting = [...paths];
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (all.has(path)) continue;
    all.add(path);
    waiting.push(...importsOf(path));
  }
  return all;
};

/** JavaScript that the first screen waits for, gzipped, and the share of it that is the view library alone. */
export const firstLoad = (): Row => {
  const entry = [...text('index.html').matchAll(/<script[^>]+src="\/?\.?\/?(assets\/[^"]+\.js)"/g)].map(([, path = '']) => path);
  const preloaded = [...text('index.html').matchAll(/<link[^>]+modulepreload[^>]+href="\/?\.?\/?(assets\/[^"]+\.js)"/g)].map(([, path = '']) => path);
  const page = [...withImports([...entry, ...preloaded])];
  if (page.length === 0) throw new Error('index.html names no script');
  const total = page.reduce((sum, path) => sum + kb(path), 0);
  const worker = readdirSync(join(web, 'assets')).filter((name) => /^worker-.*\.js$/.test(name));
  const beside = worker.reduce((sum, name) => sum + kb(`assets/${name}`), 0);
  return {
    what: `first-load JavaScript, gzip, ${page.length} files`,
    goal: '120 kB',
    reached: `${total.toFixed(0)} kB; the worker beside it ${beside.toFixed(0)} kB`,
    ratio: `${(total / 120).toFixed(2)} × the goal`,
    met: total <= 120,
  };
};
