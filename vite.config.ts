import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { contentPolicy, precacheList } from './apps/web/offline/build-plugins.ts';

export default defineConfig({
  root: 'apps/web',
  base: './',
  plugins: [react(), contentPolicy(), precacheList()],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    rolldownOptions: {
      // The rooms are pure: a module of theirs that nobody asks for is left out, tables and all.
      treeshake: { moduleSideEffects: (id) => !/\/src\/(?!.*node_modules)/.test(id) },
      input: { page: 'apps/web/index.html', 'service-worker': 'apps/web/offline/service-worker.ts' },
      output: { entryFileNames: (chunk) => (chunk.name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js') },
    },
  },
  server: { port: 8420, strictPort: true },
});
