/** Refunds held against the purchases they give back. */
import Fraction from 'fraction.js';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import type { Bill, BillLine, Journal, Minor, Place, Session, SessionId } from '../model.ts';
import { roundHalfAway } from '../values/decimal.ts';
import { formatMoney } from '../values/money.ts';
import { stockAmount } from '../values/packs.ts';
import { shareOut } from '../values/share-out.ts';
import { sumTaxed, type TaxPart, turned } from '../values/tax.ts';

/** What was bought in one line, or stood on the shelf at the start, and what of it has not been given back. */
interface Purchase {
  readonly id: string;
  readonly session: Session | null;
  readonly place: Place | null;
  readonly line: Pick<BillLine, 'what' | 'consumable' | 'charges' | 'parts' | 'taxed' | 'foreign'>;
  /** Of stock, in the unit of its consumable. */
  amount: Fraction | null;
  paid: Minor;
  paidAbroad: Minor | null;
}

export interface Settled {
  /** The bills of every session, each refund with the purchase it gives back and the tax of that. */
  readonly bills: ReadonlyMap<SessionId, readonly Bill[]>;
  readonly diagnostics: readonly Diagnostic[];
}

/** The id of a line of a bill: that of its first entry. */
export function lineId(bill: Bill, i: number): string {
  return bill.lines.length === 1 ? bill.id : `${bill.id}-${i + 1}`;
}

/**
 * Finds what each refund gives back: of the note it names by `refund-of`, else of all, the newest that was bought of the
 * same consumable or under the same words. What says nothing of its tax gives back the tax that was paid.
 *
 * @returns A409 and A812 where `refund-of` leads to nothing of the kind, A811 where more comes back than was paid
 */
export function settleRefunds(journal: Journal): Settled {
  const diagnostics: Diagnostic[] = [];
  const purchases = openingStock(journal);
  const bills = new Map<SessionId, readonly Bill[]>();
  for (const session of journal.sessions) {
    const settled = session.bills.map((bill) => {
      const lines = bill.lines.map((line, i) => {
        if (line.refund !== null) return settle(line, purchases, journal, diagnostics);
        purchases.push(purchaseOf(lineId(bill, i), session, line, journal));
        return line;
      });
      return { ...bill, lines };
    });
    bills.set(session.id, settled);
  }
  return { bills, diagnostics };
}

function openingStock({ consumables }: Journal): Purchase[] {
  return [...consumables.values()].flatMap((consumable): Purchase[] => {
    const { id, name: what, opening } = consumable;
    if (opening === null) return [];
    const gross = opening.value;
    const parts: TaxPart[] = [{ net: gross, tax: 0, gross, rate: null, standing: 'unsaid' }];
    const line = { what, consumable: id, charges: [], parts, taxed: { rate: null, on: 'unsaid' }, foreign: null } as const;
    const amount = stockAmount(opening.amount, consumable);
    return [
      { id: `${id}#opening`, session: null, place: null, line, amount: amount.ok ? amount.value : null, paid: gross, paidAbroad: null },
    ];
  });
}

function purchaseOf(id: string, session: Session, line: BillLine, journal: Journal): Purchase {
  return {
    id,
    session,
    place: line.place,
    line,
    amount: stockOf(line, journal),
    paid: line.gross,
    paidAbroad: line.foreign?.amount ?? null,
  };
}

function stockOf({ consumable, amount }: Pick<BillLine, 'consumable' | 'amount'>, { consumables }: Journal): Fraction | null {
  const kept = consumables.get(consumable ?? '');
  if (kept === undefined || amount === null) return null;
  const converted = stockAmount(amount, kept);
  return converted.ok ? converted.value : null;
}

function settle(line: BillLine, purchases: readonly Purchase[], journal: Journal, diagnostics: Diagnostic[]): BillLine {
  const found = candidates(line, purchases, journal, diagnostics);
  const newest = givenBack(line, found, journal);
  const given = isTooMuch(line, newest) ? (ofWhichSoMuch(line, found, journal) ?? newest) : newest;
  const [first] = given;
  if (!first) return line;
  if (isTooMuch(line, given)) diagnostics.push(tooMuch(line, given, journal));
  take(line, given, journal);
  return { ...line, ...(line.taxed.on === 'unsaid' ? withTaxOf(line, first) : {}), purchase: first.id };
}

/** Purchases of the same thing, the newest first; only those of the note that is named, where one is. */
function candidates(line: BillLine, purchases: readonly Purchase[], journal: Journal, diagnostics: Diagnostic[]): Purchase[] {
  const same = purchases.filter((each) => isSame(each.line, line)).toReversed();
  const { refundOf: name } = line;
  if (name === null) return same;
  const named = journal.sessions.filter(({ id, date }) => id === name || date === name);
  if (named.length === 0) {
    const hint = didYouMean(
      name,
      journal.sessions.map(({ id }) => id),
    );
    diagnostics.push(diagnostic('A409', line.place, `There is no session \`${name}\`.`, { hint }));
    return same;
  }
  const there = purchases.filter(({ session }) => session !== null && named.includes(session));
  const of = same.filter((each) => there.includes(each));
  if (of.length === 0) diagnostics.push(noSuchPurchase(line, name, there));
  return of;
}

