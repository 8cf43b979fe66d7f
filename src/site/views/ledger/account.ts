/**
 * An account as the ledger sets it: subsystem by month, a table a year, with totals both ways, and the years
 * of the whole. A long journal has a page for the months of each year; the ledger itself then shows the last
 * year, and a line for each.
 */
import { type MonthTable, subsystemByMonth } from '../../../journal/ledger/by-month.ts';
import { type Sum, sumOf, type View } from '../../../journal/ledger/sums.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { monthsFrom, yearOf } from '../../../journal/values/date.ts';
import { keptIn, once } from '../../../journal/values/once.ts';
import { type Address, ledgerYearAddress } from '../../addresses.ts';
import { bookAddress, sectionAddress } from '../books/entry-books.ts';
import { figuresOf } from '../page/figures.ts';
import { keepsAccount } from '../page/words.ts';

/** More years than this, and each has a page. */
const ONE_PAGE = 3;

export interface Cell {
  readonly sum: Sum;
  readonly to: Address;
}

/** The name of a row or column; `to` is the page it has of its own. */
export interface Heading {
  readonly name: string;
  readonly to: Address | null;
}

export interface AccountTable {
  /** `2025`, or `all years` */
  readonly of: string;
  /** What the rows are. */
  readonly head: 'Subsystem' | 'Year';
  readonly columns: readonly Heading[];
  readonly rows: readonly { readonly heading: Heading; readonly cells: readonly (Cell | null)[]; readonly total: Cell }[];
  readonly totals: readonly (Cell | null)[];
  readonly total: Cell;
}

/** What a table shows of each sum. */
export type Measure = 'minutes' | 'gross';

/** The years from the first entry to the last, oldest first. */
function accountYears({ ledger: { entries } }: JournalRecord): readonly string[] {
  const [first, last] = [entries[0], entries.at(-1)];
  return first && last ? [...new Set(monthsFrom(first.date, last.date).map(yearOf))] : [];
}

/** The years that have a page of their own, oldest first; none while the ledger holds all. */
export function ledgerYears(record: JournalRecord): readonly string[] {
  if (!keepsAccount(record)) return [];
  const years = accountYears(record);
  return years.length > ONE_PAGE ? years : [];
}

/** The tables of the ledger page: of several years, first the one that adds them up; then the months of every year, or of the last. */
export function accountTables(record: JournalRecord, view: View, measure: Measure): readonly AccountTable[] {
  const years = accountYears(record);
  const paged = ledgerYears(record).length > 0;
  const tables = (paged ? years.slice(-1) : years).map((year) => accountOfYear(record, view, measure, year));
  const withFigures = tables.filter(({ rows }) => rows.length > 0);
  if (years.length < 2) return withFigures;
  const together = accountOfYears(record, view, measure);
  return together.rows.length === 0 ? [] : [together, ...withFigures];
}

/** Subsystem by month of one year. */
export function accountOfYear(record: JournalRecord, view: View, measure: Measure, year: string): AccountTable {
  const figures = figuresOf(record.journal.settings);
  const table = tableOf(record, view);
  const months = table.months.filter((month) => yearOf(month) === year);
  const inYear = (slug: string): Address => sectionAddress(record, slug, `year-${year}`);
  const inMonth = (month: string) => (slug: string) =>
    slug === 'all' ? bookAddress(`month-${month}`) : sectionAddress(record, slug, month);
  const periods = months.map((month) => ({ name: figures.shortMonth(month), page: null, months: [month], to: inMonth(month) }));
  return setTable(year, table, periods, { name: year, page: null, months, to: inYear }, measure);
}

/** Every year in one table: a column each, or where each has a page, a row. */
function accountOfYears(record: JournalRecord, view: View, measure: Measure): AccountTable {
  const table = tableOf(record, view);
  const paged = ledgerYears(record).length > 0;
  const periods = [...Map.groupBy(table.months, yearOf)].map(([year, months]) => ({
    name: year,
    page: paged ? ledgerYearAddress(year) : null,
    months,
    to: (slug: string) => sectionAddress(record, slug, `year-${year}`),
  }));
  const whole = { name: 'Total', page: null, months: table.months, to: bookAddress };
  const straight = setTable('all years', table, periods, whole, measure);
  return paged ? turned(straight) : straight;
}

/** A subsystem, or all of them. */
interface Line {
  readonly slug: string;
  readonly name: string;
  readonly sums: ReadonlyMap<string, Sum>;
}

/** Some months, and where the entries of a book in them are listed. */
interface Period {
  readonly name: string;
  readonly page: Address | null;
  readonly months: readonly string[];
  to(slug: string): Address;
}

/** Nothing was booked there. What was and comes to nothing is a nought. */
function isBlank({ entries }: Sum, measure: Measure): boolean {
  return entries.every((entry) => (entry[measure] ?? 0) === 0);
}

function setTable(of: string, table: MonthTable, periods: readonly Period[], whole: Period, measure: Measure): AccountTable {
  const all: Line = { slug: 'all', name: 'Total', sums: table.totals };
  const lines = table.rows.map(({ subsystem, name, months }): Line => ({ slug: `subsystem-${subsystem}`, name, sums: months }));
  const cellOf = ({ slug, sums }: Line, { months, to }: Period): Cell => ({
    sum: sumOf(months.flatMap((month) => sums.get(month)?.entries ?? [])),
    to: to(slug),
  });
  const cellsOf = (line: Line): (Cell | null)[] =>
    periods.map((period) => cellOf(line, period)).map((cell) => (isBlank(cell.sum, measure) ? null : cell));
  const rows = lines.map((line) => ({ heading: { name: line.name, to: null }, cells: cellsOf(line), total: cellOf(line, whole) }));
  return {
    of,
    head: 'Subsystem',
    columns: periods.map(({ name, page }) => ({ name, to: page })),
    rows: rows.filter(({ cells }) => cells.some((cell) => cell !== null)),
    totals: cellsOf(all),
    total: cellOf(all, whole),
  };
}

/** The same figures with a row for each column: of many years, a sheet holds more down than across. */
function turned({ of, columns, rows, totals, total }: AccountTable): AccountTable {
  return {
    of,
    head: 'Year',
    columns: rows.map(({ heading }) => heading),
    rows: columns.flatMap((heading, n) => {
      const sum = totals[n];
      return sum ? [{ heading, cells: rows.map(({ cells }) => cells[n] ?? null), total: sum }] : [];
    }),
    totals: rows.map((row) => row.total),
    total,
  };
}

const tablesByView = once(
  (_: JournalRecord) => new Map<View, MonthTable>(),
  ({ ledger }) => ledger,
);

/** Subsystem by month of one view: every year's page reads it. */
function tableOf(record: JournalRecord, view: View): MonthTable {
  return keptIn(tablesByView(record), view, () => subsystemByMonth(record, view, null));
}
