/** Putting a new site in the place of the last one, so that there is always one that is whole. */
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { removeAbandoned } from './abandoned.ts';

/** Lies in every site; a folder without it is somebody's own and is never replaced. */
export const MARKER = '.asfound-site';

export interface Manifest {
  /** Digest of everything the site was made from. */
  readonly made: string;
  /** Every file of the site with its size in bytes. What else lies in the folder is the user's, and stays. */
  readonly files: Readonly<Record<string, number>>;
}

export interface Staging {
  /** An empty folder beside the place of the site. */
  readonly folder: string;
  /**
   * Puts the new site in place of the old one, which stays until the new one stands.
   *
   * @throws InTheWay, and then the old site is as it was
   */
  swap(made: string): void;
  /** Gives it up; the last site stays. */
  discard(): void;
}

/** A file of the user's lies where the new site has one. Nothing has been changed. */
export class InTheWay extends Error {
  readonly file: string;
  constructor(file: string) {
    super(`${file} is in the way`);
    this.file = file;
  }
}

/** The one step that a kill can fall between; handed in so that a test can let it. */
export type Rename = (from: string, to: string) => void;

/** The manifest of a site; null when the folder holds none. */
export function manifestOf(out: string): Manifest | null {
  try {
    const read = JSON.parse(readFileSync(join(out, MARKER), 'utf8')) as Partial<Manifest>;
    return typeof read.made === 'string' && typeof read.files === 'object' ? { made: read.made, files: read.files } : null;
  } catch {
    return null;
  }
}

/** Whether every file that a site was made with is still there, and as long as it was. */
export function isWhole(out: string, { files }: Manifest): boolean {
  return Object.entries(files).every(([file, size]) => statSync(join(out, file), { throwIfNoEntry: false })?.size === size);
}

/** Whether a site may be put there: nothing is there, or an empty folder, or a site of ours. */
export function mayReplace(out: string): boolean {
  if (!existsSync(out)) return true;
  return statSync(out).isDirectory() && (manifestOf(out) !== null || readdirSync(out).length === 0);
}

/**
 * Puts right what a kill left behind: the old site goes back when there is none; files of the user's that
 * had not followed into the new one follow; half-made sites of processes that are gone are removed.
 */
export function recover(out: string, rename: Rename = renameSync): void {
  const old = beside(out, 'old');
  if (existsSync(old)) {
    if (existsSync(out)) retire(old, out, rename);
    else rename(old, out);
  }
  removeAbandoned(dirname(out), `${basename(beside(out, 'new'))}-`);
}

/** Begins a site beside `out`. */
export function stage(out: string, rename: Rename = renameSync): Staging {
  const folder = `${beside(out, 'new')}-${process.pid}`;
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  return {
    folder,
    swap: (made) => {
      writeFileSync(join(folder, MARKER), `${JSON.stringify({ made, files: sizesUnder(folder) })}\n`);
      const [taken] = usersFiles(out).filter((file) => existsSync(join(folder, file)));
      if (taken !== undefined) throw new InTheWay(join(out, taken));
      replace(folder, out, rename);
    },
    discard: () => rmSync(folder, { recursive: true, force: true }),
  };
}

function replace(folder: string, out: string, rename: Rename): void {
  const old = beside(out, 'old');
  const had = existsSync(out);
  if (had) rename(out, old);
  try {
    rename(folder, out);
  } catch (error) {
    if (had && !existsSync(out)) rename(old, out);
    throw error;
  }
  if (had) retire(old, out, rename);
}

/** Takes the old site away; what the user put into it goes over into the new one. */
function retire(old: string, out: string, rename: Rename): void {
  for (const file of usersFiles(old)) {
    if (existsSync(join(out, file))) continue;
    mkdirSync(dirname(join(out, file)), { recursive: true });
    rename(join(old, file), join(out, file));
  }
  rmSync(old, { recursive: true, force: true });
}

/** What lies in a site and is not of it. */
function usersFiles(site: string): string[] {
  if (!existsSync(site)) return [];
  const ours = manifestOf(site)?.files ?? {};
  return filesUnder(site).filter((file) => file !== MARKER && !Object.hasOwn(ours, file));
}

function beside(out: string, what: 'new' | 'old'): string {
  return join(dirname(out), `.asfound-${what}-${basename(out)}`);
}

function filesUnder(folder: string): string[] {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  return entries.filter((entry) => !entry.isDirectory()).map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
}

function sizesUnder(folder: string): Record<string, number> {
  return Object.fromEntries(
    filesUnder(folder)
      .sort()
      .map((file) => [file, statSync(join(folder, file)).size]),
  );
}
