import { toFinish } from '../../../journal/registers/to-finish.ts';
import type { RecordSheet } from '../page/sheet.ts';

/** What it has cost and what it will have, in words. */
export interface MoneyAhead {
  /** Job cost so far, labour included. */
  readonly soFar: string;
  /** With everything open that has a price or hours; null where nothing open has. */
  readonly willHave: string | null;
  /** Open items without a figure: they are in no sum. */
  readonly unsaid: number;
}

/** Null in a copy or a journal without money, and where nothing has been spent. */
export function moneyAhead({ record, figures }: RecordSheet): MoneyAhead | null {
  const rows = toFinish(record, null);
  const sum = (of: (row: (typeof rows)[number]) => number): number => rows.reduce((all, row) => all + of(row), 0);
  const soFar = sum(({ spent, labour }) => spent + labour.cost);
  const willHave = sum((row) => row.willHaveCost);
  if (!figures.hasMoney || willHave === 0) return null;
  return {
    soFar: figures.money(soFar),
    willHave: willHave === soFar ? null : figures.money(willHave),
    unsaid: sum(({ toPay, quoted, work }) => toPay.unsaid.length + quoted.unsaid.length + work.unsaid.length),
  };
}
