/**
 * A bill from its texts: tax parted from every amount, discount and carriage shared out over the lines,
 * and the total on the paper compared with what the lines make.
 */
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Bill, BillLine, BillWay, Foreign, IsoDate, Minor, Place, SessionId } from '../model.ts';
import { sumExact } from '../values/decimal.ts';
import { type AtRate, currencyDigits, formatMoney, type Money } from '../values/money.ts';
import { UNSAID } from '../values/tax.ts';
import { type BillSource, type LineSource, type MoneySettings, NOTHING, type ReadBill, readBill } from './bill-source.ts';
import { exchangeBill } from './exchange-bill.ts';
import { BILL_WAYS, type BillFigures, canShare, type Reckoned, reckonBill, USUAL_WAY } from './reckon-bill.ts';

/** Whose bill it is. */
export interface BillHead {
  readonly id: string;
  readonly session: SessionId;
  readonly date: IsoDate;
}

/**
 * Makes the bill, or says why not.
 *
 * A bill in another currency is reckoned up and compared with its total in that currency, and turned into the
 * journal's own as a whole; amounts of several currencies on one bill are turned over one by one.
 *
 * @returns `bill` is null when an amount cannot stand; a bill that does not add up (A806) is returned
 * as its lines have it
 */
export function billOf(source: BillSource, head: BillHead, settings: MoneySettings): { bill: Bill | null; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const read = readBill(source, settings, diagnostics);
  if (read === null || !stands(source, read, diagnostics)) return { bill: null, diagnostics };
  const way = agreeing(source, read, settings, diagnostics);
  const made = reckonBill(figuresOf(read), way ?? USUAL_WAY);
  return {
    bill: assemble(source, { ...head, way: made.lines.some(({ tax }) => tax !== 0) ? way : null }, read, made, settings),
    diagnostics,
  };
}

/** The figures in the currency that the bill is in. */
function figuresOf(read: ReadBill): BillFigures {
  const minor = minorIn(read.atRate);
  return {
    lines: read.lines.map((line) => ({ cost: minor(line.cost), tax: line.tax })),
    discount: minor(read.discount),
    carriage: minor(read.carriage),
    tax: read.tax,
  };
}

/** An amount in the currency of its bill, or in the journal's own where the bill has several. */
function minorIn(atRate: AtRate | null): (money: Money) => Minor {
  return atRate === null ? (money) => money.minor : (money) => money.foreign?.amount ?? money.minor;
}

/** Whether signs are as they must be, and everything to be shared has something to be shared over. */
function stands(source: BillSource, read: ReadBill, diagnostics: Diagnostic[]): boolean {
  const before = diagnostics.length;
  const report: Report = (code, place, message, hint) => {
    diagnostics.push(diagnostic(code, place, message, { hint }));
  };
  for (const [i, line] of source.lines.entries()) {
    checkLine(line, read.lines[i]?.cost.minor ?? 0, (field) => source.placeOf(field, i), report);
  }
  checkShared(source, read, report);
  return diagnostics.length === before;
}

type Report = (code: 'A807' | 'A808' | 'A308', place: Place, message: string, hint: string) => void;

function checkLine(line: LineSource, cost: Minor, placeOf: (field: string) => Place, report: Report): void {
  if (cost < 0 && line.refund === null) {
    report('A808', placeOf('cost'), 'The cost is negative.', 'Say why money came back: `refund: WHY`.');
  }
  if (cost > 0 && line.refund !== null) {
    report('A808', placeOf('cost'), 'A refund is money that came back; its cost is negative.', `Write -${line.cost}.`);
  }
  if (sumExact(line.charges.map((one) => one.weight)).n === 0n) {
    report('A807', placeOf('split'), 'The weights of the split add up to nothing.', 'Give one of them a weight.');
  }
  if (line.amount !== null && (line.amount.value.n === 0n || line.amount.value.s < 0n)) {
    report('A308', placeOf('amount'), 'The amount must be more than nothing.', 'What went back is told by `refund` and a negative cost.');
  }
}

