import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cruise, type ICruiseResult, type IForbiddenRuleType } from 'dependency-cruiser';
import { describe, expect, it } from 'vitest';
import { ALL_ROOMS, forbidden, WHY } from './rooms';

/**
 * The import law, read from the import lines of every module.
 * Seen to bite: each planted breach below must be found, and a run that saw no module fails.
 */
const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Checks may look anywhere; they are not part of any room. */
const notChecks = String.raw`\.(check|agreement)\.tsx?$`;

const rules: readonly IForbiddenRuleType[] = [
  ...ALL_ROOMS.map(
    (room): IForbiddenRuleType => ({
      name: `${room} looks only to its left`,
      comment: WHY,
      severity: 'error',
      from: { path: `^src/${room}/`, pathNot: notChecks },
      to: { path: `^(src/(${forbidden(room).join('|') || 'no-room'})/|apps/)` },
    }),
  ),
  ...ALL_ROOMS.map(
    (room): IForbiddenRuleType => ({
      name: `${room} is entered by its door`,
      comment: `import from src/${room} itself: its index.ts says what is public`,
      severity: 'error',
      from: { path: '^(src|apps)/', pathNot: `^src/${room}/|${notChecks}` },
      to: { path: `^src/${room}/.+`, pathNot: [`^src/${room}/index\\.ts$`, `^src/adapters/[^/]+/index\\.ts$`, `^src/adapters/[^/]+\\.ts$`] },
    }),
  ),
  {
    name: 'no cycles',
    comment: 'if two files want each other, the shared noun belongs to the left of both',
    severity: 'error',
    from: { path: '^(src|apps)/' },
    to: { circular: true },
  },
];

const breaches = async (folder: string, paths: readonly string[]): Promise<{ readonly modules: number; readonly found: readonly string[] }> => {
  const result = await cruise([...paths], {
    baseDir: folder,
    ruleSet: { forbidden: [...rules] },
    validate: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'] },
  });
  const output = result.output as ICruiseResult;
  return { modules: output.summary.totalCruised, found: output.summary.violations.map((v) => `${v.rule.name}: ${v.from} → ${v.to}`) };
};

const planted = async (files: Readonly<Record<string, string>>): Promise<readonly string[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'law-'));
  try {
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    }
    return (await breaches(folder, ['src'])).found;
  } finally {
    rmSync(folder, { recursive: true });
  }
};

describe('import law', () => {
  it('holds in every module of src and apps, and sees them', async () => {
    const { modules, found } = await breaches(root, ['src', 'apps']);
    expect(found).toEqual([]);
    expect(modules).toBeGreaterThan(100);
  });

  it('bites: a room that looks to its right', async () => {
    const found = await planted({ 'src/science/air.ts': "import { plan } from '../plan';\nexport const a = plan;", 'src/plan/index.ts': 'export const plan = 1;' });
    expect(found.some((f) => f.startsWith('science looks only to its left'))).toBe(true);
  });

  it('bites: a type that is only borrowed from the right', async () => {
    const found = await planted({ 'src/entries/a.ts': "import type { S } from '../logbook';\nexport const a: S = 1;", 'src/logbook/index.ts': 'export type S = number;' });
    expect(found.some((f) => f.startsWith('entries looks only to its left'))).toBe(true);
  });

  it('bites: a room entered through the window', async () => {
    const found = await planted({
      'src/terms/a.ts': "import { b } from '../units/b';\nexport const a = b;",
      'src/units/b.ts': 'export const b = 1;',
      'src/units/index.ts': "export * from './b';",
    });
    expect(found.some((f) => f.startsWith('units is entered by its door'))).toBe(true);
  });

  it('bites: a cycle', async () => {
    const found = await planted({
      'src/units/a.ts': "import { b } from './b';\nexport const a = () => b;",
      'src/units/b.ts': "import { a } from './a';\nexport const b = () => a;",
    });
    expect(found.some((f) => f.startsWith('no cycles'))).toBe(true);
  });
});
