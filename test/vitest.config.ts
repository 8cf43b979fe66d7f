import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import LongestFirst from './longest-first.ts';

/** Long enough for a machine that does much else: a limit is for what hangs, not for what is slow. */
const LIMITS = { testTimeout: 300_000, hookTimeout: 600_000, expect: { poll: { timeout: 200_000 } } };

/** Node reads the files as it reads them for those who use the program, and its cache keeps what it compiled: nothing is bundled. */
const BY_NODE = { experimental: { viteModuleRunner: false, nodeLoader: false } };

const root = new URL('..', import.meta.url).pathname;

/** Tests of pure functions: nothing they share can change, so that the files of one thread share their modules. */
const PURE = ['values', 'journal', 'replay', 'registers', 'ledger', 'timelines', 'cases', 'markdown', 'second-opinion'].map(
  (folder) => `test/${folder}/**/*.test.ts`,
);

/** What a test puts in the place of a module no other file may meet: these are each by themselves. */
export const APART = ['test/photos/on-demand.test.ts', 'test/site/unproved.test.ts'];

/** What reads, writes and starts programs. */
const DISK = ['boundaries', 'disk', 'load', 'photos', 'exports', 'site', 'book', 'editor', 'cli', 'bench', 'write'].map(
  (folder) => `test/${folder}/**/*.test.ts`,
);

export default defineConfig({
  test: {
    root,
    // One more than there are processors: a file often waits, for a browser or for what a program watches.
    maxWorkers: availableParallelism() + 1,
    sequence: { sequencer: LongestFirst },
    projects: [
      { test: { ...LIMITS, ...BY_NODE, name: 'pure', root, include: PURE, isolate: false } },
      { test: { ...LIMITS, name: 'apart', root, include: APART, globalSetup: 'test/run-once.ts' } },
      {
        test: {
          ...LIMITS,
          ...BY_NODE,
          name: 'disk',
          root,
          isolate: false,
          include: DISK,
          exclude: ['test/bench/plain-site/**', 'test/write/page/**', ...APART],
          globalSetup: 'test/run-once.ts',
        },
      },
      {
        test: {
          ...LIMITS,
          ...BY_NODE,
          name: 'browser',
          root,
          isolate: false,
          include: ['test/browser/**/*.test.ts', 'test/write/page/**/*.test.ts'],
          globalSetup: ['test/run-once.ts', 'test/browser/build-once.ts'],
        },
      },
    ],
  },
});
