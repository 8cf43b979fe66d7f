/** A folder of the cache in which one process has Astro work, and from which the packages of the program are found. */
import { existsSync, rmSync, symlinkSync } from 'node:fs';
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
  symlinkSync(packagesFolder(), join(folder, 'node_modules'), 'junction');
  return { folder, close: () => rmSync(folder, { recursive: true, force: true }) };
}

/** The folder that the packages of the program were installed into: its own, or that of whatever it is a package of. */
export function packagesFolder(): string {
  const astro = dirname(createRequire(import.meta.url).resolve('astro/package.json'));
  const folder = dirname(astro);
  if (!existsSync(join(folder, 'astro'))) throw new Error(`the packages of the program are not in ${folder}`);
  return folder;
}
