/**
 * Several files of the user's that change together: all of them or none, whatever is killed.
 *
 * What they become is laid down in a folder of our own beside them first, and a plan after it. From the plan on the change
 * is made, by this process or by the next one; before it nothing has changed.
 */
import { createHash, randomBytes } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, realpathSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makeFolder } from './folders.ts';
import { hiddenBeside, writeThrough } from './write-new.ts';
import { removeLeftOvers } from './write-whole.ts';

/** A name that no journal is read from. */
const STAGE = '.asfound-change';

export interface FileChange {
  /** From the root. */
  readonly path: string;
  /** Where it lies afterwards; the same path for one that stays. */
  readonly to: string;
  /** What is there now. */
  readonly before: Uint8Array;
  readonly after: Uint8Array;
}

/** A file is not what it was when the change was thought out, or something stands in its way; nothing has changed. */
export class ChangedMeanwhile extends Error {
  readonly path: string;
  constructor(path: string) {
    super(`${path} has changed meanwhile`);
    this.path = path;
  }
}

/** Another process changes files here. */
export class Busy extends Error {}

interface Planned {
  readonly path: string;
  readonly to: string;
  readonly before: string;
  readonly after: string;
}

/**
 * @throws ChangedMeanwhile, Busy, the file system's error; then nothing has changed, or the next `finishChange` makes it whole
 */
export function writeTogether(root: string, changes: readonly FileChange[]): void {
  finishChange(root);
  const stage = join(root, STAGE);
  for (const { path, to, before } of changes) {
    if (!readFileSync(join(root, path)).equals(before)) throw new ChangedMeanwhile(path);
    if (to !== path && existsSync(join(root, to))) throw new ChangedMeanwhile(to);
  }
  begin(stage);
  try {
    for (const [n, { after }] of changes.entries()) writeThrough(join(stage, String(n)), after);
    const plan: Planned[] = changes.map(({ path, to, before, after }) => ({ path, to, before: sumOf(before), after: sumOf(after) }));
    writeThrough(join(stage, 'plan-begun'), JSON.stringify(plan));
    renameSync(join(stage, 'plan-begun'), join(stage, 'plan'));
  } catch (error) {
    rmSync(stage, { recursive: true, force: true });
    throw error;
  }
  apply(root, stage);
}

/**
 * Makes a change whole that a killed process had begun.
 *
 * @returns whether there was one
 * @throws Busy when its process still runs; the file system's error
 */
export function finishChange(root: string): boolean {
  const stage = join(root, STAGE);
  removeBegun(root);
  if (!existsSync(stage)) return false;
  if (isRunning(ownerOf(stage))) throw new Busy('another process changes files here');
  if (!existsSync(join(stage, 'plan'))) {
    rmSync(stage, { recursive: true, force: true });
    return false;
  }
  apply(root, stage);
  return true;
}

/** The folder appears with its owner in it, so that nobody takes it for one that was left. */
function begin(stage: string): void {
  const own = `${stage}-${process.pid}-${randomBytes(6).toString('hex')}`;
  mkdirSync(own);
  try {
    writeThrough(join(own, 'owner'), String(process.pid));
    renameSync(own, stage);
  } catch (error) {
    rmSync(own, { recursive: true, force: true });
    if (existsSync(stage)) throw new Busy('another process changes files here');
    throw error;
  }
}

/** What was killed before it had its name. */
function removeBegun(root: string): void {
  for (const name of readdirSync(root)) {
    const [, pid] = /^\.asfound-change-(\d+)-/.exec(name) ?? [];
    if (pid !== undefined && Number(pid) !== process.pid && !isRunning(Number(pid)))
      rmSync(join(root, name), { recursive: true, force: true });
  }
}

/** Every step may have been done before. A file that somebody else has written meanwhile is left as it is. */
function apply(root: string, stage: string): void {
  const plan = JSON.parse(readFileSync(join(stage, 'plan'), 'utf8')) as readonly Planned[];
  for (const [n, { path, to, before, after }] of plan.entries()) {
    const there = join(root, path);
    if (!existsSync(there) || sumOf(readFileSync(there)) !== before) continue;
    const target = to === path ? realpathSync(there) : join(root, to);
    if (to === path || !existsSync(target)) replace(target, readFileSync(join(stage, String(n))), statSync(there).mode);
    if (to !== path && sumOf(readFileSync(target)) === after) rmSync(there);
  }
  // Without its plan the rest is nothing but what was left.
  rmSync(join(stage, 'plan'));
  rmSync(stage, { recursive: true, force: true });
}

function replace(path: string, bytes: Uint8Array, mode: number): void {
  makeFolder(dirname(path));
  const unfinished = hiddenBeside(path);
  try {
    writeThrough(unfinished, bytes);
    chmodSync(unfinished, mode & 0o7777);
    renameSync(unfinished, path);
    removeLeftOvers(dirname(path));
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw error;
  }
}

function ownerOf(stage: string): number {
  try {
    return Number(readFileSync(join(stage, 'owner'), 'utf8'));
  } catch {
    return 0;
  }
}

function isRunning(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0 || pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as { code?: string }).code !== 'ESRCH';
  }
}

function sumOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
