import type { AgedPending } from '../../../journal/registers/pending.ts';
import { html } from '../page/html.ts';
import { positionLink, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, counted } from '../page/words.ts';
import { decisionWords } from '../position/decision-words.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Decisions not carried out, the oldest first. */
export function pendingTable(sheet: Sheet, pending: readonly AgedPending[]): SetTable {
  return setTable<AgedPending>({
    label: 'Decisions not carried out, the oldest first',
    columns: [
      { head: 'Position', names: true, cell: ({ position }) => positionLink(sheet, position) },
      { head: 'Decided', cell: ({ decision }) => html`${decisionWords(sheet, decision)}${sub(sheet.date(decision.date))}` },
      { head: 'State', bare: true, cell: ({ words }) => capital(words) },
      { head: 'Age', set: 'num', cell: ({ days }) => counted(days, 'day') },
    ],
    groups: rows(pending),
  });
}
