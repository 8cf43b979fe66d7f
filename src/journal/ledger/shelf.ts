/** The stock of one consumable, kept movement by movement. */
import Fraction from 'fraction.js';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Consumable, IsoDate, Minor, Place, Quantity, Session, Settings, StockTake } from '../model.ts';
import type { StockMovement } from '../record.ts';
import { stockAmount } from '../values/packs.ts';
import { formatQuantity } from '../values/quantity.ts';
import { averageCosting } from './average.ts';
import type { Costing } from './costing.ts';
import { fifoCosting } from './fifo.ts';
import { minus, NO_WORTH, partOf, plus, type Worth } from './worth.ts';

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
  /**
   * What of the shelf's worth the refund did not bring back; negative when it brought more.
   *
   * @param purchase the id of the line that it gives back, where that is known
   */
  returned(amount: Quantity, refund: Worth, why: string, purchase: string | null, occasion: Occasion): Worth;
  /**
   * What a stock-take cost: what the missing stock had, negative for what turned up. That undoes what was missed before,
   * the last first, at what it was missed for; what is beyond that nobody paid for, and it is worth what the note says,
   * else nothing.
   */
  counted(take: StockTake, occasion: Occasion): Worth;
}

/** Stock that was missed at a stock-take, and at what. */
interface Loss {
  readonly amount: Fraction;
  readonly worth: Worth;
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
  const losses: Loss[] = [];
  const missed = (amount: Fraction): Worth => {
    const worth = costing.take(amount);
    losses.push({ amount, worth });
    return worth;
  };
  const turnedUp = (amount: Fraction, value: Minor): Worth => {
    let [left, worth] = [amount, NO_WORTH];
    while (left.n !== 0n) {
      const loss = losses.pop();
      if (!loss) break;
      const back = left.lt(loss.amount) ? left : loss.amount;
      const at = partOf(loss.worth, back, loss.amount);
      costing.putBack(back, at);
      if (back.lt(loss.amount)) losses.push({ amount: loss.amount.sub(back), worth: minus(loss.worth, at) });
      [left, worth] = [left.sub(back), plus(worth, at)];
    }
    if (left.n === 0n) return worth;
    const found = { gross: value, tax: 0 };
    costing.add(left, found);
    return plus(worth, found);
  };
  return {
    movements,
    bought(asked, worth, occasion) {
      const amount = inUnit(asked, consumable);
      costing.add(amount, worth, occasion.entry ?? undefined);
      note('bought', amount, worth, when(occasion));
    },
    used(asked, occasion) {
      const amount = atMost(asked, 'used', occasion);
      const cost = costing.take(amount);
      note('used', amount.neg(), negated(cost), when(occasion));
      return cost;
    },
    returned(asked, refund, why, purchase, occasion) {
      const amount = atMost(asked, 'given back', occasion);
      const gone = costing.giveBack(amount, refund, purchase);
      note('returned', amount.neg(), negated(gone), when(occasion, why));
      return withinGross(minus(gone, refund));
    },
    counted({ amount: asked, because, value }, occasion) {
      if (asked.value.s < 0n) diagnostics.push(notAnAmount(asked.text, occasion.place));
      const there = asked.value.s < 0n ? costing.amount : inUnit(asked, consumable);
      const change = there.sub(costing.amount);
      const cost = change.s < 0n ? missed(change.neg()) : negated(turnedUp(change, value ?? 0));
      note('counted', change, negated(cost), when(occasion, because));
      return cost;
    },
  };
}

/** Tax that is no more than the money it is in. */
function withinGross({ gross, tax }: Worth): Worth {
  return { gross, tax: Math.min(Math.max(tax, Math.min(0, gross)), Math.max(0, gross)) };
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
function inUnit(amount: Quantity, consumable: Consumable): Fraction {
  const converted = stockAmount(amount, consumable);
  return converted.ok ? converted.value : amount.value;
}

function shortage(consumable: Consumable, asked: Quantity, wanted: Fraction, verb: string, there: Fraction, place: Place): Diagnostic {
  const { name, unit, opening } = consumable;
  const asWritten = (amount: Fraction): string => formatQuantity(amount.mul(asked.value).div(wanted), asked.unit);
  const inOwn = asked.unit === unit ? '' : ` (${formatQuantity(there, unit)})`;
  const has = there.n === 0n ? 'there is none' : `there is ${asWritten(there)}${inOwn}`;
  const start = opening === null ? wanted.sub(there) : inUnit(opening.amount, consumable).add(wanted.sub(there));
  const hint =
    `If it was there from the start, say so in consumables.yaml: \`opening: { amount: ${formatQuantity(start, unit)}, value: … }\`. ` +
    'Else note what was bought before this, or what is really there under `counted`.';
  return diagnostic('A805', place, `${name}: ${asked.text} ${verb}, but ${has} on the shelf: ${asWritten(wanted.sub(there))} short.`, {
    hint,
  });
}

function notAnAmount(written: string, place: Place): Diagnostic {
  return diagnostic('A308', place, `‘${written}’ is not an amount of stock: it must be more than nothing.`, {
    hint: 'Leave the entry out where nothing was used.',
  });
}
