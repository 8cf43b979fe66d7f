/** Writes into the notes and catalogues of a journal what can be meant in one way only. */
import { chmodSync, existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { writeOver } from '../disk/write-new.ts';
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import { repaired, toldRepairs } from '../journal/diagnostics/repair.ts';
import { compileJournal } from '../journal/pipeline.ts';
import { reasonOf } from '../load/problems.ts';
import { todayBy } from '../site/today.ts';
import type { Effects } from './effects.ts';
import { EXIT, Refusal } from './exit-codes.ts';
import { changedLines, linesChanged } from './lines-changed.ts';
import { type OpenedJournal, shownFrom } from './the-journal.ts';
import { writeNew } from './write-new.ts';

/** A file as it lies on disk, and as it will. */
interface Change {
  readonly path: string;
  readonly before: Buffer;
  readonly was: string;
  readonly becomes: string;
}

/** The lines that `--fix` would write, as `path:line`, in the order of the files. */
export function linesToMend(opened: OpenedJournal, effects: Effects): string[] {
  const shown = shownFrom(effects.cwd, opened.folder);
  return changesThatHelp(opened, effects).flatMap(({ path, was, becomes }) =>
    changedLines(was, becomes).map((line) => `${shown(path)}:${line}`),
  );
}

/**
 * Shows each line before and after, keeps a copy of every file in a folder of its own, and writes the files whole.
 * What is simply read as it was meant is no fault, and stays as it was written. A file for which the repairs would leave
 * a new fault is left as it is.
 *
 * @returns how many files were written
 * @throws Refusal when a file has changed meanwhile, or cannot be written; what was written before it stays written
 */
export function mendFiles(opened: OpenedJournal, effects: Effects): number {
  const changes = changesThatHelp(opened, effects);
  if (changes.length === 0) {
    effects.err('Nothing stands here that can be mended without asking.\n');
    return 0;
  }
  const copies = freeFolder(opened.folder);
  const shown = shownFrom(effects.cwd, opened.folder);
  for (const { path, before, was, becomes } of changes) {
    const target = realpathSync(join(opened.folder, path));
    if (!readFileSync(target).equals(before))
      throw new Refusal(EXIT.cannotReadOrWrite, `${shown(path)} has changed meanwhile; it was left as it is.`);
    effects.out(linesChanged(shown(path), was, becomes));
    writeNew(join(copies, path), before);
    try {
      const { mode } = statSync(target);
      writeOver(target, becomes);
      chmodSync(target, mode);
    } catch (error) {
      throw new Refusal(EXIT.cannotReadOrWrite, `${shown(path)} cannot be written: ${reasonOf(error)}.`);
    }
  }
  const files = changes.length === 1 ? '1 file was' : `${changes.length} files were`;
  effects.err(`${files} mended; what stood there before is in ${shown(copies.slice(opened.folder.length + 1))}.\n`);
  return changes.length;
}

function changesThatHelp(opened: OpenedJournal, effects: Effects): Change[] {
  const all = changesOf(opened);
  return all.length === 0 || help(all, opened, effects) ? all : all.filter((change) => help([change], opened, effects));
}

function changesOf({ sources, repairs, diagnostics }: OpenedJournal): Change[] {
  const byFile = Map.groupBy(toldRepairs(repairs, diagnostics), ({ place }) => place.file);
  return sources.files.flatMap((file) => {
    const ofFile = byFile.get(file.path) ?? [];
    if (ofFile.length === 0) return [];
    const before = Buffer.from(file.bytes);
    const was = new TextDecoder('utf-8', { ignoreBOM: true }).decode(before);
    const becomes = repaired(was, ofFile);
    return becomes === was ? [] : [{ path: file.path, before, was, becomes }];
  });
}

/** Whether no file has a new fault with these as they will be. */
function help(changes: readonly Change[], { sources, diagnostics }: OpenedJournal, effects: Effects): boolean {
  const becomes = new Map(changes.map((change) => [change.path, new TextEncoder().encode(change.becomes)]));
  const files = sources.files.map((file) => ({ ...file, bytes: becomes.get(file.path) ?? file.bytes }));
  const after = compileJournal({ ...sources, files }, { today: todayBy(effects.env, effects.now()) }).diagnostics;
  const known = new Set(diagnostics.map(faultOf));
  return after.every((each) => known.has(faultOf(each)));
}

const faultOf = ({ code, place }: Diagnostic): string => `${code} ${place.file} ${place.line}`;

/** A folder of copies that is not there yet. No note is looked for in it. */
function freeFolder(folder: string): string {
  for (let n = 1; ; n += 1) {
    const copies = join(folder, n === 1 ? 'before-fix' : `before-fix-${n}`);
    if (!existsSync(copies)) return copies;
  }
}
