import type { Missed } from '../../../journal/registers/forgotten/forgotten.ts';
import { html, type Markup } from '../page/html.ts';
import { dayLink, linked, partLink } from '../page/links.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** What is left out of one kind: of what, since when, on which line of which file it belongs, and what to write there. */
export function forgottenTable(sheet: RecordSheet, missed: readonly Missed[], label: string): SetTable {
  return setTable<Missed>({
    label,
    columns: [
      { head: 'What', names: true, cell: ({ about }) => subjectLink(sheet, about) },
      { head: 'What is left out', bare: true, cell: ({ lacks }) => lacks },
      { head: 'Day', set: 'date', cell: ({ at }) => dayLink(sheet, at) },
      { head: 'Where', cell: ({ place: { file, line } }) => html`<code>${file}:${line}</code>` },
      { head: 'What to write', cell: ({ write }) => html`<code>${write}</code>` },
    ],
    groups: rows(missed),
  });
}

function subjectLink(sheet: RecordSheet, about: Missed['about']): Markup {
  if ('part' in about) return partLink(sheet, about.part);
  if ('bag' in about) return linked(`Bag ${about.bag}`, sheet.toBag(about.bag));
  if ('item' in about) return linked(sheet.index.itemsById.get(about.item)?.opening.what ?? about.item, sheet.toItem(about.item));
  return html`${about.name}`;
}
