/** Everything that a note can name, with what it is called and how it stands now. */
import type { NamedSort } from '../journal/mentions/written-name.ts';
import type { Consumable, Part, Session } from '../journal/model.ts';
import type { ItemHistory, JournalRecord } from '../journal/record.ts';
import { type BagRow, bagsAt, leftInWords } from '../journal/registers/bags.ts';
import { itemRowAt } from '../journal/registers/open-items.ts';
import { whereaboutsAt } from '../journal/registers/stays.ts';
import { type StoreRows, storesAt } from '../journal/registers/stores.ts';
import { whereNowInWords } from '../journal/registers/where-now.ts';
import { inARow, numbersInWords, originInWords } from '../journal/replay/words.ts';
import { formatQuantity } from '../journal/values/quantity.ts';

export interface Thing {
  readonly sort: NamedSort;
  /** Its name in the journal: an id, the number of a bag, the name of a store. */
  readonly id: string;
  /** What it is called. */
  readonly name: string;
  /** Where it is, or how it stands, on the record's day; '' where there is nothing to say. */
  readonly now: string;
  /** What else it may be found by: marks, subsystem, kind. */
  readonly more: string;
}

/** What a field takes that names a place or a thing: a bag by the word and its number. */
export function typedName({ sort, id }: Pick<Thing, 'sort' | 'id'>): string {
  return sort === 'bag' ? `bag ${id}` : id;
}

/** Parts first, in catalogue order; sessions last, the newest first. */
export function thingsOf(record: JournalRecord): Thing[] {
  const { journal, history, day } = record;
  return [
    ...[...journal.parts.values()].map((part) => ofPart(record, part)),
    ...bagsAt(record, null).map(ofBag),
    ...[...history.items.values()].map((item) => ofItem(record, item)),
    ...storesAt(record, null).flatMap((rows) => ofStore(rows) ?? []),
    ...[...journal.consumables.values()].map((one) => ofConsumable(record, one)),
    ...[...journal.subsystems.values()].map(({ id, name }) => plain('subsystem', id, name)),
    ...journal.milestones.map(({ id, name }) => plain('milestone', id, name, reachedWords(history.reached.get(id)?.date))),
    ...[...journal.people].map(([id, { name }]) => plain('person', id, name)),
    ...journal.sessions
      .filter(({ date }) => date <= day)
      .map(ofSession)
      .toReversed(),
  ];
}

const plain = (sort: NamedSort, id: string, name: string, now = '', more = ''): Thing => ({ sort, id, name, now, more });

const reachedWords = (date: string | undefined): string => (date === undefined ? 'not reached' : `reached ${date}`);

function ofPart(record: JournalRecord, part: Part): Thing {
  const { id, name, marks, subsystem, origin } = part;
  return plain(
    'part',
    id,
    name,
    whereWords(record, part),
    [marks, record.journal.subsystems.get(subsystem)?.name, originInWords(origin)].filter(Boolean).join(', '),
  );
}

/** Where a part is now, of a lot with how many: `3 of 5 in bag 14, 2 of 5 on the vehicle`. */
export function whereWords(record: JournalRecord, { id, count, position }: Part): string {
  const places = whereaboutsAt(record, id, record.day).map(({ where, count: some, which }) => {
    const at = where.at === 'fitted' && where.position === position ? onVehicle(where.within) : whereNowInWords(record, id, where);
    if (some === count) return at;
    return `${which === null ? `${some} of ${count}` : numbersInWords(which)} ${at}`;
  });
  return places.join(', ');
}

const onVehicle = (within: string | undefined): string => (within === undefined ? 'on the vehicle' : `on the vehicle, in ${within}`);

function ofBag(row: BagRow): Thing {
  const { bag, filling, filled, emptied, parts } = row;
  const holds = [...filling.holds, ...parts.map(({ part, count }) => `${count} ${part}`)];
  const now = emptied ? `empty since ${emptied.date}` : [`filled ${filled.date}`, ...leftInWords(row)].join(', ');
  return plain('bag', String(bag), inARow(holds), now, [filling.off, filling.goesBack].filter(Boolean).join(', '));
}

function ofItem(record: JournalRecord, item: ItemHistory): Thing {
  const { id, kind, what, due, closed, on } = itemRowAt(item, record.day);
  const open = due === null ? 'open' : `open, due before ${due}`;
  return plain('item', id, what, closed ? `closed ${closed.date}` : open, [kind, on?.part ?? on?.subsystem].filter(Boolean).join(', '));
}

function ofStore({ store, things }: StoreRows): Thing | null {
  if (store === null) return null;
  const now = things.length === 0 ? 'empty' : things.length === 1 ? '1 thing' : `${things.length} things`;
  return plain('store', store, store, now, '');
}

function ofConsumable({ ledger }: JournalRecord, { id, name, unit }: Consumable): Thing {
  const left = ledger.stock.get(id)?.movements.at(-1)?.left.amount;
  return plain('consumable', id, name, left === undefined ? 'none bought' : `${formatQuantity(left, unit)} left`);
}

function ofSession({ id, date, title }: Session): Thing {
  return plain('session', id, title, date);
}
