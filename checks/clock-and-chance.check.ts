import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { PURE_ROOMS } from './rooms';

/** Clock and chance are arguments left of `adapters`: a rule that reads the clock cannot be replayed, and gives another plan tomorrow. */
const root = dirname(dirname(fileURLToPath(import.meta.url)));
const HIDDEN = /\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bMath\.random\b|\bperformance\.now\b|\bcrypto\.(?:getRandomValues|randomUUID)\b/;

const filesOf = (folder: string): readonly string[] =>
  existsSync(join(root, folder)) ? readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map((name) => join(folder, name)) : [];

/** Text without comments, so that a sentence about the clock is not taken for one that reads it. */
const code = (text: string): string => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');

const breaches = (files: readonly { readonly path: string; readonly text: string }[]): readonly string[] =>
  files.filter((f) => HIDDEN.test(code(f.text))).map((f) => `${f.path} reads the clock or chance: take it as an argument; only adapters and apps may ask the outside world`);

describe('clock and chance', () => {
  it('are arguments in every pure room', () => {
    const files = PURE_ROOMS.flatMap((room) => filesOf(`src/${room}`))
      .filter((path) => path.endsWith('.ts') && !path.endsWith('.check.ts'))
      .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));
    expect(files.length).toBeGreaterThan(50);
    expect(breaches(files)).toEqual([]);
  });

  it('bites on a hidden clock and on hidden chance', () => {
    const hidden = ['const t = Date.now();', 'const t = new Date();', 'const r = Math.random();'];
    expect(breaches(hidden.map((text, i) => ({ path: `${i}.ts`, text })))).toHaveLength(3);
    expect(breaches([{ path: 'told.ts', text: '// never Date.now() here\nconst t = new Date(0);' }])).toEqual([]);
  });
});
