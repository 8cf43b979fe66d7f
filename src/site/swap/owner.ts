/** Who holds a lock, told so that another process can tell whether they still run. */
import { existsSync, readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';

export interface Owner {
  /** The machine since it was last started, and in it the world of process numbers. */
  readonly where: string;
  readonly pid: number;
  /** When the process began, as the system counts; '' where that cannot be known. A number is given again, this is not. */
  readonly began: string;
  /** Of one holding of a lock. */
  readonly token: string;
}

export function thisProcess(token: string): Owner {
  return { where: whereAmI(), pid: process.pid, began: beganOf(process.pid), token };
}

/** @returns whether the process runs; null when that cannot be seen from here */
export function isRunning({ where, pid, began }: Owner): boolean | null {
  if (where !== whereAmI()) return null;
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as { code?: string }).code === 'ESRCH') return false;
  }
  return began === '' || began === beganOf(pid);
}

let known: string | null = null;

function whereAmI(): string {
  known ??= [
    hostname(),
    textOf('/proc/sys/kernel/random/boot_id').trim(),
    existsSync('/proc/self/ns/pid') ? linkOf('/proc/self/ns/pid') : '',
  ]
    .filter((each) => each !== '')
    .join(' ');
  return known;
}

/** The 22nd field of what Linux tells of a process; its name, in brackets before, may hold anything. */
function beganOf(pid: number): string {
  const told = textOf(`/proc/${pid}/stat`);
  return told.slice(told.lastIndexOf(')') + 2).split(' ')[19] ?? '';
}

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

function linkOf(path: string): string {
  try {
    return readlinkSync(path);
  } catch {
    return '';
  }
}
