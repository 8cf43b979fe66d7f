/** A statement as the file that keeps it: what it charged, by entry, and its figures. Pure. */
import { stringify } from 'yaml';
import { linesOf, type Statement, type StatementLine } from '../journal/ledger/statement.ts';
import type { Settings } from '../journal/model.ts';
import { toDecimal } from '../journal/values/decimal.ts';
import { minorToDecimal } from '../journal/values/money.ts';
import { headOf } from './statement-head.ts';

const HEAD = '# A statement as it was sent. It is not edited: what is told later goes onto the next one.\n';

type Fields = Record<string, unknown>;
type Amount = (minor: number) => string;

/** @param statement as it is sent, under its number */
export function frozenStatement(statement: Statement, settings: Settings): string {
  const { number, from, to, sum } = statement;
  const amount: Amount = (minor) => minorToDecimal(minor, settings.currencyDigits);
  const lines = linesOf(statement).map((line) => lineOf(line, amount));
  const kept = { number, from, to, charged: amount(sum.charged), lines, 'sent-with': sentWith(statement, settings, amount) };
  return HEAD + stringify(kept, { lineWidth: 0, defaultStringType: 'PLAIN' });
}

function lineOf(line: StatementLine, amount: Amount): Fields {
  const { entry, date, kind, what, title, subsystem, person, minutes, perHour, notCharged } = line;
  return {
    entry,
    date,
    kind,
    what,
    ...(title === null ? {} : { title }),
    subsystem,
    ...(person === null ? {} : { person }),
    ...(minutes === null ? {} : { minutes }),
    ...(perHour === null ? {} : { 'per-hour': amount(perHour) }),
    cost: amount(line.cost),
    net: amount(line.net),
    'mark-up': amount(line.markUp),
    ...rateOf(line),
    tax: amount(line.tax),
    charged: amount(line.charged),
    ...(notCharged === null ? {} : { 'not-charged': notCharged }),
  };
}

const rateOf = ({ rate }: Pick<StatementLine, 'rate'>): Fields => (rate === null ? {} : { rate: `${toDecimal(rate.mul(100), 6)}%` });

function sentWith(statement: Statement, settings: Settings, amount: Amount): Fields {
  const { registered, shows, inside, received, account } = statement;
  const { stated, open, since } = account;
  return {
    head: headOf(statement, settings),
    registered: registered ? 'yes' : 'no',
    shows,
    inside: inside.map(({ standing, sold, net, tax, gross, ...row }) => ({
      standing,
      ...rateOf(row),
      ...(sold ? { sold: 'yes' } : {}),
      net: amount(net),
      tax: amount(tax),
      gross: amount(gross),
    })),
    received: received.map(({ date, from, for: what, amount: sum }) => ({
      date,
      from,
      ...(what === null ? {} : { for: what }),
      amount: amount(sum),
    })),
    account: { stated: amount(stated), open: amount(open), received: amount(account.received), ...(since === null ? {} : { since }) },
  };
}
