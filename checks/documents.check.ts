import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { agreementTable } from './agreements';

/** The documents say what is so: links lead somewhere, quoted files are the files, the agreement table is today's. */
const root = dirname(dirname(fileURLToPath(import.meta.url)));
const text = (path: string): string => readFileSync(join(root, path), 'utf8');
const documents = [...readdirSync(root), ...readdirSync(join(root, 'docs')).map((name) => `docs/${name}`)].filter((name) => name.endsWith('.md'));

/** `<!-- file: path -->` is followed by a code block that must be that file, whole. */
const QUOTED = /<!-- file: (\S+) -->\n```\w*\n([\s\S]*?)\n```/g;

const slug = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s-]/gu, '')
    .trim()
    .replace(/\s/g, '-');

const deadLinks = (path: string): readonly string[] =>
  [...text(path).matchAll(/\]\((?!https?:|mailto:)([^)#\s]*)(#[^)\s]*)?\)/g)].flatMap(([, target = '', anchor = '']) => {
    const file = target === '' ? path : normalize(join(dirname(path), target));
    if (!existsSync(join(root, file))) return [`${path} → ${target}`];
    if (anchor === '' || !file.endsWith('.md')) return [];
    const headings = [...text(file).matchAll(/^#+ (.*)$/gm)].map(([, heading = '']) => `#${slug(heading)}`);
    return headings.includes(anchor) ? [] : [`${path} → ${target}${anchor}`];
  });

describe('documents', () => {
  it('hold no dead link', () => {
    expect(documents.length).toBeGreaterThanOrEqual(6);
    expect(documents.flatMap(deadLinks)).toEqual([]);
  });

  it('quote files as they are', () => {
    const quotes = documents.flatMap((path) => [...text(path).matchAll(QUOTED)].map(([, file = '', code = '']) => ({ file, code })));
    expect(quotes.length).toBeGreaterThan(0);
    for (const { file, code } of quotes) expect(code.trim(), file).toBe(text(file).trim());
  });

  it('show the agreement table that `npm run scores` prints', () => {
    const shown = /<!-- scores -->\n([\s\S]*?)\n<!-- \/scores -->/.exec(text('README.md'))?.[1];
    expect(shown?.trim()).toBe(agreementTable().trim());
  });

  it('name every room that there is', () => {
    const rooms = readdirSync(join(root, 'src')).filter((name) => !name.includes('.'));
    for (const room of rooms) expect(text('ARCHITECTURE.md')).toContain(`\n  ${room}/`);
  });
});
