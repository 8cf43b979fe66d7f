import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** What one run of a program took. Seconds, and bytes. */
export interface Usage {
  readonly wall: number;
  /** User time of all its processes together. */
  readonly user: number;
  /**
   * The high-water marks of resident memory of all its processes added up. Processes seldom peak at
   * once, so this errs on the high side for a program of several.
   */
  readonly peak: number;
  /** The two highest of these marks: what is held at once by a program that has one process at work for it at a time. */
  readonly peakOfTwo: number;
}

export interface Command {
  /** A Node program and its arguments. */
  readonly argv: readonly string[];
  readonly env: Readonly<Record<string, string>>;
}

const RECORDER = pathToFileURL(join(import.meta.dirname, 'record-usage.mjs')).href;

/**
 * Runs a Node program to its end and measures it. Each of its processes reports its own use of the
 * machine as it exits (getrusage), so nothing is sampled and nothing depends on the operating system.
 *
 * @param folder it is started in, and its reports are written to
 * @throws when the program fails, with the end of what it said
 */
export async function measureProcess(command: Command, folder: string): Promise<Usage> {
  const reports = join(folder, 'usage.jsonl');
  await rm(reports, { force: true });
  const start = performance.now();
  const child = spawn(process.execPath, command.argv, {
    // What a program lays where it was started is on the same disk as what it makes.
    cwd: folder,
    env: { ...process.env, ...command.env, NODE_OPTIONS: `--import=${RECORDER}`, BENCH_USAGE: reports },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  const listen = (chunk: Buffer): void => {
    said = (said + chunk.toString()).slice(-4000);
  };
  child.stdout.on('data', listen);
  child.stderr.on('data', listen);
  const stop = (): boolean => child.kill();
  process.once('exit', stop);
  const [code] = await once(child, 'close');
  process.off('exit', stop);
  const wall = (performance.now() - start) / 1000;
  if (code !== 0) throw new Error(`${command.argv.join(' ')} ended with ${code}:\n${said}`);
  return { wall, ...(await addUp(reports)) };
}

async function addUp(reports: string): Promise<Omit<Usage, 'wall'>> {
  const lines = (await readFile(reports, 'utf8')).trim().split('\n');
  const processes = lines.map((line) => JSON.parse(line) as { user: number; peak: number });
  return {
    user: processes.reduce((sum, one) => sum + one.user, 0),
    peak: processes.reduce((sum, one) => sum + one.peak, 0),
    peakOfTwo: processes
      .map(({ peak }) => peak)
      .sort((a, b) => b - a)
      .slice(0, 2)
      .reduce((sum, peak) => sum + peak, 0),
  };
}

/** The middle value; of an even number the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const [low, high] = [sorted[sorted.length % 2 === 0 ? half - 1 : half], sorted[half]];
  if (low === undefined || high === undefined) throw new RangeError('The median of nothing.');
  return (low + high) / 2;
}
