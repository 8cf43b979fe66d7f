/** Changes to several files of a journal that make sense only together: shown first, tried first, and written all or none. */
import { Busy, ChangedMeanwhile, writeTogether } from '../disk/write-together.ts';
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import { compileJournal } from '../journal/pipeline.ts';
import { reasonOf } from '../load/problems.ts';
import { todayBy } from '../site/today.ts';
import type { Effects } from './effects.ts';
import { EXIT, Refusal } from './exit-codes.ts';
import { linesChanged } from './lines-changed.ts';
import { type OpenedJournal, shownFrom } from './the-journal.ts';

export interface TextChange {
  /** From the journal folder. */
  readonly path: string;
  readonly to: string;
  readonly becomes: string;
}

/**
 * @param dry shows what would be written, and writes nothing
 * @throws Refusal when the journal would have a new fault, a file has changed meanwhile, or cannot be written; then nothing has changed
 */
export function changeFiles(opened: OpenedJournal, changes: readonly TextChange[], effects: Effects, dry: boolean): void {
  const fault = newFault(opened, changes, effects);
  if (fault) {
    const { file, line } = fault.place;
    throw new Refusal(EXIT.journalHasErrors, `nothing was changed: it would be a fault at ${file}:${line}. ${fault.message}`);
  }
  const shown = shownFrom(effects.cwd, opened.folder);
  const bytesOf = new Map(opened.sources.files.map(({ path, bytes }) => [path, Buffer.from(bytes)]));
  for (const { path, to, becomes } of changes) {
    if (to !== path) effects.out(`${shown(path)} -> ${shown(to)}\n`);
    effects.out(linesChanged(shown(to), textOf(bytesOf.get(path)), becomes));
  }
  const unread = changes.find(({ path }) => !Buffer.from(textOf(bytesOf.get(path))).equals(bytesOf.get(path) ?? Buffer.alloc(0)));
  if (unread) throw new Refusal(EXIT.journalHasErrors, `${shown(unread.path)} is not UTF-8 throughout; nothing was changed.`);
  if (dry) return;
  try {
    const whole = changes.map(({ path, to, becomes }) => ({
      path,
      to,
      before: bytesOf.get(path) ?? Buffer.alloc(0),
      after: Buffer.from(becomes),
    }));
    writeTogether(opened.folder, whole);
  } catch (error) {
    if (error instanceof ChangedMeanwhile)
      throw new Refusal(EXIT.cannotReadOrWrite, `${shown(error.path)} has changed meanwhile; nothing was changed.`);
    if (error instanceof Busy) throw new Refusal(EXIT.cannotReadOrWrite, `another run changes this journal; nothing was changed.`);
    throw new Refusal(EXIT.cannotReadOrWrite, `${opened.folder} cannot be written: ${reasonOf(error)}.`);
  }
}

/** The text of a file as it lies on disk, a byte order mark with it. */
export function textOf(bytes: Uint8Array | undefined): string {
  return new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
}

/** The first error that the journal would have and has not; a change of a path that is not there is a new file. */
export function newFault({ sources, diagnostics }: OpenedJournal, changes: readonly TextChange[], effects: Effects): Diagnostic | null {
  const byPath = new Map(changes.map((change) => [change.path, change]));
  const files = sources.files.map((file) => {
    const change = byPath.get(file.path);
    return change ? { ...file, path: change.to, bytes: new TextEncoder().encode(change.becomes) } : file;
  });
  const fresh = changes.filter(({ path }) => !sources.files.some((file) => file.path === path));
  const added = fresh.map(({ to, becomes }) => ({ path: to, bytes: new TextEncoder().encode(becomes), size: becomes.length, mtimeMs: 0 }));
  const all = [...files, ...added].sort((a, b) => (a.path < b.path ? -1 : 1));
  const after = compileJournal({ ...sources, files: all }, { today: todayBy(effects.env, effects.now()) }).diagnostics;
  const known = new Set(diagnostics.map((each) => faultOf(each, byPath)));
  return after.find((each) => each.severity === 'error' && !known.has(faultOf(each, byPath))) ?? null;
}

function faultOf({ code, place }: Diagnostic, moved: ReadonlyMap<string, TextChange>): string {
  return `${code} ${moved.get(place.file)?.to ?? place.file} ${place.line}`;
}
