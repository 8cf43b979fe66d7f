// Loaded before a measured program by `NODE_OPTIONS=--import`: every process of its tree appends one line
// of JSON when it ends, with its processor time and the most memory it held, threads included.
import { appendFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

const file = process.env.BENCH_USAGE;

if (isMainThread && file) {
  process.on('exit', () => {
    const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
    appendFileSync(file, `${JSON.stringify({ user: userCPUTime / 1e6, system: systemCPUTime / 1e6, peak: maxRSS * 1024 })}\n`);
  });
}
