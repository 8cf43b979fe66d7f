import { type BudgetLine, type BudgetRow, budgetsTogether } from '../../../journal/ledger/budgets.ts';
import type { OpenBook } from '../books/open-book.ts';
import { shareBar } from '../charts/bar.ts';
import { html, type Piece } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { leavesHoursOut } from '../page/words.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';

/** What the budgets of hours, and those of money, come to; null where there is none. */
type Together = Readonly<Record<'hours' | 'money', BudgetLine | null>>;

/** Budgets in hours and in money: used, of how much, a bar, and what is left in words. */
export function budgetTable(sheet: Sheet, budgets: readonly BudgetRow[], open: OpenBook): SetTable {
  const { hours, time, amount, hasMoney } = sheet.figures;
  const timed = !leavesHoursOut(sheet.copy);
  const together: Together = { hours: budgetsTogether(budgets, 'hours'), money: budgetsTogether(budgets, 'money') };
  return setTable<BudgetRow, Together>({
    label: 'Budgets',
    caption: `${timed ? 'Hours count whoever worked them. ' : ''}${hasMoney ? `Money is the job cost without labour, in ${sheet.settings.currency}. ` : ''}The total takes in only subsystems that have such a budget.`,
    set: 'budgets',
    columns: [
      { head: 'Subsystem', names: true, cell: ({ subsystem }) => subsystem.name },
      ...(timed
        ? columnsOf({ sheet, open, head: 'Hours', kind: 'hours', used: ({ worked }) => worked, written: hours, inWords: time })
        : []),
      ...(hasMoney
        ? columnsOf({ sheet, open, head: 'Money', kind: 'money', used: ({ spent }) => spent, written: amount, inWords: amount })
        : []),
    ],
    groups: rows<BudgetRow, Together>(budgets.filter((row) => row.hours !== null || row.money !== null)),
    foot: [{ words: 'Total', sum: together }],
  });
}

interface Kind {
  readonly sheet: Sheet;
  readonly open: OpenBook;
  readonly head: string;
  readonly kind: 'hours' | 'money';
  /** What was used, whether or not there is a budget of it. */
  used(row: BudgetRow): number;
  written(n: number): string;
  inWords(n: number): string;
}

/** Four columns for one kind of budget: used, of how much, its share, what is left. */
function columnsOf({ sheet, open, head, kind, used, written, inWords }: Kind): readonly Column<BudgetRow, Together>[] {
  const of = (line: BudgetLine | null): Piece => line && written(line.budget);
  const share = (line: BudgetLine | null): Piece =>
    line && html`${shareBar(line.used, line.budget)} ${sheet.figures.share(line.used, line.budget)}`;
  const left = (line: BudgetLine | null): Piece => {
    if (line === null) return 'no budget';
    const words = leftWords(line, inWords);
    return line.passed ? html`<span class="attention">${words}</span>` : words;
  };
  return [
    {
      head,
      set: `num used ${kind}`,
      cell: (row) => linked(written(used(row)), open(`subsystem-${row.subsystem.id}`)),
      sum: (lines) => lines[kind] && written(lines[kind].used),
    },
    { head: 'of', set: 'num', cell: (row) => of(row[kind]), sum: (lines) => of(lines[kind]) },
    { head: 'Share', set: 'nowrap', cell: (row) => share(row[kind]), sum: (lines) => share(lines[kind]) },
    { head: 'Left', set: 'left', cell: (row) => left(row[kind]), sum: (lines) => left(lines[kind]) },
  ];
}

function leftWords({ passed, left }: BudgetLine, written: (n: number) => string): string {
  if (passed) return `passed by ${written(-left)}`;
  return left === 0 ? 'used up' : `${written(left)} left`;
}
