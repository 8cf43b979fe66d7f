/** A table as a copy has it: without the columns of what it leaves out, which would be blank, or nought, in every row. */
import type { LeaveOut } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { Table, Total } from './table.ts';

/** Columns by the kind of matter that they are of; who worked stands with the hours, and the paper of a bill says its sums. */
const OF: Readonly<Partial<Record<LeaveOut, readonly string[]>>> = {
  money: [
    ...['net', 'tax', 'gross', 'tax-rate', 'tax-standing', 'tax-way', 'foreign-currency', 'foreign-amount', 'exchange-rate', 'paper'],
    ...['bill', 'bill-gross', 'paid', 'cost', 'not-charged', 'deductible', 'refund', 'value-used', 'value-left', 'price'],
  ],
  hours: ['minutes', 'hours', 'person'],
  people: ['person', 'from'],
  papers: ['paper'],
};

/** Whether a record tells of a kind of matter: a journal without a currency tells of no money. */
export function tells({ journal, copy }: Pick<JournalRecord, 'journal' | 'copy'>, kind: LeaveOut): boolean {
  return !copy.leavesOut.includes(kind) && (kind !== 'money' || journal.settings.currency !== null);
}

/** The table as it is, or without columns, and without the sums of them. */
export function asCopyHas(table: Table, record: Pick<JournalRecord, 'journal' | 'copy'>): Table {
  const left = new Set(Object.entries(OF).flatMap(([kind, columns]) => (tells(record, kind as LeaveOut) ? [] : columns)));
  const kept = [...table.columns.keys()].filter((at) => !left.has(table.columns[at] ?? ''));
  if (kept.length === table.columns.length) return table;
  const only = <T>(list: readonly T[]): T[] => kept.map((at) => list[at] as T);
  const totals = (table.totals ?? []).flatMap((total): Total[] => {
    const of = total.of.filter((column) => !left.has(column));
    return of.length === 0 || left.has(total.where?.[0] ?? '') ? [] : [{ ...total, of }];
  });
  return { name: table.name, columns: only(table.columns), rows: table.rows.map(only), totals };
}
