import { defineConfig } from 'vitest/config';

/** Journeys walk one datum through the whole house, in a real Chromium where a person would. One at a time: they measure and kill browsers. */
export default defineConfig({
  test: {
    include: ['journeys/**/*.journey.ts'],
    testTimeout: 300_000,
    hookTimeout: 120_000,
    fileParallelism: false,
  },
});
