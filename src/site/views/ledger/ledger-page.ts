/** What the ledger draws and lists besides its books: the weeks, the spending, what each position took. */
import { type PositionTotals, positionTotals } from '../../../journal/ledger/of-position.ts';
import { budgetedSpend, hoursByWeek, type MonthSpend, type Week } from '../../../journal/ledger/over-time.ts';
import type { View } from '../../../journal/ledger/sums.ts';
import type { SubsystemId } from '../../../journal/model.ts';
import { yearOf } from '../../../journal/values/date.ts';
import { once } from '../../../journal/values/once.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { SiteRecord } from '../../record.ts';
import { CHART_WIDTHS } from '../charts/plotted.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import type { SetTable } from '../tables/table.ts';
import { type AccountTable, accountOfYear, ledgerYears, type Measure } from './account.ts';
import { spendLine, subsystemBars, weekBars } from './ledger-charts.ts';
import { spendTable, weekTable } from './time-tables.ts';

const weeksByYear = once(
  (record: SiteRecord): ReadonlyMap<string, readonly Week[]> => Map.groupBy(hoursByWeek(record, null), ({ monday }) => yearOf(monday)),
);

/** The books of a year that has a page of its own, and the years with pages before and after. */
export interface LedgerOfYear {
  readonly earlier: string | null;
  readonly later: string | null;
  /** Each has a row. */
  readonly accounts: readonly { readonly view: View; readonly measure: Measure; readonly table: AccountTable }[];
  readonly weeks: readonly Week[];
}

const ACCOUNTS = [
  { view: 'cost', measure: 'gross' },
  { view: 'cost', measure: 'minutes' },
  { view: 'paid', measure: 'gross' },
] as const;

const YEAR = shown('ledger of a year', ({ record }, year: string): LedgerOfYear => {
  const years = ledgerYears(record);
  const at = years.indexOf(year);
  const accounts = ACCOUNTS.map(({ view, measure }) => ({ view, measure, table: accountOfYear(record, view, measure, year) }));
  return {
    earlier: years[at - 1] ?? null,
    later: years[at + 1] ?? null,
    accounts: accounts.filter(({ table: { rows } }) => rows.length > 0),
    weeks: weeksByYear(record).get(year) ?? [],
  };
});

const POSITIONS = shown('cost of positions', (sheet, subsystem: SubsystemId) => costByPosition(sheet).get(subsystem) ?? []);

export const LEDGER_YEAR_QUESTIONS: readonly AnyQuestion[] = [YEAR, POSITIONS];

export const ledgerOfYear = (sheet: Sheet, year: string): LedgerOfYear => sheet.ask(YEAR, year);

/** Positions of a subsystem that took hours or money. */
export const costOfPositions = (sheet: Sheet, subsystem: SubsystemId): readonly PositionTotals[] => sheet.ask(POSITIONS, subsystem);

/** A drawing at a width in px. */
export type Draw = (width: number) => string | null;

export interface LedgerOverTime {
  /** By subsystem; null where there is nothing to draw. */
  readonly hours: Draw | null;
  readonly cost: Draw | null;
  /** What the money budgets were spent by, month by month; null where there is no such budget or nothing was spent. */
  readonly spend: { readonly draw: Draw; readonly table: SetTable; readonly budget: number; readonly last: MonthSpend } | null;
  readonly weeks: WeeksDrawn | null;
  /** The year whose weeks these are, and whose months stand behind the line, where other years have pages of their own. */
  readonly onlyYear: string | null;
}

export function ledgerOverTime(sheet: RecordSheet): LedgerOverTime {
  const { record } = sheet;
  const spend = budgetedSpend(record);
  const last = spend?.months.at(-1);
  const onlyYear = ledgerYears(record).at(-1) ?? null;
  const weeks = hoursByWeek(record, null).filter(({ monday }) => onlyYear === null || yearOf(monday) === onlyYear);
  const bars = (measure: Measure): Draw | null => drawable((width) => subsystemBars(record, measure, width));
  const spent =
    spend && last
      ? {
          ...spend,
          last,
          draw: (width: number) => spendLine(record, width),
          table: spendTable(
            sheet,
            spend.months.filter(({ month }) => onlyYear === null || yearOf(month) === onlyYear),
          ),
        }
      : null;
  return { hours: bars('minutes'), cost: bars('gross'), spend: spent, weeks: weeksDrawn(sheet, weeks), onlyYear };
}

const drawable = (draw: Draw): Draw | null => (draw(CHART_WIDTHS.page) === null ? null : draw);

export interface WeeksDrawn {
  readonly draw: Draw;
  /** Weeks with hours, with the sessions that make them up. */
  readonly table: SetTable;
}

/** Weeks that follow each other, drawn; null where none has hours. */
export function weeksDrawn(sheet: Sheet, weeks: readonly Week[]): WeeksDrawn | null {
  const worked = weeks.filter(({ sum }) => sum.minutes > 0);
  if (worked.length === 0) return null;
  return { draw: (width) => weekBars(sheet.settings, weeks, width), table: weekTable(sheet, worked) };
}

/** More positions than this, and each subsystem has a page of its own. */
const ONE_PAGE = 500;

/** Subsystems with a page of their positions; none while one page holds all. */
export function pagedByPosition(sheet: RecordSheet): ReadonlyMap<SubsystemId, readonly PositionTotals[]> {
  const groups = costByPosition(sheet);
  const all = [...groups.values()].reduce((sum, of) => sum + of.length, 0);
  return all > ONE_PAGE ? groups : new Map();
}

/** Positions that took hours or money, by subsystem in the order of the journal. */
export function costByPosition({ record }: RecordSheet): ReadonlyMap<SubsystemId, readonly PositionTotals[]> {
  return costBySubsystem(record);
}

const costBySubsystem = once((record: SiteRecord): ReadonlyMap<SubsystemId, readonly PositionTotals[]> => {
  const groups = Map.groupBy(positionTotals(record), ({ position }) => position.subsystem);
  return new Map([...record.journal.subsystems.keys()].flatMap((id) => (groups.has(id) ? [[id, groups.get(id) ?? []]] : [])));
});
