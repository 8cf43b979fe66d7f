import { type Attachment, type BookPaper, PAPERS } from '../../book/make-book.ts';
import { dataFilesOf } from '../../exports/data-files.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { CONTENT, type Command } from '../command.ts';
import { COPY } from '../copy-option.ts';
import { TO } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { printPaper } from '../print-paper.ts';

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
    const { paper = 'a4' } = values;
    if (!isPaper(paper)) throw new Refusal(EXIT.notUnderstood, `--paper is ${PAPERS.join(', ')}, not \`${paper}\`.`);
    return printPaper(values, effects, 'book', async ({ record, copy, workspace, progress }) => {
      const { makeBook } = await import('../../book/make-book.ts');
      return makeBook(record, { paper, workspace, attached: await tablesOf(copy), progress });
    });
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
