/** A bill whose total is not what it makes: how far it may be rounded, and the line that would explain the rest. */
import Fraction from 'fraction.js';
import type { Tax } from '../model.ts';
import { type Minor, roundHalfAway } from '../values/decimal.ts';
import { currencyDigits, formatMoney, minorToDecimal } from '../values/money.ts';
import { UNSAID } from '../values/tax.ts';
import type { BillSource, MoneySettings, ReadBill } from './bill-source.ts';
import { BILL_WAYS, type BillFigures, canShare, reckonBill } from './reckon-bill.ts';

/** In halves of a per cent: no country takes more. */
const MOST_TAX = 60;

/** A bill with what is said of it, and its figures in the currency that it is in. */
export interface AtHand {
  readonly source: BillSource;
  readonly read: ReadBill;
  readonly figures: BillFigures;
  readonly settings: MoneySettings;
}

const digitsOf = ({ read: { atRate }, settings }: AtHand): number => currencyDigits(atRate?.currency ?? '') ?? settings.currencyDigits;

/** What may be called rounding: one whole unit of the currency, or a hundredth of the lines, whichever is more. */
export function mostRounding(bill: AtHand): Minor {
  const lines = bill.figures.lines.reduce((sum, { cost }) => sum + Math.abs(cost), 0);
  return Math.max(10 ** digitsOf(bill), Math.floor(lines / 100));
}

/** An amount of the bill as a page writes it. */
export function amountOf(bill: AtHand, minor: Minor): string {
  const { settings, read } = bill;
  const currency = read.atRate?.currency ?? settings.currency;
  return formatMoney(minor, { locale: settings.locale, currency, currencyDigits: digitsOf(bill) });
}

/** What the total is, and what the rest makes, in the figures that stand on the paper. */
export function disagreement(bill: AtHand, total: Minor): string {
  const { figures } = bill;
  const say = (minor: Minor): string => amountOf(bill, minor);
  const onTop = [figures, ...figures.lines].every(({ tax }) => tax.on === 'top');
  const made = reckonBill(onTop ? withoutTax(figures) : figures);
  const less = made.discount === 0 ? '' : ` less discount ${say(made.discount)}`;
  const more = made.carriage === 0 ? '' : ` and carriage ${say(made.carriage)}`;
  const rounded = figures.rounding === 0 ? '' : `, rounded by ${say(figures.rounding)},`;
  const besides = less + more + rounded;
  const lines = besides === '' ? 'its lines' : `lines of ${say(made.linesBefore)}${besides}`;
  return `The total is ${say(total)}, but ${lines} make ${say(made.total)}${onTop ? `, with tax ${totalsOf(bill)}` : ''}.`;
}

/** As a paper has them whose tax comes at its foot. */
function withoutTax(figures: BillFigures): BillFigures {
  return { ...figures, lines: figures.lines.map((line) => ({ ...line, tax: UNSAID })), tax: UNSAID };
}

/** What a bill comes to by every way that there is to reckon its tax: `£224.89 or £224.90`. */
function totalsOf(bill: AtHand): string {
  const totals = new Set(BILL_WAYS.map((way) => reckonBill(bill.figures, way).total));
  return [...totals]
    .sort((a, b) => a - b)
    .map((total) => amountOf(bill, total))
    .join(' or ');
}

/** What to look at, and the line to write where the paper has one that the note has not. */
export function explaining(bill: AtHand, total: Minor): string {
  const { figures } = bill;
  const difference = total - reckonBill(figures).total;
  const rounding = figures.rounding + difference;
  const compare = 'Compare each amount with the paper.';
  if (rounding === 0) return `${compare} Without \`rounding\` it adds up.`;
  if (Math.abs(rounding) <= mostRounding(bill)) {
    return `${compare} Where it has a line for rounding, write it: \`rounding: ${written(bill, rounding)}\`.`;
  }
  const rate = taxThatMakes(bill, total);
  if (rate !== null) return `${compare} Where its tax comes on top of these, write it: \`tax: ${rate}% on top\`.`;
  const field = difference > 0 ? 'carriage' : 'discount';
  const amount = sharedThatMakes(figures, field, Math.abs(difference), total);
  const where = figures[field] === 0 ? `it has ${field}` : `its ${field} is more`;
  return amount === null ? compare : `${compare} Where ${where}, write it: \`${field}: ${written(bill, amount)}\`.`;
}

/** The rate, in halves of a per cent as taxes are, that makes the total where it comes on top of what is not said to be without it; null where none does. */
function taxThatMakes({ figures, read }: AtHand, total: Minor): string | null {
  const made = reckonBill(figures).total;
  if (read.tax.on === 'top' || made <= 0 || total <= made) return null;
  const halves = Math.round((total / made - 1) * 200);
  const tax: Tax = { rate: new Fraction(halves, 200), on: 'top' };
  const lines = figures.lines.map((line) => (line.tax === read.tax ? { ...line, tax } : line));
  const makes = BILL_WAYS.some((way) => reckonBill({ ...figures, lines, tax }, way).total === total);
  return halves > 0 && halves <= MOST_TAX && makes ? String(halves / 2) : null;
}

/** As a note writes it: with its currency where that is said at each amount. */
function written(bill: AtHand, minor: Minor): string {
  const { atRate } = bill.read;
  const abroad = atRate === null || bill.source.currency !== null ? '' : ` ${atRate.currency} at ${atRate.rate}`;
  return `${minorToDecimal(minor, digitsOf(bill))}${abroad}`;
}

/** The carriage or discount with which one of the ways makes the total; null where none does. */
function sharedThatMakes(figures: BillFigures, field: 'carriage' | 'discount', gross: Minor, total: Minor): Minor | null {
  const { rate, on } = figures.tax;
  const more = on === 'top' && rate !== null ? roundHalfAway(new Fraction(gross).div(rate.add(1))) : gross;
  const amount = figures[field] + more;
  const changed = { ...figures, [field]: amount };
  return canShare(changed) && BILL_WAYS.some((way) => reckonBill(changed, way).total === total) ? amount : null;
}
