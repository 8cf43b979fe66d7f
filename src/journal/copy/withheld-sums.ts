/** The sums of money that a copy withholds, in every way in which a page or a note would write them. */
import type { Minor } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { formatMoney, minorToDecimal } from '../values/money.ts';
import { UNITS } from '../values/units.ts';

/** A sum, and what it is of, for whoever is told. */
interface Sum {
  readonly minor: Minor;
  readonly what: string;
}

/** One way to write a sum: with the sign of its currency, or bare, as it may stand in prose. */
export interface WrittenSum {
  readonly text: string;
  readonly what: string;
  readonly bare: boolean;
}

/** Each sum of a record once, nought aside. */
export function* sumsOf(record: JournalRecord): Generator<WrittenSum> {
  const { settings } = record.journal;
  if (settings.currency === null) return;
  const told = new Set<Minor>([0]);
  for (const { minor, what } of eachSum(record)) {
    if (told.has(minor)) continue;
    told.add(minor);
    yield { text: formatMoney(minor, settings), what, bare: false };
    for (const text of bareForms(minor, settings)) yield { text, what, bare: true };
  }
}

function* eachSum({ journal, ledger }: JournalRecord): Generator<Sum> {
  for (const { gross, net, session, what } of ledger.entries)
    for (const minor of [gross, net]) yield { minor, what: `${session}: ${what}` };
  for (const { gross, session } of ledger.bills) yield { minor: gross, what: `${session}: a bill` };
  for (const { amount, session } of ledger.received) yield { minor: amount, what: `${session}: received` };
  for (const { value, session } of ledger.valuations) yield { minor: value, what: `${session}: valued` };
  for (const { id, parts, opens, handedOver } of journal.sessions) {
    for (const { quoted } of parts) if (quoted !== null) yield { minor: quoted, what: `${id}: quoted` };
    for (const { price } of opens) if (price !== null) yield { minor: price, what: `${id}: a price` };
    for (const { price } of handedOver) if (price !== null) yield { minor: price, what: `${id}: handed over` };
  }
}

/** Whole numbers under a thousand stand on every page, so a currency without decimals has no bare form of those. */
const FEWEST_DIGITS = 4;

/** `1234.50`, `1234,50`, and with the thousands as the locale has them. */
function bareForms(minor: Minor, settings: Parameters<typeof formatMoney>[1]): ReadonlySet<string> {
  const digits = settings.currencyDigits;
  const plain = minorToDecimal(Math.abs(minor), digits);
  if (digits === 0 && plain.length < FEWEST_DIGITS) return new Set();
  const grouped = /\d.*\d/u.exec(formatMoney(Math.abs(minor), settings))?.[0] ?? plain;
  return new Set([plain, plain.replace('.', ','), grouped.replace(/\s/gu, ' ')]);
}

/** A unit follows a number at once, or after the other end of a range. */
const MEASURED = /^(?: ?(?:\.\.|[–-]|to) ?[\d.]+)?[ \u00a0]?(%|["″′]|[°µμ]?\p{L}+)/u;

/** A quantity or a range of them, and nothing else. */
const A_QUANTITY = /^\d[\d.,/ ]*(?:(?:\.\.|[–-])[\d.,/ ]+)?(?:\p{L}\S*|["%″′])$/u;

/**
 * Which of some sums stand bare in texts, as numbers of their own.
 *
 * @returns with each whether it surely is money: what has a unit behind it is left out, but for `in`, which is a word as well
 */
export function bareIn(texts: Iterable<string>, sums: ReadonlySet<string>): ReadonlyMap<string, 'sum' | 'number'> {
  const found = new Map<string, 'sum' | 'number'>();
  for (const text of texts) {
    if (A_QUANTITY.test(text)) continue;
    for (const { 0: number, index } of text.matchAll(/(?<![\p{L}\p{N}]|\d[.,])\d+(?:[.,’ ]\d+)*/gu)) {
      for (const form of endings(number)) {
        if (!sums.has(form) || found.get(form) === 'sum') continue;
        const unit = MEASURED.exec(text.slice(index + number.length))?.[1];
        if (unit === 'in') found.set(form, 'number');
        else if (unit === undefined || !(UNITS.has(unit) || /^\P{L}$/u.test(unit))) found.set(form, 'sum');
      }
    }
  }
  return found;
}

/** A number with blanks in it may be one with its thousands apart, or several. */
function endings(number: string): readonly string[] {
  const words = number.split(' ');
  return words.flatMap((_, from) => words.slice(from).map((__, to) => words.slice(from, from + to + 1).join(' ')));
}
