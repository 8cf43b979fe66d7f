/** The figures behind drawings over time: hours by week, spending by month. */
import type { MonthSpend, Week } from '../../../journal/ledger/over-time.ts';
import { sumBy } from '../../../journal/ledger/sums.ts';
import { lastDayOf, yearOf } from '../../../journal/values/date.ts';
import { type Address, ledgerAtAddress, sessionAddress } from '../../addresses.ts';
import { bookAddress, sectionAddress } from '../books/entry-books.ts';
import { shownDates } from '../frame/shown-dates.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Weeks with the sessions that make up their hours. */
export function weekTable(sheet: Sheet, weeks: readonly Week[]): SetTable {
  const { figures } = sheet;
  return setTable<Week>({
    label: 'Hours by week',
    set: 'weeks',
    columns: [
      { head: 'Week from', names: true, set: 'date', cell: ({ monday }) => figures.shortDate(monday) },
      { head: 'Hours', set: 'num', cell: ({ sum }) => figures.hours(sum.minutes) },
      { head: 'Sessions that make it up', bare: true, cell: (week) => sessionsOf(sheet, week) },
    ],
    groups: rows(weeks),
  });
}

function sessionsOf(sheet: Sheet, { sum, monday }: Week): Markup {
  const { figures } = sheet;
  const sessions = [...sumBy(sum.entries, ({ session }) => session)].map(([session, { minutes, entries }]) => {
    const account = sheet.link(`${sessionAddress(session)}#account`);
    return html`<span class="nowrap">${figures.day(entries[0]?.date ?? monday)} ${linked(figures.time(minutes), account)}</span>`;
  });
  return joined(sessions, ', ');
}

/** What was spent in a month, or in the months of a year, and together by its end. */
interface Spell extends MonthSpend {
  readonly words: string;
  /** The book that has its entries. */
  readonly book: Address;
}

/**
 * What was spent each month, and together by its end; that opens the budgets of the day where it has a page.
 *
 * @param byYear a line for each year
 */
export function spendTable(sheet: Sheet, months: readonly MonthSpend[], byYear = false): SetTable {
  const { figures } = sheet;
  const shown = new Set(shownDates(sheet.record).map(({ date }) => date));
  const budgetsAt = ({ month }: Spell): string | null => {
    const end = lastDayOf(month);
    if (end >= sheet.record.day) return '#budgets';
    return shown.has(end) ? sheet.link(`${ledgerAtAddress(end)}#budgets`) : null;
  };
  return setTable<Spell>({
    label: `Spending against the money budgets, by ${byYear ? 'year' : 'month'}`,
    set: 'spend',
    keepsRows: true,
    columns: [
      { head: byYear ? 'Year' : 'Month', names: true, cell: ({ words }) => words },
      { head: 'Added', set: 'num', cell: ({ added, book }) => added !== 0 && linked(figures.amount(added), sheet.link(book)) },
      { head: 'Total', set: 'num', cell: (spell) => linked(figures.amount(spell.together), budgetsAt(spell)) },
    ],
    groups: rows(
      byYear
        ? yearly(sheet, months)
        : months.map((of) => ({ ...of, words: figures.month(of.month), book: bookAddress(`month-${of.month}`) })),
    ),
  });
}

function yearly({ record }: Sheet, months: readonly MonthSpend[]): Spell[] {
  return [...Map.groupBy(months, ({ month }) => yearOf(month))].flatMap(([year, of]) => {
    const last = of.at(-1);
    const added = of.reduce((sum, one) => sum + one.added, 0);
    return last ? [{ ...last, added, words: year, book: sectionAddress(record, 'all', `year-${year}`) }] : [];
  });
}
