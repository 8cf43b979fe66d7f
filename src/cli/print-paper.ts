import { rmSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { makeRoom } from '../disk/room.ts';
import { withheldTexts } from '../journal/copy/withheld.ts';
import type { JournalRecord } from '../journal/record.ts';
import { cacheFolder } from '../site/cache-folder.ts';
import { hasErrors } from '../site/check-journal.ts';
import { leaksOfFile } from '../site/proof/prove.ts';
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

/**
 * Sets the copy that is asked for as a PDF, and writes it where no file is yet, once nothing withheld is found in it.
 *
 * @param name of the command
 * @param set gives the bytes of the PDF; may refuse
 */
export async function printPaper(
  values: OptionValues,
  effects: Effects,
  name: string,
  set: (source: PaperSource) => Promise<Uint8Array>,
): Promise<Exit> {
  const out = pdfAsked(values, name);
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
    const record = await renderForBook(copy, {
      folder: opened.folder,
      cache: cacheFolder(effects.env),
      workspace,
      progress: progress.show,
    });
    const pdf = await set({ record, copy, whole: opened.record, folder: opened.folder, workspace, progress: progress.show });
    progress.clear();
    const leaks = await leaksOfFile(`${name}.pdf`, pdf, withheldTexts(opened.record, copy));
    if (leaks.length > 0) {
      reportLeaks(leaks, copy, effects);
      effects.err('Nothing was printed.\n');
      return EXIT.journalHasErrors;
    }
    const path = resolve(effects.cwd, out);
    writeNew(path, pdf);
    effects.out(`${relative(effects.cwd, path)}\n`);
    return EXIT.done;
  } finally {
    progress.clear();
    stop();
    rmSync(workspace, { recursive: true, force: true });
  }
}
