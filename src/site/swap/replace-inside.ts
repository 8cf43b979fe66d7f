/**
 * Puts a new site into a folder that cannot be renamed, file by file. Meanwhile the marker names the files of both
 * sites and says that neither is whole, so that after a kill nothing of ours is taken for the user's, and the
 * next build makes it anew.
 */
import { constants, copyFileSync, mkdirSync, renameSync, rmdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { unfinishedBeside, writeWhole } from '../../disk/write-whole.ts';
import { MARKER, type Manifest, manifestOf, thereAt, withFolders } from './site-folder.ts';

/** @param manifest of the new site; what else is in its folder is left there */
export function replaceInside(
  site: string,
  next: string,
  manifest: Manifest,
  step: (what: 'write' | 'rename' | 'remove', path: string) => void,
): void {
  const before = manifestOf(site)?.files ?? {};
  const mark = (marker: Manifest): void => {
    step('write', join(site, MARKER));
    writeWhole(join(site, MARKER), `${JSON.stringify(marker)}\n`);
  };
  mark({ made: '', files: { ...before, ...manifest.files } });
  for (const file of Object.keys(manifest.files)) {
    step('rename', join(site, file));
    makeRoom(site, file);
    moveOver(join(next, file), join(site, file));
  }
  for (const file of Object.keys(before)) {
    if (Object.hasOwn(manifest.files, file)) continue;
    step('remove', join(site, file));
    // A folder of that name is of the new site.
    if (thereAt(join(site, file))?.isDirectory() === false) rmSync(join(site, file), { force: true });
    removeEmptied(site, file);
  }
  mark(manifest);
}

/** Where a file of the last site stands in the way of a folder, or the other way round, it goes first. */
function makeRoom(site: string, file: string): void {
  for (const step of withFolders(file)) {
    const there = thereAt(join(site, step));
    if (there !== undefined && there.isDirectory() === (step === file)) rmSync(join(site, step), { recursive: true });
  }
  mkdirSync(dirname(join(site, file)), { recursive: true });
}

function moveOver(from: string, to: string): void {
  try {
    renameSync(from, to);
  } catch (error) {
    if ((error as { code?: string }).code !== 'EXDEV') throw error;
    const unfinished = unfinishedBeside(to);
    copyFileSync(from, unfinished, constants.COPYFILE_FICLONE);
    renameSync(unfinished, to);
  }
}

function removeEmptied(site: string, file: string): void {
  for (const folder of withFolders(file).slice(0, -1).toReversed()) {
    try {
      rmdirSync(join(site, folder));
    } catch {
      return;
    }
  }
}
