/** The program started as a process of its own, on a day that the test journal is before. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const LAUNCHER = fileURLToPath(new URL('../../src/cli/asfound.mjs', import.meta.url));
const DAY = String(Date.UTC(2031, 2, 12, 12) / 1000);

/** What a process of a test is started with. */
export const envIn = (cwd: string): NodeJS.ProcessEnv => {
  const { VITEST: _, ...env } = process.env;
  return { ...env, ASFOUND_CACHE: join(cwd, 'cache'), ASFOUND_CONTENT: '', SOURCE_DATE_EPOCH: DAY, NODE_ENV: '' };
};

/** Runs a command to its end, so many days after the day of the tests. */
export function finished(
  argv: readonly string[],
  cwd: string,
  node: string = process.execPath,
  daysAfter = 0,
  env: NodeJS.ProcessEnv = {},
) {
  const SOURCE_DATE_EPOCH = String(Number(DAY) + daysAfter * 86_400);
  return spawnSync(node, [LAUNCHER, ...argv], { cwd, encoding: 'utf8', env: { ...envIn(cwd), SOURCE_DATE_EPOCH, ...env } });
}

/** Starts a command whose results nobody reads. */
export function unread(argv: readonly string[], cwd: string): ChildProcess {
  const child = spawn(process.execPath, [LAUNCHER, ...argv], { cwd, env: envIn(cwd) });
  child.stdout.destroy();
  return child;
}

export interface Serving {
  readonly child: ChildProcess;
  /** `http://localhost:4321/` */
  readonly address: string;
  /** What it has said on standard error so far. */
  said(): string;
}

/** Starts `dev` and waits until it says where it serves; stopped when the test is over. */
export function serving(argv: readonly string[], cwd: string, node: string = process.execPath): Promise<Serving> {
  return servingAs('dev', argv, cwd, node);
}

/** The same for any command that serves. */
export function servingAs(command: string, argv: readonly string[], cwd: string, node: string = process.execPath): Promise<Serving> {
  return startServing(command, argv, cwd, node, (child) => onTestFinished(() => void child.kill('SIGKILL')));
}

/** The same for several tests. @param started is given the process at once, to see to its end */
export async function startServing(
  command: string,
  argv: readonly string[],
  cwd: string,
  node: string,
  started: (child: ChildProcess) => void,
): Promise<Serving> {
  const child = spawn(node, [LAUNCHER, command, '--port', '0', ...argv], { cwd, stdio: ['ignore', 'ignore', 'pipe'], env: envIn(cwd) });
  started(child);
  let text = '';
  const address = await new Promise<string>((resolve, reject) => {
    child.on('exit', () => reject(new Error(`it ended: ${text}`)));
    child.stderr.on('data', (more) => {
      text += String(more);
      const found = /http:\/\/\S+\/(?:#\S+)?(?=\s)/.exec(text)?.[0];
      if (found !== undefined) resolve(found);
    });
  });
  return { child, address, said: () => text };
}

/** Asks again until the answer will do; gives back how long that took, in milliseconds. The limit is for what never comes. */
export async function until(ask: () => Promise<boolean>, within = 200_000): Promise<number> {
  const started = performance.now();
  while (!(await ask())) {
    if (performance.now() - started > within) throw new Error(`not within ${within} ms`);
    await new Promise((wait) => setTimeout(wait, 25));
  }
  return performance.now() - started;
}
