/** Where what can be made again is kept: rendered notes and pictures. Never inside a journal or a site. */
import { accessSync, constants, existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * The cache folder: `ASFOUND_CACHE` when it is set, else one beside the installed packages; where those take no writing, as when
 * they were installed for everybody, the one that the system gives each user for such things. It need not exist yet.
 *
 * @param env the environment
 * @returns an absolute path
 */
export function cacheFolder(env: Readonly<Record<string, string | undefined>> = process.env): string {
  const named = env.ASFOUND_CACHE;
  if (named !== undefined && named !== '') return resolve(named);
  return takesWriting(BESIDE) ? BESIDE : join(ofUser(env), 'asfound');
}

const BESIDE = fileURLToPath(new URL('../../node_modules/.cache/asfound', import.meta.url));

/** Of a folder that is not there yet, the nearest one above it that is. */
function takesWriting(folder: string): boolean {
  if (!existsSync(folder)) return dirname(folder) !== folder && takesWriting(dirname(folder));
  try {
    accessSync(folder, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

/** XDG Base Directory Specification; Windows and macOS have places of their own. */
function ofUser(env: Readonly<Record<string, string | undefined>>): string {
  if (process.platform === 'win32' && env.LOCALAPPDATA) return env.LOCALAPPDATA;
  if (process.platform === 'darwin') return join(env.HOME ?? homedir(), 'Library/Caches');
  return env.XDG_CACHE_HOME?.startsWith('/') ? env.XDG_CACHE_HOME : join(env.HOME ?? homedir(), '.cache');
}