function checkShared(source: BillSource, read: ReadBill, report: Report): void {
  for (const field of ['discount', 'carriage'] as const) {
    if (read[field].minor < 0) report('A808', source.placeOf(field), `The ${field} is negative.`, 'Write it without the minus.');
  }
  const figures = figuresOf(read);
  const shared = figures.discount === 0 ? 'carriage' : 'discount';
  if (!canShare(figures)) {
    report('A807', source.placeOf(shared), `There is no line of any value to share the ${shared} over.`, 'Make it a line of the bill.');
  } else if (
    figures.discount > 0 &&
    reckonBill({ ...figures, carriage: 0 }).lines.some((line, i) => line.gross < 0 && (figures.lines[i]?.cost ?? 0) > 0)
  ) {
    report('A808', source.placeOf('discount'), 'The discount is more than the lines come to.', 'Compare it with the paper.');
  }
}

/** How the seller reckoned the tax, going by the total; A806 when no way that tax offices allow makes it. */
function agreeing(source: BillSource, read: ReadBill, settings: MoneySettings, diagnostics: Diagnostic[]): BillWay | null {
  if (read.total === null) return null;
  const [figures, total] = [figuresOf(read), minorIn(read.atRate)(read.total)];
  const way = BILL_WAYS.find((each) => reckonBill(figures, each).total === total);
  if (way) return way;
  const made = reckonBill(figures);
  const message = disagreement(total, made, read.atRate, settings);
  diagnostics.push(diagnostic('A806', source.placeOf('total'), message, { hint: 'Compare each amount with the paper.' }));
  return null;
}

function disagreement(total: Minor, made: Reckoned, atRate: AtRate | null, settings: MoneySettings): string {
  const currency = atRate?.currency ?? settings.currency;
  const digits = currencyDigits(currency ?? '') ?? settings.currencyDigits;
  const say = (minor: Minor): string => formatMoney(minor, { locale: settings.locale, currency, currencyDigits: digits });
  const less = made.discount === 0 ? '' : ` less discount ${say(made.discount)}`;
  const more = made.carriage === 0 ? '' : ` and carriage ${say(made.carriage)}`;
  return `The total is ${say(total)}, but lines of ${say(made.linesBefore)}${less}${more} make ${say(made.total)}.`;
}

type Head = BillHead & Pick<Bill, 'way'>;

function assemble(source: BillSource, head: Head, read: ReadBill, reckoned: Reckoned, settings: MoneySettings): Bill {
  const { atRate } = read;
  const made = atRate === null ? reckoned : exchangeBill(reckoned, atRate, settings.currencyDigits);
  const lines = source.lines.map((line, i): BillLine => {
    const { net = 0, tax = 0, gross = 0, parts = [] } = made.lines[i] ?? {};
    const foreign = (cost: Money): Foreign | null =>
      atRate === null ? cost.foreign : { ...atRate, amount: reckoned.lines[i]?.gross ?? 0 };
    const { cost, tax: taxed } = read.lines[i] ?? { cost: NOTHING, tax: UNSAID };
    const { what, as, consumable, amount, refund, refundOf, notCharged, deductible } = line;
    const said = { refund, refundOf, notCharged, deductible };
    const charges = normalised(line.charges);
    const money = { net, tax, gross, taxed, parts, foreign: foreign(cost) };
    return { what, as, consumable, amount, charges, ...money, ...said, purchase: null, place: source.placeOf('', i) };
  });
  const { discount, carriage, total: gross } = made;
  return { ...head, from: source.from, paper: source.paper, lines, discount, carriage, gross, place: source.placeOf('') };
}

/** Weights that add up to 1. */
function normalised(charges: BillLine['charges']): BillLine['charges'] {
  const sum = sumExact(charges.map((one) => one.weight));
  return charges.map(({ charge, weight }) => ({ charge, weight: weight.div(sum) }));
}
