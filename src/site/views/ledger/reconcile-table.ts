import type { LedgerAt } from '../../../journal/ledger/ledger-at.ts';
import type { Reconciliation } from '../../../journal/ledger/reconcile.ts';
import type { OpenBook } from '../books/open-book.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { leavesHoursOut } from '../page/words.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** A line of the account that is added up both ways: what stands on each side, and what each figure opens. */
interface Both {
  readonly left: Figure;
  readonly right: Figure | null;
}

interface Figure {
  readonly words: string;
  readonly money: number;
  readonly to: string | null;
}

/**
 * Paid and job cost at a day, and the line on which they meet.
 *
 * @param shelf where the consumables of that day are listed
 */
export function reconcileTable(sheet: Sheet, at: LedgerAt, line: Reconciliation, open: OpenBook, shelf: string): SetTable {
  const { money } = sheet.figures;
  const all = open('all');
  const labour = at.byKind.has('labour') ? open('kind-labour') : all;
  const timed = !leavesHoursOut(sheet.copy);
  const [paid, cost] = [
    { words: 'Paid out', money: line.paid, to: all },
    { words: 'Job cost', money: line.cost, to: all },
  ];
  const onShelf = { words: 'Consumables on the shelf', money: line.shelf, to: shelf };
  const opening = { words: 'Opening stock', money: line.opening, to: shelf };
  const lines: readonly Both[] = timed
    ? [
        { left: paid, right: cost },
        { left: { words: 'Labour at its rate', money: line.labour, to: labour }, right: onShelf },
        { left: opening, right: null },
      ]
    : [
        { left: paid, right: cost },
        { left: opening, right: onShelf },
      ];
  const figure = (of: Figure | null) => of && linked(money(of.money), of.to);
  return setTable<Both, Reconciliation>({
    label: 'Paid and job cost',
    caption: `Paid and job cost, added up both ways: the totals must agree.${timed ? '' : ' This copy leaves hours out, and labour is on neither side.'}`,
    set: 'reconcile',
    headless: true,
    keepsRows: true,
    columns: [
      { head: 'Put in', names: true, cell: ({ left }) => left.words },
      { head: 'Money', set: 'num', cell: ({ left }) => figure(left), sum: ({ left }) => money(left) },
      { head: 'What it came to', names: true, cell: ({ right }) => right?.words, sum: () => 'Total' },
      { head: 'Money', set: 'num', cell: ({ right }) => figure(right), sum: ({ right }) => money(right) },
    ],
    groups: rows<Both, Reconciliation>(lines),
    foot: [{ words: 'Total', sum: line }],
  });
}
