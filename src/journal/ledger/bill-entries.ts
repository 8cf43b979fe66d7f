import type { Bill, BillLine, Journal, Session } from '../model.ts';
import type { Entry } from '../record.ts';
import { shareOut } from '../values/money.ts';
import { entryOf } from './entry.ts';

/**
 * What was paid for, a line an entry, or several where it is split. Consumables go on the shelf, so they are paid here and
 * become job cost as they are used; everything else is job cost at once.
 */
export function billEntries(session: Session, journal: Journal): Entry[] {
  return session.bills.flatMap((bill) => bill.lines.flatMap((line, i) => lineEntries(bill, line, i, session, journal)));
}

function lineEntries(bill: Bill, line: BillLine, i: number, session: Session, journal: Journal): Entry[] {
  const weights = line.charges.map((each) => each.weight);
  const gross = shareOut(line.gross, weights);
  const tax = shareOut(line.tax, weights);
  const several = line.charges.length > 1;
  return line.charges.map(({ charge }, j) => {
    const share = { gross: gross[j] ?? 0, tax: tax[j] ?? 0 };
    return entryOf(`${bill.id}-${i + 1}${several ? `-${j + 1}` : ''}`, session, charge, journal, {
      kind: line.as,
      what: line.what,
      ...share,
      net: share.gross - share.tax,
      taxRate: line.taxed.rate,
      foreign: several ? null : line.foreign,
      bill: bill.id,
      consumable: line.consumable,
      paid: true,
      cost: line.consumable === null,
      place: line.place,
    });
  });
}
