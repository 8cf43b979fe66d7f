/** Ledger entries from the lines of a session. */
import Fraction from 'fraction.js';
import type { Bill, BillLine, Charge, Foreign, Journal, Minor, Sale, Session } from '../model.ts';
import type { Entry } from '../record.ts';
import { shareOut } from '../values/money.ts';
import type { Taxed } from '../values/tax.ts';

/** What every entry of a session shares, and what only some have. */
const PLAIN = { person: null, minutes: null, taxRate: null, foreign: null, bill: null, consumable: null } as const;

/** Where something is laid to: subsystem, part, and the position that part belongs to. */
export function laidTo(charge: Charge, journal: Journal): Pick<Entry, 'subsystem' | 'part' | 'position'> {
  const position = charge.part === null ? null : (journal.parts.get(charge.part)?.position ?? null);
  return { subsystem: charge.subsystem, part: charge.part, position };
}

/** Money of a line with no tax in it. */
export function untaxed(gross: Minor): Taxed {
  return { net: gross, tax: 0, gross };
}

type Own = Pick<Entry, 'id' | 'kind' | 'what' | 'paid' | 'cost' | 'place'> & Partial<Entry>;

/** An entry of a session. */
export function entryOf(session: Session, charge: Charge, money: Taxed, own: Own, journal: Journal): Entry {
  const { net, tax, gross } = money;
  return { date: session.date, session: session.id, ...laidTo(charge, journal), ...PLAIN, net, tax, gross, ...own };
}

/**
 * The money of a bill line parted over what it is laid to. The gross shares are by weight, largest
 * remainder; the tax is parted by those shares, so that no share has more tax than money.
 */
export function partedOver(line: BillLine): Taxed[] {
  if (line.charges.length === 1) return [{ net: line.net, tax: line.tax, gross: line.gross }];
  const shares = shareOut(
    line.gross,
    line.charges.map((one) => one.weight),
  );
  const taxes =
    line.tax === 0
      ? shares.map(() => 0)
      : shareOut(
          line.tax,
          shares.map((share) => new Fraction(Math.abs(share))),
        );
  return shares.map((gross, i) => ({ net: gross - (taxes[i] ?? 0), tax: taxes[i] ?? 0, gross }));
}

/** What the line has in another currency, parted like its money. */
function foreignOver({ foreign, charges }: BillLine): Foreign[] {
  if (foreign === null) return [];
  const shares = shareOut(
    foreign.amount,
    charges.map((one) => one.weight),
  );
  return shares.map((amount) => ({ ...foreign, amount }));
}

/**
 * A bill's entries: one a line, or one a share of it. A line for stock is paid but costs the job nothing
 * until the stock is used; every other line is both.
 */
export function billEntries(session: Session, bill: Bill, journal: Journal): Entry[] {
  return bill.lines.flatMap((line, i) => {
    const id = bill.lines.length === 1 ? bill.id : `${bill.id}-${i + 1}`;
    const shares = partedOver(line);
    const abroad = foreignOver(line);
    return line.charges.map(({ charge }, j) =>
      entryOf(
        session,
        charge,
        shares[j] as Taxed,
        {
          id: shares.length === 1 ? id : `${id}-${j + 1}`,
          kind: line.as,
          what: line.what,
          taxRate: line.taxed.rate,
          foreign: abroad[j] ?? null,
          bill: bill.id,
          consumable: line.consumable,
          paid: true,
          cost: line.consumable === null,
          place: line.place,
        },
        journal,
      ),
    );
  });
}

/** Money that came in: negative in both views, so that it is set against what was paid and against the job. */
export function saleEntry(session: Session, sale: Sale, i: number, journal: Journal): Entry {
  const money = { net: back(sale.net), tax: back(sale.tax), gross: back(sale.gross) };
  const own = { id: `${session.id}#sold-${i + 1}`, kind: 'sale', what: sale.what, paid: true, cost: true, place: sale.place } as const;
  return entryOf(session, sale.charge, money, own, journal);
}

function back(minor: Minor): Minor {
  return minor === 0 ? 0 : -minor;
}
