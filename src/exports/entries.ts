import { entriesAt, type LedgerSource } from '../journal/ledger/sums.ts';
import type { IsoDate } from '../journal/model.ts';
import type { Entry } from '../journal/record.ts';
import { type Cell, day, foreignCells, money, share, type Table, type Total } from './table.ts';

const COLUMNS = [
  'entry',
  'date',
  'session',
  'subsystem',
  'position',
  'part',
  'person',
  'kind',
  'what',
  'minutes',
  'net',
  'tax',
  'gross',
  'tax-rate',
  'tax-standing',
  'foreign-currency',
  'foreign-amount',
  'exchange-rate',
  'bill',
  'consumable',
  'paid',
  'cost',
  'not-charged',
  'deductible',
  'file',
  'line',
];

const TOTALS: readonly Total[] = [
  { words: 'Paid', of: ['net', 'tax', 'gross'], where: ['paid', 'yes'] },
  { words: 'Job cost', of: ['minutes', 'net', 'tax', 'gross'], where: ['cost', 'yes'] },
];

/** Every ledger entry up to a date: a line each, from which every figure of the ledger can be summed again. */
export function entriesTable(books: LedgerSource, at: IsoDate | null): Table {
  return { name: 'entries', columns: COLUMNS, rows: entriesAt(books, at).map((entry) => rowOf(entry, books)), totals: TOTALS };
}

function rowOf(entry: Entry, { journal: { settings } }: LedgerSource): Cell[] {
  const { net, tax, gross, foreign, place } = entry;
  return [
    entry.id,
    day(entry.date),
    entry.session,
    entry.subsystem,
    entry.position,
    entry.part,
    entry.person,
    entry.kind,
    entry.what,
    entry.minutes,
    money(net, settings),
    money(tax, settings),
    money(gross, settings),
    entry.taxRate === null ? null : share(entry.taxRate),
    entry.standing,
    ...foreignCells(foreign),
    entry.bill,
    entry.consumable,
    entry.paid ? 'yes' : 'no',
    entry.cost ? 'yes' : 'no',
    entry.notCharged,
    entry.deductible ? 'yes' : 'no',
    place.file,
    place.line,
  ];
}
