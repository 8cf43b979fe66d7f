import type { PartEntry } from '../../../journal/model.ts';
import { seenIn } from '../../../journal/registers/observed.ts';
import { html } from '../page/html.ts';
import { partLink, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital } from '../page/words.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';
import { entryRelations } from './entry-relations.ts';
import { deedWords } from './session-facts.ts';

/** What was done to each part in a session, and everything that was noted of it. */
export function workTable(sheet: Sheet, entries: readonly PartEntry[]): SetTable {
  return setTable<PartEntry>({
    label: 'What was done to each part',
    set: 'work',
    columns: [
      { head: 'Part', names: true, cell: ({ part }) => partLink(sheet, part) },
      { head: 'Done', bare: true, cell: (entry) => capital(deedWords(sheet, entry)) },
      { head: 'Noted', bare: true, cell: (entry) => html`${notedOf(entry)}${entryRelations(sheet, entry).map((line) => sub(line))}` },
    ],
    groups: rows(entries),
  });
}

function notedOf(entry: PartEntry) {
  return seenIn(entry).map(({ label, words }) => (label === null ? words : sub(`${label}: ${words}`)));
}
