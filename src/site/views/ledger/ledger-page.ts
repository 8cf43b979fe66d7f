/** What the ledger draws and lists besides its books: the weeks, the spending, what each position took. */
import { type PositionTotals, positionTotals } from '../../../journal/ledger/of-position.ts';
import { budgetedSpend, hoursByWeek, type MonthSpend, type Week } from '../../../journal/ledger/over-time.ts';
import type { SubsystemId } from '../../../journal/model.ts';
import { yearOf } from '../../../journal/values/date.ts';
import type { SiteRecord } from '../../record.ts';
import { CHART_WIDTHS } from '../charts/plotted.ts';
import type { RecordSheet } from '../page/sheet.ts';
import type { SetTable } from '../tables/table.ts';
import { ledgerYears, type Measure } from './account.ts';
import { spendLine, subsystemBars, weekBars } from './ledger-charts.ts';
import { spendTable, weekTable } from './time-tables.ts';

/** The weeks of each year, for the pages of years. */
export function weeksByYear(record: SiteRecord): ReadonlyMap<string, readonly Week[]> {
  return Map.groupBy(hoursByWeek(record, null), ({ monday }) => yearOf(monday));
}

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
export function weeksDrawn(sheet: RecordSheet, weeks: readonly Week[]): WeeksDrawn | null {
  const worked = weeks.filter(({ sum }) => sum.minutes > 0);
  if (worked.length === 0) return null;
  return { draw: (width) => weekBars(sheet.record, weeks, width), table: weekTable(sheet, worked) };
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
  const groups = Map.groupBy(positionTotals(record), ({ position }) => position.subsystem);
  return new Map([...record.journal.subsystems.keys()].flatMap((id) => (groups.has(id) ? [[id, groups.get(id) ?? []]] : [])));
}
