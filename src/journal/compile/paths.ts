/** Paths written in notes, made into paths inside the journal. */
import { startOf } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import type { Place } from '../model.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Asset } from '../read/source/sources.ts';

/** The files of a journal that are not notes, by path and by folder. */
export interface AssetsByFolder {
  /** By their names in one form, see `oneName`. */
  readonly files: ReadonlyMap<string, Asset>;
  readonly folders: ReadonlyMap<string, readonly string[]>;
}

export function assetsByFolder(assets: readonly Asset[]): AssetsByFolder {
  const folders = new Map<string, string[]>();
  for (const { path } of assets) {
    const folder = folderOf(path);
    const list = folders.get(folder);
    if (list) list.push(path);
    else folders.set(folder, [path]);
  }
  return { files: new Map(assets.map((asset) => [oneName(asset.path), asset])), folders };
}

/** A letter and its mark may be one character or two, as the disk or the keyboard has it; both are one name (Unicode, NFC). */
export function oneName(path: string): string {
  return path.normalize('NFC');
}

/** A112: files of which only one can be named. */
export function checkTwins(assets: readonly Asset[], out: Reporter): void {
  for (const [, [first, ...others]] of Map.groupBy(assets, ({ path }) => oneName(path))) {
    for (const { path } of others) {
      const related = first ? [{ place: startOf(first.path), message: 'This is the other one.' }] : [];
      out.report('A112', startOf(path), 'Two files have this name: its letters are the same, written in two ways.', {
        hint: 'Rename one of them.',
        related,
      });
    }
  }
}

export function folderOf(path: string): string {
  const slash = path.lastIndexOf('/');
  return slash === -1 ? '' : path.slice(0, slash);
}

/** A web address or the like, which is nothing of the journal's; one letter is a drive. */
export function isAway(path: string): boolean {
  return /^[a-z][a-z0-9+.-]+:/i.test(path) || path.startsWith('//');
}

/**
 * Joins a path as written to the folder it is written in.
 *
 * @returns a path inside the journal in one form, see `oneName`; null when it climbs out or is absolute
 */
export function inside(folder: string, written: string): string | null {
  if (written.startsWith('/') || written.includes('\\') || written.includes('\0') || /^[a-z]:/i.test(written)) return null;
  const steps = folder === '' ? [] : folder.split('/');
  for (const step of written.split('/')) {
    if (step === '' || step === '.') continue;
    if (step !== '..') steps.push(step);
    else if (steps.pop() === undefined) return null;
  }
  return oneName(steps.join('/'));
}

/**
 * Finds a file beside a note, or in another folder that such files may lie in.
 *
 * @param again where else the same file is named, for the report
 * @returns its path inside the journal, or null with the problem reported
 */
export function findFile(
  written: string,
  folders: readonly string[],
  assets: AssetsByFolder,
  what: { readonly code: 'A901' | 'A902' | 'A905'; readonly name: string },
  place: Place,
  out: Reporter,
  again: readonly Place[] = [],
): string | null {
  const related = again.map((other) => ({ place: other, message: 'It is named here too.' }));
  const candidates = folders.map((folder) => inside(folder, written));
  if (candidates.some((path) => path === null)) {
    const hint = 'Copy the file into the journal, and name it by its place there.';
    out.report('A105', place, `\`${written}\` leads out of the journal folder.`, { hint, related });
    return null;
  }
  const found = candidates.flatMap((path) => (path === null ? [] : (assets.files.get(path) ?? [])))[0];
  if (found) return found.path;
  const known = folders.flatMap((folder) => assets.folders.get(folder) ?? []).map((path) => path.slice(path.lastIndexOf('/') + 1));
  const where = folders.map((folder) => `${folder}/`).join(' or ');
  out.report(what.code, place, `The ${what.name} \`${written}\` is not in ${where}.`, {
    hint: didYouMean(written, known) ?? `Put the file there, or take the name out here.`,
    related,
  });
  return null;
}
