import type { IsoDate, PartId, Whereabouts } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import { conditionDays, conditionInWords, conditionsAt } from '../journal/registers/condition.ts';
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
  'condition as of',
  'stayed with',
  'last since',
  'which',
];

/**
 * Where everything is at the end of a day as CSV: a line for each part and place; counts of a part add up to its count. Of
 * several that came at different times `since` and `session` are of the first, `last since` of the last. `which` are the
 * numbers of a numbered lot. What stayed behind when the vehicle passed on is told as that, with whom, and where it lay then.
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
      stayedWith(record, part.id, where, date) === null ? where.at : 'stayed behind',
      placeOf(where),
      since.date,
      since.session ?? '',
      ...conditionOf(record, part.id, { where, count, which }, date),
      stayedWith(record, part.id, where, date)?.keeper ?? '',
      last.date,
      (which ?? []).join('; '),
    ]),
  );
  return csvOf(HEADER, rows);
}

/** The classes, and the days of which they are told. */
function conditionOf(record: JournalRecord, part: PartId, place: Parameters<typeof conditionsAt>[2], date: IsoDate): [string, string] {
  const conditions = conditionsAt(record, part, place, date);
  const days = new Set(conditionDays(record, part, conditions).map((day) => day.date));
  return [conditionInWords(conditions, place.count) ?? '', [...days].join('; ')];
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
