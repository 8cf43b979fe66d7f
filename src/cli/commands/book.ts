import { type BookPaper, PAPERS } from '../../book/make-book.ts';
import { attachmentsOf } from '../book-attachments.ts';
import { CONTENT, type Command } from '../command.ts';
import { COPY } from '../copy-option.ts';
import { TO } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { notesOf } from '../notes-of-copy.ts';
import { printPaper } from '../print-paper.ts';

/** The history file: the record as one bound book. */
export const book: Command = {
  name: 'book',
  summary:
    'sets the record as one book to print and bind: PDF/A, with an index, and attached the tables it was made from and, where the copy may have them, the notes',
  takes: [],
  options: {
    content: CONTENT,
    out: {
      type: 'string',
      value: 'FILE.pdf',
      help: 'the PDF to write; it must not be there yet. A book of more than about 400 pages is bound in volumes: FILE-1.pdf, FILE-2.pdf',
    },
    paper: { type: 'string', value: PAPERS.join('|'), help: 'the paper (else a4)' },
    to: TO,
    copy: COPY,
  },
  run: async (values, _takes, effects) => {
    const { paper = 'a4' } = values;
    if (!isPaper(paper)) throw new Refusal(EXIT.notUnderstood, `--paper is ${PAPERS.join(', ')}, not \`${paper}\`.`);
    return printPaper(values, effects, 'book', async ({ record, copy, whole, folder, workspace, progress }) => {
      const { makeBook } = await import('../../book/make-book.ts');
      return makeBook(record, {
        paper,
        workspace,
        attached: await attachmentsOf(copy, notesOf(folder, whole, copy, values.to === undefined)),
        progress,
      });
    });
  },
};

function isPaper(paper: unknown): paper is BookPaper {
  return PAPERS.some((one) => one === paper);
}
