import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** Long enough for a machine that does much else: a limit is for what hangs, not for what is slow. */
const LIMITS = { testTimeout: 300_000, hookTimeout: 600_000, expect: { poll: { timeout: 200_000 } } };

const root = new URL('..', import.meta.url).pathname;

/** As many files at a time as there are processors: Vitest by itself leaves one of them idle. */
const EACH = { ...LIMITS, root, maxWorkers: availableParallelism() };

/** Tests of pure functions: nothing they share can change, so that the files of one thread share their modules. */
const PURE = ['values', 'journal', 'replay', 'registers', 'ledger', 'timelines', 'cases', 'markdown', 'second-opinion'].map(
  (folder) => `test/${folder}/**/*.test.ts`,
);

/** What reads, writes and starts programs, and changes nothing in its own process. */
const DISK = ['boundaries', 'disk', 'load', 'photos', 'exports', 'site', 'book', 'editor', 'cli', 'bench', 'write'].map(
  (folder) => `test/${folder}/**/*.test.ts`,
);

/** What puts another module in the place of one, and so must be by itself. */
const ALONE = ['test/photos/on-demand.test.ts'];

export default defineConfig({
  test: {
    root,
    maxWorkers: EACH.maxWorkers,
    globalSetup: 'test/of-the-program.ts',
    projects: [
      { test: { ...EACH, name: 'pure', include: PURE, isolate: false } },
      {
        test: {
          ...EACH,
          name: 'disk',
          include: DISK,
          exclude: [...ALONE, 'test/bench/plain-site/**', 'test/write/page/**'],
          isolate: false,
        },
      },
      { test: { ...EACH, name: 'alone', include: ALONE } },
      {
        test: {
          ...EACH,
          name: 'browser',
          include: ['test/browser/**/*.test.ts', 'test/write/page/**/*.test.ts'],
          globalSetup: 'test/browser/build-once.ts',
        },
      },
    ],
  },
});
