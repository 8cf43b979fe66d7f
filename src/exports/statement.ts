import type { Statement, StatementSum } from '../journal/ledger/statement.ts';
import type { Settings } from '../journal/model.ts';
import { saysSomething } from './alike-lines.ts';
import { lineWords } from './statement-document.ts';
import { type Cell, day, money, share, type Table } from './table.ts';
import { soldWords, standingWords } from './tax-words.ts';

type Money = Omit<StatementSum, 'minutes'>;

/**
 * A client statement: `entry` rows, a `subtotal` for each kind, the `total`, the `tax` of each rate, what was sold apart, what was `not-charged` where the
 * statement shows that, what was `received` and what is `owed`. Subtotals and the total sum the entries; tax rows say what is inside them and are added to
 * nothing. What was paid and the mark-up are told only where the statement shows them.
 */
export function statementTable(statement: Statement, settings: Settings): Table {
  const figures: readonly (readonly [string, (sum: Money) => number])[] = [
    ...(statement.shows.includes('costs') ? [['cost', (sum: Money) => sum.cost] as const] : []),
    ...(statement.shows.includes('mark-up') ? [['mark-up', (sum: Money) => sum.markUp] as const] : []),
    ['net', (sum) => sum.net + sum.markUp],
    ['tax', (sum) => sum.tax],
    ['charged', (sum) => sum.charged],
  ];
  const amounts = (sum: Money): Cell[] => figures.map(([, of]) => money(of(sum), settings));
  const only = (charged: number): Cell[] => figures.map(([name]) => (name === 'charged' ? money(charged, settings) : null));
  const row = (kind: string, what: string, sum: StatementSum): Cell[] => [
    kind,
    null,
    null,
    what,
    null,
    null,
    sum.minutes,
    null,
    ...amounts(sum),
  ];
  const entries = statement.groups.flatMap(({ kind, lines, sum }): Cell[][] => [
    ...lines
      .filter((line) => saysSomething(line, statement.shows))
      .map((line): Cell[] => [
        line.late ? 'late entry' : 'entry',
        day(line.date),
        kind,
        lineWords(line),
        line.subsystem,
        line.person,
        line.minutes,
        line.rate && share(line.rate),
        ...amounts(line),
      ]),
    ['subtotal', null, kind, null, null, null, sum.minutes, null, ...amounts(sum)],
  ]);
  const taxes = statement.taxes.map(({ rate, sold, sum }): Cell[] => {
    const [, ...rest] = row('tax', (sold ? soldWords : standingWords)({ standing: 'rated', rate }), sum);
    return ['tax', ...rest];
  });
  const notCharged = statement.shows.includes('not-charged') ? statement.notCharged : [];
  const unpaid = notCharged.map((line): Cell[] => [
    'not-charged',
    day(line.date),
    line.kind,
    [lineWords(line), ...(line.notCharged === null ? [] : [`not charged: ${line.notCharged}`])].join('; '),
    line.subsystem,
    line.person,
    line.minutes,
    null,
    ...only(0),
  ]);
  const received = statement.received.map(({ date, from, for: what, amount, late }): Cell[] => {
    return [
      late ? 'late received' : 'received',
      day(date),
      null,
      what === null ? from : `${from}, ${what}`,
      null,
      null,
      null,
      null,
      ...only(amount),
    ];
  });
  const owed: Cell[] = [
    'owed',
    statement.account.since && day(statement.account.since),
    null,
    null,
    null,
    null,
    null,
    null,
    ...only(statement.account.owed),
  ];
  const columns = ['row', 'date', 'kind', 'what', 'subsystem', 'person', 'minutes', 'tax-rate', ...figures.map(([name]) => name)];
  const total = row('total', `${statement.from} to ${statement.to}`, statement.sum);
  return { name: 'statement', columns, rows: [...entries, total, ...taxes, ...unpaid, ...received, owed] };
}
