import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/**/*.test.ts'],
    exclude: ['test/bench/plain-site/**'],
    testTimeout: 20_000,
    hookTimeout: 120_000,
  },
});
