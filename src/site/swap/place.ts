/** Where a site goes, and where it is made before it goes there. */
import { accessSync, constants, existsSync, lstatSync, readlinkSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { WORK_INSIDE } from './site-folder.ts';

export interface Place {
  /** The folder of the site, links followed. */
  readonly site: string;
  /** The folder of all that is half made or half removed; on the disk of the site. */
  readonly work: string;
}

/**
 * A site is made beside its place, so that it can go there by one rename. Where the folder above takes no
 * writing or is on another disk it is made inside, and goes there file by file.
 *
 * @param out as it was named: nothing need be there, and it may be a link
 */
export function placeOf(out: string): Place {
  const site = realOf(out);
  const inside = join(site, WORK_INSIDE);
  const beside = join(dirname(site), `.asfound-work-${basename(site)}`);
  return { site, work: existsSync(site) && (existsSync(inside) || !mayStandBeside(site)) ? inside : beside };
}

/** The path with every link in it followed, as far as there is something; a link to nothing leads to where it points. */
export function realOf(path: string, followed = 0): string {
  const target = linkAt(path);
  if (target !== null && followed < MOST_LINKS && !existsSync(path)) return realOf(resolve(dirname(path), target), followed + 1);
  if (existsSync(path)) return realpathSync(path);
  return dirname(path) === path ? path : join(realOf(dirname(path), followed), basename(path));
}

const MOST_LINKS = 40;

function linkAt(path: string): string | null {
  return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() ? readlinkSync(path) : null;
}

function mayStandBeside(site: string): boolean {
  const above = dirname(site);
  if (statSync(site).dev !== statSync(above).dev) return false;
  try {
    accessSync(above, constants.W_OK | constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
