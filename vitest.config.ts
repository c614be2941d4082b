import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.check.ts', 'apps/**/*.check.ts', 'scripts/**/*.check.ts', 'bench/**/*.check.ts'],
    testTimeout: 30_000,
  },
});
