import { defineConfig } from 'vitest/config';
import { plantedFault } from './scripts/planted-fault';

/** Everything that needs no browser. `SEAMWARD_FAULT` names a planted fault: the checks must then turn red. */
export default defineConfig({
  plugins: [plantedFault(process.env['SEAMWARD_FAULT'])],
  test: {
    include: ['src/**/*.check.ts', 'apps/**/*.check.ts', 'scripts/**/*.check.ts', 'checks/**/*.check.ts', 'bench/**/*.check.ts', 'simulation/**/*.check.ts'],
    testTimeout: 60_000,
  },
});