function isSame(bought: Purchase['line'], back: BillLine): boolean {
  if (back.consumable !== null || bought.consumable !== null) return back.consumable === bought.consumable;
  return plain(bought.what) === plain(back.what);
}

const plain = (words: string): string => words.trim().toLowerCase();

function noSuchPurchase({ what, place }: BillLine, name: string, there: readonly Purchase[]): Diagnostic {
  const bought = there.map(({ line }) => `‘${line.what}’`).join(', ');
  const hint = bought === '' ? 'Name the note that tells of the purchase, by its id or its date.' : `It bought ${bought}.`;
  return diagnostic('A812', place, `${name} tells of no purchase of ‘${what}’.`, { hint });
}

/** The purchases that a refund reaches back over: one, or of stock as many as hold what goes back. */
function givenBack(line: BillLine, found: readonly Purchase[], journal: Journal): Purchase[] {
  const open = found.filter(({ paid, amount }) => paid > 0 || (amount !== null && amount.n !== 0n));
  const list = open.length === 0 ? found : open;
  const wanted = stockOf(line, journal);
  if (wanted === null) return list.slice(0, 1);
  let left = wanted;
  return list.filter(({ amount }) => {
    if (left.s <= 0n || left.n === 0n) return false;
    left = left.sub(amount ?? 0);
    return true;
  });
}

/** Of a note that is named, and bought the same more than once: the newest of which so much was paid, where there is one. */
function ofWhichSoMuch(line: BillLine, found: readonly Purchase[], journal: Journal): Purchase[] | null {
  if (line.refundOf === null) return null;
  const wanted = stockOf(line, journal);
  const one = found.find((each) => !isTooMuch(line, [each]) && (wanted === null || (each.amount?.gte(wanted) ?? false)));
  return one === undefined ? null : [one];
}

function isTooMuch(line: BillLine, given: readonly Purchase[]): boolean {
  const [first] = given;
  // Rates of exchange move: what came back is held against what was paid in the currency of the bill.
  if (given.length === 1 && line.foreign && first?.line.foreign?.currency === line.foreign.currency) {
    return -line.foreign.amount > (first.paidAbroad ?? 0);
  }
  return -line.gross > paidFor(given);
}

function paidFor(given: readonly Purchase[]): Minor {
  return given.reduce((all, { paid }) => all + paid, 0);
}

function tooMuch(line: BillLine, given: readonly Purchase[], { settings }: Journal): Diagnostic {
  const [first] = given;
  const message = `${formatMoney(-line.gross, settings)} came back, and of the purchase ${formatMoney(paidFor(given), settings)} is left that was paid.`;
  const related = first?.place ? [{ place: first.place, message: 'The purchase is here.' }] : [];
  const hint = 'Name the purchase by `refund-of: SESSION` where it is another; what is beyond a refund is a sale.';
  return diagnostic('A811', line.place, message, { hint, related });
}

/** Takes what came back off the purchases, the newest first. */
function take(line: BillLine, given: readonly Purchase[], journal: Journal): void {
  let money = -line.gross;
  let amount = stockOf(line, journal);
  for (const purchase of given) {
    const part = Math.min(money, purchase.paid);
    purchase.paid -= part;
    money -= part;
    if (line.foreign && purchase.paidAbroad !== null) purchase.paidAbroad = Math.max(0, purchase.paidAbroad + line.foreign.amount);
    if (amount === null || purchase.amount === null) continue;
    const taken = amount.lt(purchase.amount) ? amount : purchase.amount;
    purchase.amount = purchase.amount.sub(taken);
    amount = amount.sub(taken);
  }
}

/** The money of a refund, with the tax that was in it when it was paid. */
function withTaxOf({ gross }: BillLine, { line: { parts, taxed } }: Purchase): Pick<BillLine, 'net' | 'tax' | 'gross' | 'taxed' | 'parts'> {
  const weights = parts.map((part) => new Fraction(Math.max(0, part.gross)));
  if (gross >= 0 || weights.every((weight) => weight.n === 0n)) {
    return { net: gross, tax: 0, gross, taxed, parts: parts.slice(0, 1).map((part) => ({ ...part, net: gross, tax: 0, gross })) };
  }
  const shares = shareOut(-gross, weights);
  const back = parts.map((part, i): TaxPart => {
    const share = shares[i] ?? 0;
    const tax = part.gross === 0 ? 0 : roundHalfAway(new Fraction(part.tax).mul(share, part.gross));
    return turned({ ...part, net: share - tax, tax, gross: share });
  });
  return { ...sumTaxed(back), taxed, parts: back };
}
