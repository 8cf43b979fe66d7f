/** Putting a new site in the place of the last one, so that there is always one that is whole. */
import { randomUUID } from 'node:crypto';
import { chmodSync, existsSync, lstatSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { removeEmpty } from '../../disk/folders.ts';
import { writeWhole } from '../../disk/write-whole.ts';
import { carryOver, checkNoneInTheWay } from './carry-over.ts';
import { type Beat, type Lock, takeLock } from './lock.ts';
import type { Place } from './place.ts';
import { replaceInside } from './replace-inside.ts';
import { MARKER, type Manifest, manifestOf, sizesIn, usersOwn } from './site-folder.ts';

export interface Staging {
  /** An empty folder that the site is made in. */
  readonly folder: string;
  /** Another one on the same disk, for what waits to be moved into the first. */
  readonly aside: string;
  /**
   * Puts the new site in place of the old one, which stays until the new one stands, with everything that the user put into it.
   *
   * @returns `file by file` where a folder cannot be renamed: a mount point, or one in a folder that takes no writing
   * @throws InTheWay, and then the old site is as it was
   */
  swap(made: string): 'at once' | 'file by file';
  /** Removes what the new site took the place of, many files at a time: one after the other takes a disk several times as long. */
  clear(): Promise<void>;
  /** Gives up what was not swapped in, and lets the place go; the last site stays. */
  discard(): void;
}

export interface SwapEffects {
  /** Called before each step that a kill can fall between. */
  readonly step: (what: 'write' | 'rename' | 'remove' | 'carry', path: string) => void;
  /** Told when another process is making this site and is waited for. */
  readonly onWait: (whose: string) => void;
  /** How it is shown that this process lives and holds the place; by a thread, when not said. */
  readonly beat?: Beat;
}

const NO_EFFECTS: SwapEffects = { step: () => undefined, onWait: () => undefined };

/** Begins with this what is only there to be removed. */
const GONE = 'gone-';

/** Puts right what a kill left behind: the old site goes back where there is none, all that is half made is removed. */
export async function recover(place: Place, effects: Partial<SwapEffects> = {}): Promise<void> {
  if (!existsSync(place.work)) return;
  (await begin(place, { ...NO_EFFECTS, ...effects })).end();
}

/** Takes the place for this process, and begins a site there. */
export async function stage(place: Place, effects: Partial<SwapEffects> = {}): Promise<Staging> {
  const all = { ...NO_EFFECTS, ...effects };
  const held = await begin(place, all);
  const [folder, aside] = [join(place.work, 'new'), join(place.work, 'aside')];
  for (const each of [folder, aside]) mkdirSync(each);
  return { folder, aside, swap: (made) => swapIn(place, held.lock, folder, made, all.step), clear: held.clear, discard: held.end };
}

interface Held extends Pick<Staging, 'clear'> {
  readonly lock: Lock;
  end(): void;
}

/** Holds the place, and leaves nothing in it of those who held it before. */
async function begin({ site, work }: Place, { step, onWait, ...how }: SwapEffects): Promise<Held> {
  const lock = await takeLock(work, onWait, how);
  const old = join(work, 'old');
  try {
    if (existsSync(old) && !existsSync(site)) {
      step('rename', old);
      renameSync(old, site);
    }
    removeAll(work, lock, step);
  } catch (error) {
    lock.release();
    throw error;
  }
  return {
    lock,
    clear: async () => {
      if (!lock.isOurs()) return;
      // What this cannot remove is left to the end.
      await Promise.allSettled([...goneIn(work, lock, step)].map((gone) => rm(gone, { recursive: true, force: true })));
    },
    end: () => {
      if (!lock.isOurs()) return;
      removeAll(work, lock, step);
      lock.release();
      removeEmpty([work]);
    },
  };
}

function swapIn({ site, work }: Place, lock: Lock, folder: string, made: string, step: SwapEffects['step']): ReturnType<Staging['swap']> {
  if (!lock.isOurs()) throw new Error(`another process has taken over the making of ${site}`);
  const manifest: Manifest = { made, files: sizesIn(folder) };
  step('write', join(folder, MARKER));
  writeWhole(join(folder, MARKER), `${JSON.stringify(manifest)}\n`);
  const users = usersOwn(site);
  checkNoneInTheWay(users, site, folder);
  if (existsSync(site) && (dirname(work) === site || !moveAside(site, join(work, 'old'), users, folder, step))) {
    replaceInside(site, folder, manifest, step);
    return 'file by file';
  }
  moveIn(site, folder, join(work, 'old'), step);
  return 'at once';
}

/** @returns false when the folder of the site cannot be renamed, whatever is in it */
function moveAside(site: string, old: string, users: ReturnType<typeof usersOwn>, folder: string, step: SwapEffects['step']): boolean {
  step('carry', site);
  carryOver(users, site, folder);
  step('rename', site);
  try {
    renameSync(site, old);
    return true;
  } catch (error) {
    if (!CANNOT_BE_RENAMED.has((error as { code?: string }).code ?? '')) throw error;
    return false;
  }
}

const CANNOT_BE_RENAMED = new Set(['EBUSY', 'EXDEV', 'EPERM', 'EACCES']);

function moveIn(site: string, folder: string, old: string, step: SwapEffects['step']): void {
  const had = existsSync(old);
  step('rename', folder);
  try {
    renameSync(folder, site);
  } catch (error) {
    if (had && !existsSync(site)) renameSync(old, site);
    throw error;
  }
  if (!had) return;
  // What the user put there while the rest was being taken over.
  const ours = manifestOf(site)?.files ?? {};
  step('carry', old);
  carryOver(
    usersOwn(old).filter(({ path }) => !Object.hasOwn(ours, path)),
    old,
    site,
  );
}

function removeAll(work: string, lock: Lock, step: SwapEffects['step']): void {
  for (const gone of goneIn(work, lock, step)) removeWhatever(gone);
}

/** A folder of the site's past is first renamed to what says so: half removed it must never be taken for a site. */
function* goneIn(work: string, lock: Lock, step: SwapEffects['step']): Generator<string> {
  for (const name of readdirSync(work)) {
    if (join(work, name) === lock.file) continue;
    const gone = name.startsWith(GONE) ? join(work, name) : join(work, `${GONE}${randomUUID()}`);
    if (!name.startsWith(GONE)) {
      step('rename', join(work, name));
      renameSync(join(work, name), gone);
    }
    step('remove', gone);
    yield gone;
  }
}

/** Removes a folder though folders in it take no writing; what even then cannot be removed waits for the next run. */
function removeWhatever(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true });
  } catch {
    try {
      makeWritable(path);
      rmSync(path, { recursive: true, force: true });
    } catch {
      // Somebody else's, perhaps; its name says what it is.
    }
  }
}

function makeWritable(path: string): void {
  if (!lstatSync(path).isDirectory()) return;
  chmodSync(path, 0o700);
  for (const name of readdirSync(path)) makeWritable(join(path, name));
}
