import { readFileSync, rmSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { makeRoom } from '../disk/room.ts';
import { type Withheld, withheldTexts } from '../journal/copy/withheld.ts';
import type { JournalRecord } from '../journal/record.ts';
import { cacheFolder } from '../site/cache-folder.ts';
import { hasErrors } from '../site/check-journal.ts';
import { type Leak, leaksOfFile } from '../site/proof/prove.ts';
import type { SiteRecord } from '../site/record.ts';
import type { OptionValues } from './command.ts';
import { copyAsked } from './copy-option.ts';
import { dayOption } from './day-option.ts';
import type { Effects } from './effects.ts';
import { EXIT, type Exit, Refusal } from './exit-codes.ts';
import { progressLine } from './progress.ts';
import { reportProblems } from './report.ts';
import { reportLeaks } from './report-leaks.ts';
import { journalFolder, openJournal } from './the-journal.ts';
import { writeNew } from './write-new.ts';

/** What a paper is set from. */
export interface PaperSource {
  readonly record: SiteRecord;
  /** The journal as this copy has it, for the tables. */
  readonly copy: JournalRecord;
  /** All there is. */
  readonly whole: JournalRecord;
  /** The journal folder. */
  readonly folder: string;
  /** A folder for files of the setting, removed when the paper is written. */
  readonly workspace: string;
  readonly progress: (told: string) => void;
}

/** The file that `--out` names. */
function pdfAsked({ out }: OptionValues, name: string): string {
  if (typeof out !== 'string' || !/\.pdf$/i.test(out)) throw new Refusal(EXIT.notUnderstood, `\`${name}\` needs --out FILE.pdf.`);
  return out;
}

/** Bytes of a paper that is one file, or the files of a book that may be bound in volumes, in the workspace. */
type Printed = Uint8Array | readonly string[];

/**
 * Sets the copy that is asked for as a PDF, or as several, and writes them where no file is yet, once nothing withheld is found in
 * any.
 *
 * @param name of the command
 * @param set may refuse
 */
export async function printPaper(
  values: OptionValues,
  effects: Effects,
  name: string,
  set: (source: PaperSource) => Promise<Printed>,
): Promise<Exit> {
  const out = resolve(effects.cwd, pdfAsked(values, name));
  const opened = await openJournal(journalFolder(values, effects), effects, dayOption(values, 'to'));
  if (opened.record === null || hasErrors(opened.diagnostics)) {
    reportProblems(opened, effects);
    effects.err('Nothing was printed.\n');
    return EXIT.journalHasErrors;
  }
  const copy = copyAsked(opened.record, values);
  const progress = progressLine(effects);
  const workspace = makeRoom(name);
  const stop = effects.onInterrupt(() => rmSync(workspace, { recursive: true, force: true }));
  try {
    const { renderForBook } = await import('../book/render-for-book.ts');
    const places = { folder: opened.folder, cache: cacheFolder(effects.env), workspace, progress: progress.show };
    const record = await renderForBook(copy, places);
    const printed = await set({ record, copy, whole: opened.record, folder: opened.folder, workspace, progress: progress.show });
    const leaks = await leaksOfPrinted(printed, name, withheldTexts(opened.record, copy), progress.show);
    progress.clear();
    if (reportLeaks(leaks, copy, effects)) {
      effects.err('Nothing was printed.\n');
      return EXIT.journalHasErrors;
    }
    for (const path of writePrinted(printed, out)) effects.out(`${relative(effects.cwd, path)}\n`);
    return EXIT.done;
  } finally {
    progress.clear();
    stop();
    rmSync(workspace, { recursive: true, force: true });
  }
}

/** One file at a time is held. */
async function leaksOfPrinted(printed: Printed, name: string, withheld: readonly Withheld[], progress: (told: string) => void) {
  if (withheld.length === 0) return [];
  progress('Proof: nothing that is left out stands in it');
  if (printed instanceof Uint8Array) return leaksOfFile(`${name}.pdf`, printed, withheld);
  const leaks: Leak[] = [];
  for (const [n, file] of printed.entries()) {
    leaks.push(...(await leaksOfFile(volumeFile(`${name}.pdf`, n, printed.length), readFileSync(file), withheld)));
  }
  return leaks;
}

/** `van.pdf`, or of a book in volumes `van-1.pdf`, `van-2.pdf`. */
export function volumeFile(path: string, n: number, of: number): string {
  return of === 1 ? path : path.replace(/\.pdf$/i, (ending) => `-${n + 1}${ending}`);
}

/** @returns what was written: all, or none where one of them is there already or cannot be written */
function writePrinted(printed: Printed, out: string): readonly string[] {
  if (printed instanceof Uint8Array) {
    writeNew(out, printed);
    return [out];
  }
  const written: string[] = [];
  try {
    for (const [n, file] of printed.entries()) {
      const path = volumeFile(out, n, printed.length);
      writeNew(path, readFileSync(file));
      written.push(path);
    }
  } catch (error) {
    for (const path of written) rmSync(path, { force: true });
    throw error;
  }
  return written;
}
