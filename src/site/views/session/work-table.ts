import type { PartEntry } from '../../../journal/model.ts';
import { html } from '../page/html.ts';
import { partLink, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { CONDITION_WORDS, capital } from '../page/words.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';
import { deedWords } from './session-facts.ts';

/** What was done to each part in a session: its condition where any was classed, and what was noted of it. */
export function workTable(sheet: Sheet, entries: readonly PartEntry[]): SetTable {
  const graded = entries.some(({ condition }) => condition !== null);
  const classed = ({ condition }: PartEntry): string => (condition === null ? '' : `${condition}, ${CONDITION_WORDS[condition]}`);
  return setTable<PartEntry>({
    label: 'What was done to each part',
    set: 'work',
    columns: [
      { head: 'Part', names: true, cell: ({ part }) => partLink(sheet, part) },
      { head: 'Done', bare: true, cell: (entry) => capital(deedWords(entry)) },
      ...(graded ? [{ head: 'Condition', cell: classed }] : []),
      {
        head: 'Noted',
        bare: true,
        cell: ({ note, marks, finish, how }) =>
          html`${note}${marks !== null && sub(`Marks: ${marks}`)}${finish !== null && sub(`Finish: ${finish}`)}${how !== null && sub(capital(how))}`,
      },
    ],
    groups: rows(entries),
  });
}
