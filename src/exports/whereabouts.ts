import type { Whereabouts } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import { conditionInWords, conditionsAt } from '../journal/registers/condition.ts';
import { stayedWith } from '../journal/registers/keepers.ts';
import { originAt } from '../journal/registers/origins.ts';
import { type At, dateOf } from '../journal/registers/source.ts';
import { whereaboutsAt } from '../journal/registers/stays.ts';
import { csvOf } from './csv.ts';

const HEADER = [
  'as at',
  'part',
  'name',
  'subsystem',
  'belongs at',
  'origin',
  'count',
  'where',
  'place',
  'since',
  'session',
  'condition',
  'stayed with',
  'last since',
];

/**
 * Where everything is at the end of a day as CSV: a line for each part and place; counts of a part add up to its count. Of
 * several that came at different times `since` and `session` are of the first, `last since` of the last.
 */
export function whereaboutsCsv(record: JournalRecord, at: At = null): string {
  const date = dateOf(record, at);
  const rows = [...record.journal.parts.values()].flatMap((part) =>
    whereaboutsAt(record, part.id, date).map(({ where, count, which, since, last }) => [
      date,
      part.id,
      part.name,
      part.subsystem,
      part.position,
      originAt(record, part.id, date) ?? '',
      count,
      where.at,
      placeOf(where),
      since.date,
      since.session ?? '',
      conditionInWords(conditionsAt(record, part.id, { where, count, which }, date), count) ?? '',
      stayedWith(record, part.id, where, date)?.keeper ?? '',
      last.date,
    ]),
  );
  return csvOf(HEADER, rows);
}

/** The position, store, bag number, firm, the part that it is in, or how it went. */
function placeOf(where: Whereabouts): string | number {
  switch (where.at) {
    case 'fitted':
      return where.position;
    case 'stores':
      return where.store ?? '';
    case 'bag':
      return where.bag;
    case 'out':
      return where.firm;
    case 'in':
      return where.part;
    case 'gone':
      return where.how;
    default:
      return '';
  }
}
