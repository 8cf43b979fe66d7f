/** A folder of the cache in which one process has Astro work, and from which the packages of the program are found. */
import { existsSync, realpathSync, rmSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { makeFolder } from '../disk/folders.ts';
import { removeLeftOvers, unfinishedBeside } from '../disk/write-whole.ts';

export interface Workshop {
  readonly folder: string;
  close(): void;
}

/** @throws the file system's error when the cache cannot be written */
export function openWorkshop(cache: string): Workshop {
  const workshops = join(cache, 'workshops');
  makeFolder(workshops);
  removeLeftOvers(workshops);
  const folder = unfinishedBeside(join(workshops, 'pages'));
  makeFolder(folder);
  linkPackages(folder);
  return { folder, close: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Has code in a folder find the packages of the program. */
export function linkPackages(folder: string): void {
  const packages = packagesFolder();
  const link = join(folder, 'node_modules');
  if (existsSync(link) && realpathSync(link) === realpathSync(packages)) return;
  rmSync(link, { force: true });
  symlinkSync(packages, link, 'junction');
}

/** The folder that the packages of the program were installed into: its own, or that of whatever it is a package of. */
export function packagesFolder(): string {
  const astro = dirname(createRequire(import.meta.url).resolve('astro/package.json'));
  const folder = dirname(astro);
  if (!existsSync(join(folder, 'astro'))) throw new Error(`the packages of the program are not in ${folder}`);
  return folder;
}
