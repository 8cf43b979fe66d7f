/** The shelf of consumables: what came, what was used, what was counted, and what each use cost. */
import Fraction from 'fraction.js';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { BillLine, Charge, Consumable, ConsumableId, Journal, Place, Quantity, Session } from '../model.ts';
import { GENERAL } from '../model.ts';
import type { Entry, StockAccount, StockMovement } from '../record.ts';
import { convertTo, formatQuantity } from '../values/quantity.ts';
import { entryOf } from './entry.ts';
import { type Layers, layersFor } from './layers.ts';

interface Shelf {
  readonly consumable: Consumable;
  readonly layers: Layers;
  readonly movements: StockMovement[];
}

interface Booked {
  readonly entries: Entry[];
  readonly diagnostics: Diagnostic[];
}

type What = Pick<StockMovement, 'kind' | 'amount' | 'value' | 'entry' | 'because'>;

/** Books sessions in order: what a note bought is there for what the same note used. */
export function stockRoom(journal: Journal): { book(session: Session): Booked; accounts(): ReadonlyMap<ConsumableId, StockAccount> } {
  const shelves = new Map([...journal.consumables.values()].map((consumable) => [consumable.id, openShelf(consumable, journal)]));
  return {
    book: (session) => {
      const booked: Booked = { entries: [], diagnostics: [] };
      for (const bill of session.bills) {
        bill.lines.forEach((line, i) => {
          receive(line, `${bill.id}-${i + 1}`, session, shelves, booked);
        });
      }
      session.used.forEach((use, i) => {
        const id = `${session.id}#used-${i + 1}`;
        const shelf = shelves.get(use.consumable);
        if (shelf) issue(shelf, use.amount, use.on, use.place, { id, session, journal }, booked);
      });
      session.counted.forEach((count, i) => {
        const shelf = shelves.get(count.consumable);
        if (shelf) recount(shelf, count.amount, count.because, count.place, { id: `${session.id}#counted-${i + 1}`, session, journal }, booked);
      });
      return booked;
    },
    accounts: () => new Map([...shelves].map(([id, { consumable, movements }]) => [id, { consumable, movements }])),
  };
}

function openShelf(consumable: Consumable, journal: Journal): Shelf {
  const shelf: Shelf = { consumable, layers: layersFor(journal.settings.stock), movements: [] };
  if (consumable.opening) {
    const amount = inUnit(consumable.opening.amount, consumable);
    shelf.layers.put(amount, consumable.opening.value);
    move(shelf, journal.settings.arrived, null, { kind: 'opening', amount, value: consumable.opening.value, entry: null, because: null });
  }
  return shelf;
}

/** The amount in the consumable's unit; its dimension was checked when the note was compiled. */
function inUnit(quantity: Quantity, consumable: Consumable): Fraction {
  const read = convertTo(quantity, consumable.unit);
  return read.ok ? read.value : new Fraction(0);
}

function move(shelf: Shelf, date: string, session: string | null, what: What): void {
  shelf.movements.push({ consumable: shelf.consumable.id, date, session, ...what, left: shelf.layers.holding() });
}

function receive(line: BillLine, entry: string, session: Session, shelves: ReadonlyMap<string, Shelf>, booked: Booked): void {
  const shelf = line.consumable === null ? undefined : shelves.get(line.consumable);
  if (!shelf || !line.amount) return;
  const amount = inUnit(line.amount, shelf.consumable);
  if (line.refund !== null) {
    returned(shelf, line, amount.abs(), entry, session, booked);
    return;
  }
  shelf.layers.put(amount, line.gross);
  move(shelf, session.date, session.id, { kind: 'bought', amount, value: line.gross, entry, because: null });
}

/** Goods sent back leave the shelf at what it carries them at; what was paid back above or below that stays as their cost or gain. */
function returned(shelf: Shelf, line: BillLine, amount: Fraction, entry: string, session: Session, booked: Booked): void {
  if (!enough(shelf, amount, line.place, 'sent back', booked)) return;
  const before = shelf.layers.holding();
  const rest = before.amount.sub(amount);
  shelf.layers.take(before.amount);
  const value = before.value + line.gross;
  if (rest.n > 0n) shelf.layers.put(rest, value);
  move(shelf, session.date, session.id, { kind: 'returned', amount: amount.neg(), value: line.gross, entry, because: line.refund });
}

interface Booking {
  readonly id: string;
  readonly session: Session;
  readonly journal: Journal;
}

function issue(shelf: Shelf, quantity: Quantity, on: Charge, place: Place, at: Booking, booked: Booked): void {
  const amount = inUnit(quantity, shelf.consumable);
  if (!enough(shelf, amount, place, 'used', booked)) return;
  const value = shelf.layers.take(amount);
  booked.entries.push(stockEntry(shelf, value, `${quantity.text} of ${shelf.consumable.name}`, on, place, at));
  move(shelf, at.session.date, at.session.id, { kind: 'used', amount: amount.neg(), value: -value || 0, entry: at.id, because: null });
}

function enough(shelf: Shelf, amount: Fraction, place: Place, did: string, booked: Booked): boolean {
  const held = shelf.layers.holding().amount;
  if (held.gte(amount)) return true;
  const { unit, name } = shelf.consumable;
  const message = `${formatQuantity(amount, unit)} of ${name} is ${did}, and ${formatQuantity(held, unit)} is there: ${formatQuantity(amount.sub(held), unit)} short.`;
  const hint = 'Record what was bought before, or an opening stock; `counted` puts a wrong stock right.';
  booked.diagnostics.push(diagnostic('A805', place, message, { hint }));
  return false;
}

/** A count sets the quantity; a shortage is written off to general at cost, a surplus comes in at no cost. */
function recount(shelf: Shelf, quantity: Quantity, because: string, place: Place, at: Booking, booked: Booked): void {
  const counted = inUnit(quantity, shelf.consumable);
  const held = shelf.layers.holding().amount;
  const change = counted.sub(held);
  let value = 0;
  if (change.s < 0n) {
    value = -shelf.layers.take(held.sub(counted)) || 0;
    const what = `${shelf.consumable.name} written off: ${because}`;
    booked.entries.push(stockEntry(shelf, -value, what, { part: null, subsystem: GENERAL }, place, at));
  } else if (change.n > 0n) shelf.layers.put(change, 0);
  move(shelf, at.session.date, at.session.id, { kind: 'counted', amount: change, value, entry: at.id, because });
}

function stockEntry(shelf: Shelf, value: number, what: string, on: Charge, place: Place, at: Booking): Entry {
  return entryOf(at.id, at.session, on, at.journal, {
    kind: 'consumable',
    what,
    net: value,
    tax: 0,
    gross: value,
    consumable: shelf.consumable.id,
    paid: false,
    cost: true,
    place,
  });
}
