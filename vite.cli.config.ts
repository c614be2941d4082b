import { defineConfig } from 'vite';

/** The command: one file for Node, its dependencies left in node_modules. */
export default defineConfig({
  build: { ssr: 'apps/cli/main.ts', outDir: 'dist/cli', emptyOutDir: true, target: 'node20', sourcemap: false },
});
