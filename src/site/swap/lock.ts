/**
 * One process at a time: a file that names its owner. Of an owner on this machine it can be seen whether it still
 * runs; one on another machine shows that it lives by giving the file a new time each second.
 */

import { randomUUID } from 'node:crypto';
import { closeSync, fstatSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { makeFolder, removeEmpty } from '../../disk/folders.ts';
import { isRunning, type Owner, thisProcess } from './owner.ts';

export interface Lock {
  readonly file: string;
  /** False when another process took this one for dead. */
  isOurs(): boolean;
  release(): void;
}

/** Begins to show, each second, that the holder of an open lock lives. @returns what ends that */
export type Beat = (open: number) => () => Promise<unknown>;

interface Waiting {
  /** An owner out of sight that gave no sign of life for so long is dead. */
  readonly silentMs?: number;
  /** By a thread, when not said: it beats however busy the process is. */
  readonly beat?: Beat;
}

const SILENT_MS = 20_000;
const LOOK_EVERY_MS = 250;

/**
 * Waits for as long as another process lives that holds it.
 *
 * @param folder that the lock is for; made when it is not there
 * @param onWait told once, when there is something to wait for
 */
export async function takeLock(folder: string, onWait: (whose: string) => void, waiting: Waiting = {}): Promise<Lock> {
  const { silentMs = SILENT_MS, beat = beatInThread } = waiting;
  const file = join(folder, 'lock');
  const owner = thisProcess(randomUUID());
  let seen = null as { readonly sign: string; readonly since: number } | null;
  for (;;) {
    const held = tryToHold(folder, file, owner, beat);
    if (held !== null) return held;
    const sign = signOf(file);
    if (sign === null) {
      await sleep(1);
      continue;
    }
    if (seen === null) onWait(wordsFor(sign.owner));
    if (sign.text !== seen?.sign) seen = { sign: sign.text, since: performance.now() };
    const running = sign.owner && isRunning(sign.owner);
    if (running === false || (running === null && performance.now() - seen.since > silentMs)) putAside(file, sign.token);
    else await sleep(LOOK_EVERY_MS);
  }
}

function tryToHold(folder: string, file: string, owner: Owner, beat: Beat): Lock | null {
  makeFolder(folder);
  let open: number;
  try {
    open = openSync(file, 'wx+');
  } catch (error) {
    // Its last holder may have taken the folder away since.
    if (['EEXIST', 'ENOENT'].includes((error as { code?: string }).code ?? '')) return null;
    throw error;
  }
  try {
    writeSync(open, JSON.stringify(owner));
  } catch (error) {
    closeSync(open);
    rmSync(file, { force: true });
    removeEmpty([folder]);
    throw error;
  }
  const end = beat(open);
  const isOurs = () => signOf(file)?.token === owner.token;
  return {
    file,
    isOurs,
    release: () => {
      void end().then(() => closeSync(open));
      if (isOurs()) rmSync(file, { force: true });
    },
  };
}

function beatInThread(open: number): () => Promise<unknown> {
  const beat = new Worker(new URL('./lock-beat.ts', import.meta.url), { workerData: open });
  beat.unref();
  beat.on('error', () => undefined);
  return () => beat.terminate();
}

/** What can be seen of a lock: who holds it, and what changes while they live. Null when it is gone. */
function signOf(file: string): { owner: Owner | null; token: string; text: string } | null {
  let open: number;
  try {
    open = openSync(file, 'r');
  } catch {
    return null;
  }
  try {
    const text = readFileSync(open, 'utf8');
    const owner = ownerIn(text);
    return { owner, token: owner?.token ?? '', text: `${text} ${fstatSync(open).mtimeMs}` };
  } finally {
    closeSync(open);
  }
}

/** Null for what was cut short before it was written. */
function ownerIn(text: string): Owner | null {
  try {
    const { where, pid, began, token } = JSON.parse(text) as Owner;
    return { where, pid, began, token };
  } catch {
    return null;
  }
}

/** Takes a dead owner's lock away; where a living one has come in between it is put back. */
function putAside(file: string, token: string): void {
  const aside = `${file}-${randomUUID()}`;
  try {
    renameSync(file, aside);
    if ((signOf(aside)?.token ?? '') === token) rmSync(aside, { force: true });
    else renameSync(aside, file);
  } catch {
    // Another one was quicker.
  }
}

function wordsFor(owner: Owner | null): string {
  if (owner === null) return 'another process';
  return isRunning(owner) === null ? `process ${owner.pid} of another machine` : `process ${owner.pid}`;
}
