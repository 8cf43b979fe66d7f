import { roundingWords } from '../journal/ledger/entries.ts';
import type { LedgerSource } from '../journal/ledger/sums.ts';
import type { Bill, IsoDate } from '../journal/model.ts';
import { type Cell, day, foreignCells, money, share, type Table, type Total } from './table.ts';
import { wayWords } from './tax-words.ts';

const COLUMNS = [
  'bill',
  'date',
  'session',
  'from',
  'paper',
  'line',
  'what',
  'kind',
  'consumable',
  'amount',
  'net',
  'tax',
  'gross',
  'tax-rate',
  'foreign-currency',
  'foreign-amount',
  'exchange-rate',
  'refund',
  'bill-gross',
  'tax-way',
];

const TOTALS: readonly Total[] = [{ words: 'Together', of: ['net', 'tax', 'gross'] }];

/** Every line of every bill up to a date, with its share of discount and carriage; then what the bill is rounded by. */
export function billsTable({ journal, ledger }: LedgerSource, at: IsoDate | null): Table {
  const bills = ledger.bills.filter((bill) => at === null || bill.date <= at);
  return { name: 'bills', columns: COLUMNS, rows: bills.flatMap((bill) => rowsOf(bill, journal.settings)), totals: TOTALS };
}

function rowsOf(bill: Bill, settings: LedgerSource['journal']['settings']): Cell[][] {
  const lines = bill.lines.map((line, i): Cell[] => [
    bill.id,
    day(bill.date),
    bill.session,
    bill.from,
    bill.paper,
    i + 1,
    line.what,
    line.as,
    line.consumable,
    line.amount?.text ?? null,
    money(line.net, settings),
    money(line.tax, settings),
    money(line.gross, settings),
    line.taxed.rate === null ? null : share(line.taxed.rate),
    ...foreignCells(line.foreign),
    line.refund,
    money(bill.gross, settings),
    bill.way && wayWords(bill.way),
  ]);
  const rounding = bill.rounding.map((part, i): Cell[] => [
    bill.id,
    day(bill.date),
    bill.session,
    bill.from,
    bill.paper,
    bill.lines.length + i + 1,
    roundingWords(part),
    'fee',
    null,
    null,
    money(part.net, settings),
    money(part.tax, settings),
    money(part.gross, settings),
    part.rate && share(part.rate),
    ...foreignCells(part.foreign),
    null,
    money(bill.gross, settings),
    bill.way && wayWords(bill.way),
  ]);
  return [...lines, ...rounding];
}
