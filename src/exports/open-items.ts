import type { JournalRecord } from '../journal/record.ts';
import { itemsAt } from '../journal/registers/open-items.ts';
import { type At, dateOf } from '../journal/registers/source.ts';
import { asCopyHas } from './as-copy-has.ts';
import { tableToCsv } from './csv.ts';

const HEADER = [
  'as at',
  'item',
  'kind',
  'what',
  'subsystem',
  'part',
  'due before',
  'from',
  'promised',
  'opened',
  'deferred',
  'closed',
  'how',
  'days open',
];

/** Open items as they stood at the end of a day, closed ones too, as CSV, in the order they were opened. */
export function openItemsCsv(record: JournalRecord, at: At = null): string {
  const date = dateOf(record, at);
  const rows = itemsAt(record, at).map((item) => [
    date,
    item.id,
    item.kind,
    item.what,
    item.on?.subsystem ?? '',
    item.on?.part ?? '',
    item.due ?? '',
    item.from ?? '',
    item.promised ?? '',
    item.opened.date,
    item.deferred.map((deferral) => `${deferral.date} to ${deferral.to}: ${deferral.because}`).join('; '),
    item.closed?.date ?? '',
    item.closed?.how ?? '',
    item.days,
  ]);
  return tableToCsv(asCopyHas({ name: 'open-items', columns: HEADER, rows }, record));
}
