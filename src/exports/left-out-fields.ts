/**
 * Fields that a copy does not have, by the kind of matter that it leaves out. In a document they would be nought, empty or
 * the same in every entry, and read as if there had been none.
 */
import type { LeaveOut } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import { tells } from './as-copy-has.ts';

/** `name`, or `name of what it is in` where a field of that name means something else elsewhere. */
const FIELDS: Readonly<Record<LeaveOut, readonly string[]>> = {
  private: ['private'],
  // The present keeper's stand in the same fields.
  'former-private': [],
  money: [
    ...[
      'currency',
      'currencyDigits',
      'stock',
      'markUp',
      'deductible',
      'shows',
      'tax',
      'client',
      'workshop',
      'rates',
      'perHour',
      'budgetMoney',
    ],
    ...['price', 'quoted', 'net', 'gross', 'taxed', 'taxRate', 'standing', 'foreign', 'discount', 'carriage', 'rounding', 'way'],
    ...[
      'sold',
      'received',
      'valued',
      'paid',
      'cost',
      'bill',
      'statements',
      'value of opening',
      'value of counted',
      'paper of bills',
      'parts of lines',
    ],
  ],
  hours: ['hours', 'minutes', 'budgetMinutes', 'perHour', 'person', 'statements'],
  people: [
    'people',
    'client',
    'workshop',
    'by',
    'person',
    'perHour',
    'from of bills',
    'from of opens',
    'from of opening',
    'from of received',
    'to of sold',
  ],
  marks: ['marks'],
  stores: ['stores', 'store'],
  papers: ['papers', 'paper'],
  film: ['film', 'clipsBeside'],
};

/** Whether a record has a field; `within` is the field that it stands in, or the list. */
export function fieldsOf(record: Pick<JournalRecord, 'journal' | 'copy'>): (name: string, within: string) => boolean {
  const { leavesOut } = record.copy;
  // What a copy may say though it leaves out its kind is words of what is left out.
  const always = leavesOut.some((kind) => kind !== 'former-private') ? ['maySay'] : [];
  const left = new Set([...always, ...Object.entries(FIELDS).flatMap(([kind, names]) => (tells(record, kind as LeaveOut) ? [] : names))]);
  return (name, within) => !left.has(name) && !left.has(`${name} of ${within}`);
}
