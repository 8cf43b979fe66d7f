/** Folders that a process makes for itself carry its number at the end of a prefix; a kill leaves them behind. */
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/** Removes the folders below `folder` that begin with `prefix` and the number of a process that is gone. */
export function removeAbandoned(folder: string, prefix: string): void {
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder)) {
    const owner = name.startsWith(prefix) ? Number.parseInt(name.slice(prefix.length), 10) : Number.NaN;
    if (!Number.isNaN(owner) && !isRunning(owner)) rmSync(join(folder, name), { recursive: true, force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as { code?: string }).code === 'EPERM';
  }
}
