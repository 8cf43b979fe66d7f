/**
 * A bill from its texts: tax parted from every amount, discount and carriage shared out over the lines,
 * and the total on the paper compared with what the lines make.
 */
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Bill, BillLine, BillWay, Foreign, IsoDate, Minor, Place, Rounding, SessionId } from '../model.ts';
import { sumExact } from '../values/decimal.ts';
import type { AtRate, Money } from '../values/money.ts';
import { type TaxPart, UNSAID } from '../values/tax.ts';
import { type AtHand, amountOf, disagreement, explaining, mostRounding } from './bill-difference.ts';
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
  const figures = figuresOf(read);
  const atHand: AtHand = { source, read, figures, settings };
  checkRounding(atHand, diagnostics);
  const way = agreeing(atHand, diagnostics);
  const made = reckonBill(figures, way ?? USUAL_WAY);
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
    rounding: minor(read.rounding),
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

/** A822 when what is called rounding is more than that. */
function checkRounding(bill: AtHand, diagnostics: Diagnostic[]): void {
  const { rounding } = bill.figures;
  if (Math.abs(rounding) <= mostRounding(bill)) return;
  const field = rounding < 0 ? 'discount' : 'carriage';
  const message = `A bill is rounded by ${amountOf(bill, mostRounding(bill))} at most, not by ${amountOf(bill, rounding)}.`;
  const hint = `Write what it is on the paper: a line, or \`${field}\`.`;
  diagnostics.push(diagnostic('A822', bill.source.placeOf('rounding'), message, { hint }));
}

/** How the seller reckoned the tax, going by the total; A806 when no way that tax offices allow makes it. */
function agreeing(bill: AtHand, diagnostics: Diagnostic[]): BillWay | null {
  const { read, figures, source } = bill;
  if (read.total === null) return null;
  const total = minorIn(read.atRate)(read.total);
  const way = BILL_WAYS.find((each) => reckonBill(figures, each).total === total);
  if (way) return way;
  diagnostics.push(diagnostic('A806', source.placeOf('total'), disagreement(bill, total), { hint: explaining(bill, total) }));
  return null;
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
  const rounding = made.rounding.map((part, i): Rounding => {
    const amount = reckoned.rounding[i]?.gross ?? 0;
    return { ...part, foreign: atRate === null ? foreignOf(part, read) : { ...atRate, amount } };
  });
  const { from, paper } = source;
  return { ...head, from, paper, lines, discount, carriage, rounding, gross, place: source.placeOf('') };
}

/** Of the rounding on the paper, where a bill has amounts of several currencies. */
const foreignOf = ({ standing }: TaxPart, { rounding }: ReadBill): Foreign | null => (standing === 'unsaid' ? rounding.foreign : null);

/** Weights that add up to 1. */
function normalised(charges: BillLine['charges']): BillLine['charges'] {
  const sum = sumExact(charges.map((one) => one.weight));
  return charges.map(({ charge, weight }) => ({ charge, weight: weight.div(sum) }));
}
