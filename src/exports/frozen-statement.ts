/** A statement as the file that keeps it: what it charged, by entry, and its figures. Pure. */
import { stringify } from 'yaml';
import type { Statement, StatementLine } from '../journal/ledger/statement.ts';
import type { Settings } from '../journal/model.ts';
import { toDecimal } from '../journal/values/decimal.ts';
import { minorToDecimal } from '../journal/values/money.ts';

const HEAD = '# A statement as it was sent. It is not edited: what is told later goes onto the next one.\n';

/** @param number the next one */
export function frozenStatement({ from, to, groups, sum }: Statement, number: number, { currencyDigits }: Settings): string {
  const amount = (minor: number): string => minorToDecimal(minor, currencyDigits);
  const lines = groups.flatMap(({ lines: of }) => of.map((line) => lineOf(line, amount)));
  return HEAD + stringify({ number, from, to, charged: amount(sum.charged), lines }, { lineWidth: 0, defaultStringType: 'PLAIN' });
}

function lineOf(line: StatementLine, amount: (minor: number) => string): Record<string, string | number> {
  const { entry, date, kind, what, subsystem, person, minutes, perHour, rate } = line;
  return {
    entry,
    date,
    kind,
    what,
    subsystem,
    ...(person === null ? {} : { person }),
    ...(minutes === null ? {} : { minutes }),
    ...(perHour === null ? {} : { 'per-hour': amount(perHour) }),
    cost: amount(line.cost),
    net: amount(line.net),
    'mark-up': amount(line.markUp),
    ...(rate === null ? {} : { rate: `${toDecimal(rate.mul(100), 6)}%` }),
    tax: amount(line.tax),
    charged: amount(line.charged),
  };
}
