import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { type Attachment, type BookPaper, PAPERS } from '../../book/make-book.ts';
import { dataFilesOf } from '../../exports/data-files.ts';
import { withheldTexts } from '../../journal/copy/withheld.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { cacheFolder } from '../../site/cache-folder.ts';
import { hasErrors } from '../../site/check-journal.ts';
import { leaksOfFile } from '../../site/proof/prove.ts';
import { CONTENT, type Command } from '../command.ts';
import { COPY, copyAsked } from '../copy-option.ts';
import { dayOption, TO } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { progressLine } from '../progress.ts';
import { reportProblems } from '../report.ts';
import { reportLeaks } from '../report-leaks.ts';
import { journalFolder, openJournal } from '../the-journal.ts';
import { writeNew } from '../write-new.ts';

/** The history file: the record as one bound book. */
export const book: Command = {
  name: 'book',
  summary: 'sets the record as one book to print and bind: PDF/A, with an index, and the tables it was made from attached',
  takes: [],
  options: {
    content: CONTENT,
    out: { type: 'string', value: 'FILE.pdf', help: 'the PDF to write; it must not be there yet' },
    paper: { type: 'string', value: PAPERS.join('|'), help: 'the paper (else a4)' },
    to: TO,
    copy: COPY,
  },
  run: async (values, _takes, effects) => {
    const { out, paper = 'a4' } = values;
    if (typeof out !== 'string' || !/\.pdf$/i.test(out)) throw new Refusal(EXIT.notUnderstood, '`book` needs --out FILE.pdf.');
    if (!isPaper(paper)) throw new Refusal(EXIT.notUnderstood, `--paper is ${PAPERS.join(', ')}, not \`${paper}\`.`);
    const opened = await openJournal(journalFolder(values, effects), effects, dayOption(values, 'to'));
    if (opened.record === null || hasErrors(opened.diagnostics)) {
      reportProblems(opened, effects);
      effects.err('No book was set.\n');
      return EXIT.journalHasErrors;
    }
    const progress = progressLine(effects);
    const workspace = mkdtempSync(join(tmpdir(), 'asfound-book-'));
    try {
      const { renderForBook } = await import('../../book/render-for-book.ts');
      const copy = copyAsked(opened.record, values);
      const record = await renderForBook(copy, {
        folder: opened.folder,
        cache: cacheFolder(effects.env),
        workspace,
        progress: progress.show,
      });
      const { makeBook } = await import('../../book/make-book.ts');
      const pdf = makeBook(record, { paper, workspace, attached: await tablesOf(copy), progress: progress.show });
      progress.clear();
      const leaks = await leaksOfFile('book.pdf', pdf, withheldTexts(opened.record, copy));
      if (leaks.length > 0) {
        reportLeaks(leaks, copy, effects);
        effects.err('No book was written.\n');
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
  },
};

function isPaper(paper: unknown): paper is BookPaper {
  return PAPERS.some((one) => one === paper);
}

/** The tables of the record, as they are published. */
async function tablesOf(record: JournalRecord): Promise<Attachment[]> {
  const tables = dataFilesOf(record).filter(({ path }) => path.endsWith('.csv'));
  return Promise.all(
    tables.map(async ({ path, holds, make }) => ({
      name: path.slice(path.lastIndexOf('/') + 1),
      holds,
      type: 'text/csv',
      content: String(await make(record)),
    })),
  );
}
