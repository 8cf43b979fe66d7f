import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the program: the one that holds src and public. */
export const PROGRAM = fileURLToPath(new URL('../../', import.meta.url));

let known: string | null = null;

/** Digest of everything of the program that a site is made by: another version makes every page anew. */
export function toolDigest(): string {
  known ??= digestFiles(['astro.config.mjs', 'package.json', ...under('src'), ...under('public')]);
  return known;
}

function under(folder: string): string[] {
  const entries = readdirSync(join(PROGRAM, folder), { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(PROGRAM.length))
    .sort();
}

function digestFiles(files: readonly string[]): string {
  const hash = createHash('sha256');
  for (const file of files)
    hash
      .update(`${file}\0`)
      .update(readFileSync(join(PROGRAM, file)))
      .update('\0');
  return hash.digest('hex');
}
