/** What lies in the folder of a site: the site's own files, by its marker, and what the user put beside them. */
import { type Dirent, existsSync, lstatSync, readdirSync, readFileSync, type Stats, statSync } from 'node:fs';
import { join } from 'node:path';

/** Lies in every site; a folder without it is somebody's own and is never replaced. */
export const MARKER = '.asfound-site';
/** Where a site is made that cannot be made beside its place. */
export const WORK_INSIDE = '.asfound-work';

export interface Manifest {
  /** Digest of everything the site was made from; '' while its files are being replaced one by one. */
  readonly made: string;
  /** Every file of the site with its size in bytes. What else lies in the folder is the user's, and stays. */
  readonly files: Readonly<Record<string, number>>;
}

/** A file, link or folder, by its path from the top. */
export interface Lying {
  readonly path: string;
  readonly kind: 'folder' | 'link' | 'file' | 'other';
}

/** The manifest of a site; null when the folder holds none. */
export function manifestOf(site: string): Manifest | null {
  try {
    const read: unknown = JSON.parse(readFileSync(join(site, MARKER), 'utf8'));
    return isManifest(read) ? { made: read.made, files: read.files } : null;
  } catch {
    return null;
  }
}

function isManifest(read: unknown): read is Manifest {
  if (typeof read !== 'object' || read === null) return false;
  const { made, files } = read as Partial<Manifest>;
  return typeof made === 'string' && typeof files === 'object' && files !== null && !Array.isArray(files);
}

/** Whether every file that a site was made with is still there, and as long as it was. */
export function isWhole(site: string, { files }: Manifest): boolean {
  return Object.entries(files).every(([file, size]) => statSync(join(site, file), { throwIfNoEntry: false })?.size === size);
}

/** Whether a site may be put there: nothing is there, or an empty folder, or a site of ours. */
export function mayReplace(site: string): boolean {
  if (!existsSync(site)) return true;
  if (!statSync(site).isDirectory()) return false;
  return manifestOf(site) !== null || readdirSync(site).every((name) => name === WORK_INSIDE);
}

/**
 * What lies in a site and is not of it, folders before what is in them. A folder of which every file is the
 * site's is the site's too; of a folder without its marker nothing can be told, so nothing is anybody's.
 */
export function usersOwn(site: string): Lying[] {
  const manifest = manifestOf(site);
  if (manifest === null) return [];
  const ours = new Set(Object.keys(manifest.files).flatMap(withFolders));
  return everythingIn(site).filter(({ path }) => path !== MARKER && !ours.has(path));
}

/** Every file below a folder with its size, in the order of their paths. */
export function sizesIn(folder: string): Record<string, number> {
  const files = everythingIn(folder).filter(({ kind }) => kind !== 'folder');
  return Object.fromEntries(files.map(({ path }) => [path, statSync(join(folder, path)).size]));
}

/** What is at a path itself, a link unfollowed; undefined where nothing is, or where a folder on the way is none. */
export function thereAt(path: string): Stats | undefined {
  try {
    return lstatSync(path, { throwIfNoEntry: false });
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOTDIR') return undefined;
    throw error;
  }
}

/** A path, and every folder on the way to it. */
export function withFolders(path: string): string[] {
  const steps = path.split('/');
  return steps.map((_, n) => steps.slice(0, n + 1).join('/'));
}

function everythingIn(top: string, under = ''): Lying[] {
  const entries = readdirSync(join(top, under), { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry) => {
    const path = under === '' ? entry.name : `${under}/${entry.name}`;
    if (path === WORK_INSIDE) return [];
    const kind = kindOf(entry);
    return kind === 'folder' ? [{ path, kind }, ...everythingIn(top, path)] : [{ path, kind }];
  });
}

function kindOf(entry: Dirent): Lying['kind'] {
  if (entry.isDirectory()) return 'folder';
  if (entry.isSymbolicLink()) return 'link';
  return entry.isFile() ? 'file' : 'other';
}
