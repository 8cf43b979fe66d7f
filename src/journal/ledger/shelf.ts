/** The stock of one consumable, kept movement by movement. */
import Fraction from 'fraction.js';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Consumable, IsoDate, Place, Quantity, Session, Settings } from '../model.ts';
import type { StockMovement } from '../record.ts';
import { convertTo, formatQuantity } from '../values/quantity.ts';
import { averageCosting } from './average.ts';
import type { Costing } from './costing.ts';
import { fifoCosting } from './fifo.ts';
import { minus, NO_WORTH, type Worth } from './worth.ts';

const NONE = new Fraction(0);

/** When, where from and by which entry a movement comes. */
export interface Occasion {
  readonly session: Session;
  readonly entry: string | null;
  readonly place: Place;
}

export interface Shelf {
  readonly movements: StockMovement[];
  bought(amount: Quantity, worth: Worth, occasion: Occasion): void;
  /** What the stock used cost. */
  used(amount: Quantity, occasion: Occasion): Worth;
  /** What of the shelf's worth the refund did not bring back; negative when it brought more. */
  returned(amount: Quantity, refund: Worth, why: string, occasion: Occasion): Worth;
  /** What the missing stock cost; nothing when there is as much as the books have, or more. */
  counted(amount: Quantity, because: string, occasion: Occasion): Worth;
}

/**
 * The shelf of a consumable with its opening stock. Shortages (A805) go to `diagnostics`.
 *
 * @param known false where some of its stock could not be read: what seems short may be there
 */
export function shelfOf(consumable: Consumable, { stock, arrived }: Settings, known: boolean, diagnostics: Diagnostic[]): Shelf {
  const costing: Costing = stock === 'fifo' ? fifoCosting() : averageCosting();
  const movements: StockMovement[] = [];
  const note = (kind: StockMovement['kind'], amount: Fraction, worth: Worth, on: When): void => {
    const left = { amount: costing.amount, value: costing.worth.gross };
    movements.push({ consumable: consumable.id, kind, amount, value: worth.gross, left, ...on });
  };
  const atMost = (asked: Quantity, verb: string, occasion: Occasion): Fraction => {
    const wanted = inUnit(asked, consumable);
    if (wanted.n === 0n || wanted.s < 0n) {
      diagnostics.push(notAnAmount(asked.text, occasion.place));
      return NONE;
    }
    if (wanted.lte(costing.amount)) return wanted;
    if (known) diagnostics.push(shortage(consumable, asked, wanted, verb, costing.amount, occasion.place));
    return costing.amount;
  };
  if (consumable.opening) {
    const worth = { gross: consumable.opening.value, tax: 0 };
    const amount = inUnit(consumable.opening.amount, consumable);
    costing.add(amount, worth);
    note('opening', amount, worth, { date: arrived, session: null, entry: null, because: null });
  }
  return {
    movements,
    bought(asked, worth, occasion) {
      const amount = inUnit(asked, consumable);
      costing.add(amount, worth);
      note('bought', amount, worth, when(occasion));
    },
    used(asked, occasion) {
      const amount = atMost(asked, 'used', occasion);
      const cost = costing.take(amount);
      note('used', amount.neg(), negated(cost), when(occasion));
      return cost;
    },
    returned(asked, refund, why, occasion) {
      const amount = atMost(asked, 'given back', occasion);
      const gone = costing.giveBack(amount, refund);
      note('returned', amount.neg(), negated(gone), when(occasion, why));
      return minus(gone, refund);
    },
    counted(asked, because, occasion) {
      if (asked.value.s < 0n) diagnostics.push(notAnAmount(asked.text, occasion.place));
      const there = asked.value.s < 0n ? costing.amount : inUnit(asked, consumable);
      const change = there.sub(costing.amount);
      const lost = change.s < 0n ? costing.take(change.neg()) : NO_WORTH;
      // Nobody paid for what turns up, so it is worth nothing and makes the rest no dearer.
      if (change.s > 0n && change.n !== 0n) costing.add(change, NO_WORTH);
      note('counted', change, negated(lost), when(occasion, because));
      return lost;
    },
  };
}

type When = Pick<StockMovement, 'date' | 'session' | 'entry' | 'because'>;

function when({ session, entry }: Occasion, because: string | null = null): When {
  const date: IsoDate = session.date;
  return { date, session: session.id, entry, because };
}

function negated(worth: Worth): Worth {
  return minus(NO_WORTH, worth);
}

/** An amount in the consumable's unit; that it converts has been checked where it was read. */
function inUnit(amount: Quantity, { unit }: Consumable): Fraction {
  const converted = convertTo(amount, unit);
  return converted.ok ? converted.value : amount.value;
}

function shortage({ name, unit }: Consumable, asked: Quantity, wanted: Fraction, verb: string, there: Fraction, place: Place): Diagnostic {
  const asWritten = (amount: Fraction): string => formatQuantity(amount.mul(asked.value).div(wanted), asked.unit);
  const inOwn = asked.unit === unit ? '' : ` (${formatQuantity(there, unit)})`;
  const has = there.n === 0n ? 'there is none' : `there is ${asWritten(there)}${inOwn}`;
  const hint = 'Note what was bought before this, or what is really there under `counted`.';
  return diagnostic('A805', place, `${name}: ${asked.text} ${verb}, but ${has} on the shelf: ${asWritten(wanted.sub(there))} short.`, {
    hint,
  });
}

function notAnAmount(written: string, place: Place): Diagnostic {
  return diagnostic('A308', place, `‘${written}’ is not an amount of stock: it must be more than nothing.`);
}
