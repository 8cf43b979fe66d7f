import { GONE_HOW, type GoneHow, type IsoDate, type Origin, type Part, type PartId, type PositionId, type Whereabouts } from '../model.ts';
import type { Moment } from '../record.ts';
import { endOf } from '../replay/seat.ts';
import { isHere } from '../replay/words.ts';
import { conditionDays, conditionInWords, conditionsAt } from './condition.ts';
import { keepings, type StayedWith, stayedWith } from './keepers.ts';
import { observationsOf } from './observations.ts';
import { noteOfGoing } from './originals.ts';
import { opinionDays, originAt } from './origins.ts';
import { type At, dateOf, groupedBy, perRecord, type RegisterSource } from './source.ts';
import { staysOf, whereaboutsAt } from './stays.ts';
import { Stepwise } from './stepwise.ts';
import { stayedInWords } from './where-now.ts';

/** So many of a part that is off the vehicle, and where. */
export interface OffVehicle {
  readonly part: PartId;
  readonly position: PositionId;
  readonly count: number;
  /** Which of a numbered lot; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
  readonly where: Whereabouts;
  /** Since when the first of them are there, and since when the last. */
  readonly since: Moment;
  readonly last: Moment;
  readonly origin: Origin | null;
  /** Its condition classes, of a lot with how many are in each; null for none written down. */
  readonly condition: string | null;
  /** The days of which that is told. */
  readonly conditionOf: readonly Moment[];
  /** An original: it stays with the vehicle and goes with it (Charter of Turin, read in a 2012 draft). */
  readonly goesWithVehicle: boolean;
  /** With whom it stayed when the vehicle passed on; null while it is with the keeper. */
  readonly stayed: StayedWith | null;
  /** The same in words: `with Ruth, where it stayed behind`. */
  readonly stayedWords: string | null;
  /** For what is gone: what the note said. */
  readonly note: string | null;
}

/** Everything that is not fitted at the end of a day and was here by then, in catalogue order. */
export function offVehicleAt(record: RegisterSource, at: At): readonly OffVehicle[] {
  const date = dateOf(record, at);
  return rows(record).flatMap((row) => row.at(date));
}

/** By part, in catalogue order, made when asked for. */
const rows = perRecord((record) =>
  [...record.journal.parts.values()].map((part) => {
    const stays = staysOf(record, part.id).flatMap(({ from, to }) => (to ? [from.date, to.date] : [from.date]));
    const seen = observationsOf(record, part.id).map(({ date }) => date);
    const passed = keepings(record).map(({ from }) => from);
    return new Stepwise([...stays, ...seen, ...passed, ...opinionDays(record, part.id)], (date) => offRows(record, part, date));
  }),
);

function offRows(record: RegisterSource, part: Part, date: IsoDate): readonly OffVehicle[] {
  const origin = originAt(record, part.id, date);
  return whereaboutsAt(record, part.id, date)
    .filter(({ where }) => where.at !== 'fitted' && isHere(where))
    .map((lying) => ({ ...lying, stayed: stayedWith(record, part.id, lying.where, date) }))
    .map((lying) => ({ ...lying, conditions: conditionsAt(record, part.id, lying, date) }))
    .map(({ where, count, which, since, last, stayed, conditions }) => ({
      part: part.id,
      position: part.position,
      count,
      which,
      where,
      since,
      last,
      origin,
      condition: conditionInWords(conditions, count),
      conditionOf: conditionDays(record, part.id, conditions),
      goesWithVehicle: origin === 'original' && where.at !== 'gone' && where.at !== 'missing' && stayed === null,
      stayed,
      stayedWords: stayedInWords(record, part.id, where, date),
      note: where.at === 'gone' ? noteOfGoing(record, part.id, where.how, date) : null,
    }));
}

/** What lies in one store; null is what is in stores and has no place. */
export interface StoreRows {
  readonly store: string | null;
  readonly things: readonly OffVehicle[];
}

/** Stores in declared order, empty ones too, without what stayed with a former keeper; what is unplaced comes last, when there is any. */
export function storesAt(record: RegisterSource, at: At): readonly StoreRows[] {
  const lying = offVehicleAt(record, at).filter(({ where, stayed }) => endOf(where).at === 'stores' && stayed === null);
  const by = groupedBy(lying, ({ where }) => storeOf(where));
  const named = record.journal.stores.map((store) => ({ store, things: by.get(store) ?? [] }));
  const unplaced = by.get(null);
  return unplaced ? [...named, { store: null, things: unplaced }] : named;
}

function storeOf(where: Whereabouts): string | null {
  const end = endOf(where);
  return end.at === 'stores' ? end.store : null;
}

function firmOf(where: Whereabouts): string {
  const end = endOf(where);
  return end.at === 'out' ? end.firm : '';
}

/** What is with other firms, by firm in order of name. */
export function outAt(record: RegisterSource, at: At): readonly { readonly firm: string; readonly things: readonly OffVehicle[] }[] {
  const out = offVehicleAt(record, at).filter(({ where }) => endOf(where).at === 'out');
  const by = groupedBy(out, ({ where }) => firmOf(where));
  return [...by.keys()].sort().map((firm) => ({ firm, things: by.get(firm) ?? [] }));
}

/** What lies in bags, by their numbers, without what stayed with a former keeper. */
export function inBagsAt(record: RegisterSource, at: At): readonly { readonly bag: number; readonly things: readonly OffVehicle[] }[] {
  const bagged = offVehicleAt(record, at).flatMap((thing) => {
    const end = endOf(thing.where);
    return end.at === 'bag' && thing.stayed === null ? [{ bag: end.bag, thing }] : [];
  });
  const by = groupedBy(bagged, ({ bag }) => bag);
  return [...by.keys()].sort((a, b) => a - b).map((bag) => ({ bag, things: (by.get(bag) ?? []).map(({ thing }) => thing) }));
}

/** What has gone for good, in the order of the words. */
export function goneAt(record: RegisterSource, at: At): readonly { readonly how: GoneHow; readonly things: readonly OffVehicle[] }[] {
  const gone = offVehicleAt(record, at).filter(({ where }) => where.at === 'gone');
  return GONE_HOW.map((how) => ({ how, things: gone.filter(({ where }) => where.at === 'gone' && where.how === how) })).filter(
    ({ things }) => things.length > 0,
  );
}

/** What was missing as found and has not turned up. */
export function missingAt(record: RegisterSource, at: At): readonly OffVehicle[] {
  return offVehicleAt(record, at).filter(({ where }) => where.at === 'missing');
}

/** The originals that are not on the vehicle: on a shelf, in a bag, out, gone or missing. */
export function originalsOffAt(record: RegisterSource, at: At): readonly OffVehicle[] {
  return offVehicleAt(record, at).filter(({ origin }) => origin === 'original');
}

/** What must go with the vehicle when it is handed over. */
export function goesWithVehicleAt(record: RegisterSource, at: At): readonly OffVehicle[] {
  return offVehicleAt(record, at).filter(({ goesWithVehicle }) => goesWithVehicle);
}
