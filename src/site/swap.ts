/** Putting a new site in the place of the last one, so that there is always one that is whole. */
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

/** Lies in every site; a folder without it is somebody's own and is never replaced. */
export const MARKER = '.asfound-site';

export interface Manifest {
  /** Digest of everything the site was made from. */
  readonly made: string;
}

export interface Staging {
  /** An empty folder beside the place of the site. */
  readonly folder: string;
  /** Puts the new site in place of the old one. */
  swap(manifest: Manifest): void;
  /** Gives it up; the last site stays. */
  discard(): void;
}

/** The manifest of a site; null when the folder holds none. */
export function manifestOf(out: string): Manifest | null {
  try {
    return JSON.parse(readFileSync(join(out, MARKER), 'utf8')) as Manifest;
  } catch {
    return null;
  }
}

/** Whether a site may be put there: nothing is there, or an empty folder, or a site of ours. */
export function mayReplace(out: string): boolean {
  return !existsSync(out) || existsSync(join(out, MARKER)) || readdirSync(out).length === 0;
}

function beside(out: string, what: 'new' | 'old'): string {
  return join(dirname(out), `.asfound-${what}-${basename(out)}`);
}

/**
 * Puts right what a kill between two renames left behind: the old site goes back when there is none, and
 * leftovers of earlier builds are removed.
 */
export function recover(out: string): void {
  const old = beside(out, 'old');
  if (existsSync(old) && !existsSync(out)) renameSync(old, out);
  rmSync(old, { recursive: true, force: true });
}

/** Begins a site beside `out`. */
export function stage(out: string): Staging {
  const folder = `${beside(out, 'new')}-${process.pid}`;
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  return {
    folder,
    swap: (manifest) => {
      writeFileSync(join(folder, MARKER), `${JSON.stringify(manifest)}\n`);
      const old = beside(out, 'old');
      if (existsSync(out)) renameSync(out, old);
      renameSync(folder, out);
      rmSync(old, { recursive: true, force: true });
    },
    discard: () => rmSync(folder, { recursive: true, force: true }),
  };
}
