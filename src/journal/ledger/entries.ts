/** Ledger entries from the lines of a session. */
import Fraction from 'fraction.js';
import { entryId } from '../model/entry-id.ts';
import {
  type Bill,
  type BillLine,
  type Charge,
  type Foreign,
  GENERAL,
  type HandedOver,
  type Journal,
  type Minor,
  type Rounding,
  type Sale,
  type Session,
} from '../model.ts';
import type { Entry } from '../record.ts';
import { toDecimal } from '../values/decimal.ts';
import { shareOut } from '../values/money.ts';
import { asPart, type Taxed, type TaxPart, turned } from '../values/tax.ts';
import { lineId } from './refunds.ts';

/** What every entry of a session shares, and what only some have. */
const PLAIN = {
  person: null,
  minutes: null,
  perHour: null,
  standing: 'unsaid',
  taxRate: null,
  foreign: null,
  bill: null,
  consumable: null,
  notCharged: null,
  deductible: false,
} as const;

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
 * Money of a bill line parted over what it is laid to. The gross shares are by weight, largest remainder; the tax is
 * parted by those shares, so that no share has more tax than money.
 */
export function partedOver({ net, tax, gross }: Taxed, charges: BillLine['charges']): Taxed[] {
  if (charges.length === 1) return [{ net, tax, gross }];
  const shares = shareOut(
    gross,
    charges.map((one) => one.weight),
  );
  const taxes =
    tax === 0
      ? shares.map(() => 0)
      : shareOut(
          tax,
          shares.map((share) => new Fraction(Math.abs(share))),
        );
  return shares.map((share, i) => ({ net: share - (taxes[i] ?? 0), tax: taxes[i] ?? 0, gross: share }));
}

/** What the line has in another currency, parted like its money. */
function foreignOver(foreign: Foreign | null, charges: BillLine['charges']): Foreign[] {
  if (foreign === null) return [];
  const shares = shareOut(
    foreign.amount,
    charges.map((one) => one.weight),
  );
  return shares.map((amount) => ({ ...foreign, amount }));
}

/**
 * A bill's entries: one a line, or one a share of it; carriage and discount that stand to tax otherwise than their
 * line have one of their own, and so has what the bill is rounded by. A line for stock is paid but costs the job nothing until the stock is used; every other
 * line is both. The price of the vehicle itself is kept apart from the cost of the work, and counts as neither.
 */
export function billEntries(session: Session, bill: Bill, journal: Journal): Entry[] {
  const lines = bill.lines.flatMap((line, i) => {
    const id = lineId(bill, i);
    return line.parts.flatMap((part, at) => partEntries(session, bill, line, part, at === 0 ? id : `${id}-shared`, journal));
  });
  return [...lines, ...bill.rounding.map((rounding, i) => roundingEntry(session, bill, rounding, i, journal))];
}

/**
 * What a bill is rounded by is laid to what all its lines are laid to, where that is one thing, else to no subsystem; it
 * is not charged where none of them is, and goes with the price of the vehicle where all are that.
 */
function roundingEntry(session: Session, bill: Bill, rounding: Rounding, i: number, journal: Journal): Entry {
  const { standing, rate: taxRate, foreign } = rounding;
  const { lines } = bill;
  const ofVehicle = lines.every(({ as }) => as === 'vehicle');
  const kind = ofVehicle ? 'vehicle' : 'fee';
  const own = {
    id: `${bill.id}-rounding${i === 0 ? '' : `-${i + 1}`}`,
    kind,
    what: roundingWords(rounding),
    standing,
    taxRate,
    foreign,
    bill: bill.id,
    notCharged: lines.every(({ notCharged }) => notCharged !== null) ? (lines[0]?.notCharged ?? null) : null,
    deductible: journal.settings.deductible.includes(kind),
    paid: !ofVehicle,
    cost: !ofVehicle,
    place: bill.place,
  } as const;
  return entryOf(session, chargeOfAll(bill), rounding, own, journal);
}

/** `Rounding on the bill`, `Tax at 20 %, not reckoned line by line`: what stands beside the lines of a bill. */
export function roundingWords({ rate }: Pick<Rounding, 'rate'>): string {
  return rate === null ? 'Rounding on the bill' : `Tax at ${toDecimal(rate.mul(100), 4)} %, not reckoned line by line`;
}

function chargeOfAll({ lines }: Bill): Charge {
  const charges = lines.flatMap((line) => line.charges.map(({ charge }) => charge));
  const [first, ...others] = charges;
  const same = (of: 'part' | 'subsystem'): boolean => others.every((other) => other[of] === first?.[of]);
  return { part: first && same('part') ? first.part : null, subsystem: first && same('subsystem') ? first.subsystem : GENERAL };
}

function partEntries(session: Session, bill: Bill, line: BillLine, part: TaxPart, id: string, journal: Journal): Entry[] {
  const own = part === line.parts[0];
  const shares = partedOver(part, line.charges);
  const abroad = foreignOver(own ? line.foreign : null, line.charges);
  return line.charges.map(({ charge }, j) =>
    entryOf(
      session,
      charge,
      shares[j] as Taxed,
      {
        id: shares.length === 1 ? id : `${id}-${j + 1}`,
        kind: line.as,
        what: own ? lineWords(line, journal) : `${line.what}: ${sharedWords(bill)}`,
        standing: part.standing,
        taxRate: part.rate,
        foreign: abroad[j] ?? null,
        bill: bill.id,
        consumable: line.consumable,
        notCharged: line.notCharged,
        deductible: line.deductible === null ? journal.settings.deductible.includes(line.as) : line.deductible === 'yes',
        paid: line.as !== 'vehicle',
        cost: line.consumable === null && line.as !== 'vehicle',
        place: line.place,
      },
      journal,
    ),
  );
}

/** A refund is told by its sum; where there is none it says so, else it would read as bought once more. */
function lineWords({ what, refund }: BillLine, { settings }: Journal): string {
  return refund !== null && settings.currency === null ? `${what}, refund` : what;
}

function sharedWords({ carriage, discount }: Bill): string {
  if (discount === 0) return 'its carriage';
  return carriage === 0 ? 'its discount' : 'its carriage and discount';
}

/** Money that came in: negative in both views, so that it is set against what was paid and against the job. */
export function saleEntry(session: Session, sale: Sale, i: number, journal: Journal): Entry {
  const foreign = sale.foreign && { ...sale.foreign, amount: -sale.foreign.amount || 0 };
  const { standing, rate: taxRate } = asPart(sale, sale.taxed);
  const own = {
    id: entryId(session.id, 'sold', i),
    kind: 'sale',
    what: sale.to === null ? sale.what : `${sale.what}, to ${sale.to}`,
    standing,
    taxRate,
    foreign,
    paid: true,
    cost: true,
  } as const;
  return entryOf(session, sale.charge, turned({ net: sale.net, tax: sale.tax, gross: sale.gross }), { ...own, place: sale.place }, journal);
}

/** What the vehicle itself was sold for: money that came in, and in neither view, as the price it was bought for. */
export function handOverEntries(session: Session, { price, place }: HandedOver, i: number, journal: Journal): Entry[] {
  if (price === null) return [];
  const own = {
    id: entryId(session.id, 'handed-over', i),
    kind: 'vehicle',
    what: 'The vehicle, sold',
    paid: false,
    cost: false,
    place,
  } as const;
  return [entryOf(session, { part: null, subsystem: GENERAL }, turned(untaxed(price)), own, journal)];
}
