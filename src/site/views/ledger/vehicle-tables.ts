/** The vehicle itself, and what a tax return may deduct, as tables of the ledger. */
import type { Entry, JournalRecord } from '../../../journal/record.ts';
import { sessionAddress } from '../../addresses.ts';
import { entryAddress } from '../books/entry-place.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Entries one a line, with their sum: the price of the vehicle itself, or what may be deducted. Null where there is none, or no money. */
export function entryList(sheet: Sheet, entries: readonly Entry[], label: string): SetTable | null {
  const { figures } = sheet;
  if (entries.length === 0 || !figures.hasMoney) return null;
  const total = entries.reduce((sum, { gross }) => sum + gross, 0);
  return setTable<Entry, number>({
    label,
    set: 'account totals listed',
    keepsRows: true,
    columns: [
      { head: 'Date', set: 'date', cell: ({ date }) => figures.shortDate(date) },
      { head: label, names: true, cell: (entry) => linked(entry.what, sheet.link(entryAddress(entry))) },
      { head: 'Tax', set: 'num', cell: ({ tax }) => figures.amount(tax) },
      { head: 'Gross', set: 'num', cell: ({ gross }) => figures.amount(gross), sum: (sum) => figures.amount(sum) },
    ],
    groups: rows<Entry, number>(entries),
    foot: [{ words: 'Total', sum: total }],
  });
}

export const ofTheVehicle = ({ ledger }: JournalRecord): Entry[] => ledger.entries.filter(({ kind }) => kind === 'vehicle');
/** Money that went out, and may be deducted. */
export const deductible = ({ ledger }: JournalRecord): Entry[] => ledger.entries.filter((entry) => entry.paid && entry.deductible);

/** What the vehicle and its parts were held to be worth, the last first; null where nobody said. */
export function worthTable(sheet: RecordSheet): SetTable | null {
  const { figures, record } = sheet;
  const { valuations } = record.ledger;
  if (valuations.length === 0) return null;
  return setTable<(typeof valuations)[number]>({
    label: 'What it was held to be worth',
    set: 'account totals listed',
    columns: [
      { head: 'Date', set: 'date', cell: ({ date, session }) => linked(figures.shortDate(date), sheet.link(sessionAddress(session))) },
      { head: 'Of', names: true, cell: ({ of }) => (of === null ? 'the vehicle' : (record.journal.parts.get(of)?.name ?? of)) },
      { head: 'On what basis', cell: ({ basis, by }) => (by === null ? basis : `${basis}, by ${by}`) },
      { head: 'Value', set: 'num', cell: ({ value }) => figures.amount(value) },
    ],
    groups: rows(valuations.toReversed()),
  });
}
