/** The figures behind drawings over time: hours by week, spending by month. */
import type { MonthSpend, Week } from '../../../journal/ledger/over-time.ts';
import { sumBy } from '../../../journal/ledger/sums.ts';
import { lastDayOf } from '../../../journal/values/date.ts';
import { ledgerAtAddress, sessionAddress } from '../../addresses.ts';
import { bookAddress } from '../books/entry-books.ts';
import { shownDates } from '../frame/shown-dates.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
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

/** What was spent each month, and together by its end; that opens the budgets of the day where it has a page. */
export function spendTable(sheet: RecordSheet, months: readonly MonthSpend[]): SetTable {
  const { figures } = sheet;
  const shown = new Set(shownDates(sheet.record).map(({ date }) => date));
  const budgetsAt = (month: string): string | null => {
    const end = lastDayOf(month);
    if (end >= sheet.record.day) return '#budgets';
    return shown.has(end) ? sheet.link(`${ledgerAtAddress(end)}#budgets`) : null;
  };
  return setTable<MonthSpend>({
    label: 'Spending against the money budgets, by month',
    set: 'spend',
    keepsRows: true,
    columns: [
      { head: 'Month', names: true, cell: ({ month }) => figures.month(month) },
      {
        head: 'Added',
        set: 'num',
        cell: ({ month, added }) => added !== 0 && linked(figures.amount(added), sheet.link(bookAddress(`month-${month}`))),
      },
      {
        head: 'Total',
        set: 'num',
        cell: ({ month, together }) => budgetsAt(month) !== null && linked(figures.amount(together), budgetsAt(month)),
      },
    ],
    groups: rows(months),
  });
}
