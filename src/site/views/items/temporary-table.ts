import type { Gate, ItemRow } from '../../../journal/registers/open-items.ts';
import { html, type Markup } from '../page/html.ts';
import { chargeLink, dayLink, linked, sessionDay, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { counted } from '../page/words.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Temporary measures that are live: what each is on, how long it has stood, and which gate it holds. */
export function temporaryTable(sheet: Sheet, measures: readonly ItemRow[], gates: readonly Gate[]): SetTable {
  const last = gates.at(-1)?.milestone.id ?? null;
  const gateOf = ({ due }: ItemRow): Gate | undefined => gates.find(({ milestone }) => milestone.id === due);
  return setTable<ItemRow>({
    label: 'Temporary measures still in place',
    set: 'temporary',
    columns: [
      { head: 'What', names: true, cell: ({ id, what }) => linked(what, `#${id}`) },
      { head: 'On', cell: ({ on }) => chargeLink(sheet, on) },
      {
        head: 'Age',
        set: 'num',
        cell: ({ days, opened }) => html`${counted(days, 'day')}${sub(html`since ${dayLink(sheet, opened)}`)}`,
      },
      {
        head: 'To undo before',
        cell: ({ due, deferred: { length } }) =>
          html`${due !== null && sheet.milestoneName(due)}${length > 0 && sub(`put off ${times(length)}`)}`,
      },
      { head: 'Can it be passed?', set: 'nowrap', cell: (item) => passing(sheet, item, gateOf(item), last) },
    ],
    groups: rows(measures),
  });
}

const times = (n: number): string => (n === 1 ? 'once' : n === 2 ? 'twice' : counted(n, 'time'));

function passing(sheet: Sheet, { due }: ItemRow, gate: Gate | undefined, last: string | null): Markup {
  if (gate?.reached) {
    const { session, date } = gate.reached;
    return html`passed with it open, as the note says, on ${sessionDay(sheet, session, date)}`;
  }
  return html`<span class="attention">${due === last ? 'no' : 'no, nor any after it'}</span>`;
}
