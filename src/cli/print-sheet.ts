import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import type { BookSetting } from '../book/setting.ts';
import type { SheetPaper, SheetText } from '../book/sheets/frame.ts';
import { withheldTexts } from '../journal/copy/withheld.ts';
import { cacheFolder } from '../site/cache-folder.ts';
import { hasErrors } from '../site/check-journal.ts';
import { leaksOfFile } from '../site/proof/prove.ts';
import type { SiteRecord } from '../site/record.ts';
import type { Option, OptionValues } from './command.ts';
import { copyAsked } from './copy-option.ts';
import { dayOption } from './day-option.ts';
import type { Effects } from './effects.ts';
import { EXIT, type Exit, Refusal } from './exit-codes.ts';
import { progressLine } from './progress.ts';
import { reportProblems } from './report.ts';
import { reportLeaks } from './report-leaks.ts';
import { journalFolder, openJournal } from './the-journal.ts';
import { writeNew } from './write-new.ts';

export const PAPER: Option = { type: 'string', value: 'a4|us-letter', help: 'the paper (else a4)' };

/**
 * Prints a paper of a few sheets, of the copy that is asked for, once it is proved.
 *
 * @param ask may refuse, when the record is known
 */
export async function printSheet(
  values: OptionValues,
  effects: Effects,
  name: string,
  make: (setting: BookSetting) => SheetText,
  ask: (record: SiteRecord) => void = () => undefined,
): Promise<Exit> {
  const { out, paper = 'a4' } = values;
  if (typeof out !== 'string' || !/\.pdf$/i.test(out)) throw new Refusal(EXIT.notUnderstood, `\`${name}\` needs --out FILE.pdf.`);
  if (paper !== 'a4' && paper !== 'us-letter') throw new Refusal(EXIT.notUnderstood, `--paper is a4 or us-letter, not \`${paper}\`.`);
  const opened = await openJournal(journalFolder(values, effects), effects, dayOption(values, 'to'));
  if (opened.record === null || hasErrors(opened.diagnostics)) {
    reportProblems(opened, effects);
    effects.err('Nothing was printed.\n');
    return EXIT.journalHasErrors;
  }
  const copy = copyAsked(opened.record, values);
  const progress = progressLine(effects);
  const workspace = mkdtempSync(join(tmpdir(), 'asfound-sheet-'));
  try {
    const { renderForBook } = await import('../book/render-for-book.ts');
    const record = await renderForBook(copy, {
      folder: opened.folder,
      cache: cacheFolder(effects.env),
      workspace,
      progress: progress.show,
    });
    progress.clear();
    ask(record);
    const { sheetPdf } = await import('../book/sheets/frame.ts');
    const pdf = sheetPdf(record, make, { paper: paper satisfies SheetPaper, workspace });
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
    rmSync(workspace, { recursive: true, force: true });
  }
}
