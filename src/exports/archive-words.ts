/** The plain text that lies on top of an archive: what is in it, for somebody who finds it in fifty years. */
import type { JournalRecord } from '../journal/record.ts';

export interface ArchiveContents {
  /** Whether the notes and catalogues themselves are in it: as written, without what was private to former keepers, or not. */
  readonly notes: 'as written' | 'without former private' | 'none';
}

/** Why the notes are not byte for byte what their writers wrote. */
const FORMER = ` Taken out
                 of them are the fields "private" that were written while another
                 keeper had the vehicle; every other letter is as it was.`;

/** How the journal is had back: not from an archive that has no notes. */
const RESTORED: Readonly<Record<ArchiveContents['notes'], string>> = {
  'as written': 'To restore the journal: copy the folder journal/ to any place. It is the same,\nbyte for byte.\n\n',
  'without former private': 'To restore the journal: copy the folder journal/ to any place. It is the same but\nfor those fields.\n\n',
  none: '',
};

/** @returns a text of lines no longer than eighty characters */
export function archiveWords({ journal, day, copy }: JournalRecord, { notes }: ArchiveContents): string {
  const { title, vehicle } = journal.settings;
  const what = [vehicle.year, vehicle.make, vehicle.model].filter((one) => one !== null).join(' ');
  return `${title}
${what === '' ? '' : `${what}\n`}
This is the record of the restoration of one vehicle, as it stood on ${day}.
It is the ${copy.name} copy${copy.leavesOut.length === 0 ? ': everything is in it' : `. Left out of it: ${copy.leavesOut.join(', ')}`}.

You need no program of ours to read it.

  book.pdf       The whole record as one book, to read or to print. PDF/A-3
                 (ISO 19005-3); the tables it was made from are attached to it.
                 One too thick to bind is in volumes: book-1.pdf, book-2.pdf.
  site/          The record as web pages (HTML, CSS; pictures in WebP and JPEG).
                 Open site/index.html in any browser; nothing is fetched from
                 elsewhere. The pages read as well without their scripts.
  tables/        Registers and accounts as tables: CSV by RFC 4180, UTF-8; the
                 same as linked data (JSON-LD 1.1, CIDOC CRM) in record.jsonld.
  record.json    Everything that the pages and tables were made from, in one
                 document (JSON, RFC 8259). record.schema.json says what each
                 field is (JSON Schema 2020-12). Amounts of money are in the
                 smallest unit of the currency; exact numbers are fractions.
${
  notes !== 'none'
    ? `  journal/       The notes and catalogues as they were written: Markdown
                 (CommonMark) with fields at the head of each note in YAML 1.2,
                 and pictures and papers as they were laid beside them. All the
                 rest was made from these.${notes === 'as written' ? '' : FORMER}`
    : `The notes themselves are not in this copy: they hold what it leaves out.`
}

How to know that it is whole: the folder is a bag by RFC 8493 (BagIt 1.0). Each
line of manifest-sha512.txt holds a SHA-512 sum and the name of a file; any
checksum program can compare them.

${RESTORED[notes]}Work on a vehicle can hurt. Cautions stand in the book and on the pages; local
law and a competent person come first. Old linings, gaskets and paint may be
poisonous: the record says where they are.
`;
}
