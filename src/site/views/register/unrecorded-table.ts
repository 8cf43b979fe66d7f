import type { Unrecorded } from '../../../journal/registers/unrecorded.ts';
import { html } from '../page/html.ts';
import { dayLink, partLink } from '../page/links.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Parts that lack a record, with when they came off or arrived and, where any did, went on. */
export function unrecordedTable(sheet: RecordSheet, lacking: readonly Unrecorded[], label: string): SetTable {
  const back = lacking.some(({ backOn }) => backOn !== null);
  return setTable<Unrecorded>({
    label,
    columns: [
      {
        head: 'Part',
        names: true,
        cell: ({ part, count }) => {
          const lot = sheet.record.journal.parts.get(part)?.count ?? 1;
          return html`${partLink(sheet, part)}${lot > 1 && html`<span class="nowrap">, ${count} of ${lot}</span>`}`;
        },
      },
      {
        head: 'Came off or arrived',
        set: 'date',
        cell: ({ since }) => html`${since.how === 'arrived' && 'arrived '}${dayLink(sheet, since)}`,
      },
      ...(back ? [{ head: 'Went on', set: 'date', cell: ({ backOn }: Unrecorded) => backOn && dayLink(sheet, backOn) }] : []),
    ],
    groups: rows(lacking),
  });
}
