import { toFinish } from '../../../journal/registers/to-finish.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { capital, leavesHoursOut, spelled } from '../page/words.ts';

/** What it has cost and what it will have, in words. */
export interface MoneyAhead {
  /** Job cost so far, labour included. */
  readonly soFar: string;
  /** With everything open that has a price or hours; null where nothing open has. */
  readonly willHave: string | null;
  /** How many open items are in no sum, in a sentence; '' where each has a figure. Hours that a copy leaves out may well be written down. */
  readonly unsaid: string;
}

/** Null in a copy or a journal without money, and where nothing has been spent. */
export function moneyAhead({ record, figures, copy }: RecordSheet): MoneyAhead | null {
  const timed = !leavesHoursOut(copy);
  const rows = toFinish(record, null);
  const sum = (of: (row: (typeof rows)[number]) => number): number => rows.reduce((all, row) => all + of(row), 0);
  const soFar = sum(({ spent, labour }) => spent + labour.cost);
  const willHave = sum((row) => row.willHaveCost);
  if (!figures.hasMoney || willHave === 0) return null;
  return {
    soFar: figures.money(soFar),
    willHave: willHave === soFar ? null : figures.money(willHave),
    unsaid: unsaidWords(
      sum(({ toPay, quoted, work }) => toPay.unsaid.length + quoted.unsaid.length + (timed ? work.unsaid.length : 0)),
      timed ? 'figure' : 'price',
    ),
  };
}

const unsaidWords = (n: number, lacks: string): string =>
  n === 0 ? '' : `${capital(spelled(n, 'open item'))} ${n === 1 ? 'has' : 'have'} no ${lacks} yet.`;
