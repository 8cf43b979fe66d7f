/** Where what can be made again is kept: rendered notes and pictures. Never inside a journal or a site. */
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * The cache folder: `ASFOUND_CACHE` when it is set, else one beside the installed packages. It need not exist yet.
 *
 * @param env the environment
 * @returns an absolute path
 */
export function cacheFolder(env: Readonly<Record<string, string | undefined>> = process.env): string {
  const named = env.ASFOUND_CACHE;
  if (named !== undefined && named !== '') return resolve(named);
  return fileURLToPath(new URL('../../node_modules/.cache/asfound', import.meta.url));
}
