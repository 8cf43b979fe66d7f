import type { Statement } from '../journal/ledger/statement.ts';
import type { Settings } from '../journal/model.ts';
import { type Cell, day, money, type Table } from './table.ts';
import { standingWords } from './tax-words.ts';

const COLUMNS = ['row', 'date', 'kind', 'what', 'subsystem', 'person', 'minutes', 'net', 'tax', 'gross', 'mark-up', 'charged'];

/**
 * A client statement: `entry` rows, a `subtotal` for each kind, the `tax` of each rate, and the `total`.
 * Subtotals and the total sum the entries; tax rows say what is inside them and are added to nothing.
 */
export function statementTable(statement: Statement, settings: Settings): Table {
  const amount = (minor: number): Cell => money(minor, settings);
  const entries = statement.groups.flatMap(({ kind, lines, sum, markUp, charged }): Cell[][] => [
    ...lines.map(({ entry, markUp: on, charged: asked }): Cell[] => [
      'entry',
      day(entry.date),
      kind,
      entry.what,
      entry.subsystem,
      entry.person,
      entry.minutes,
      amount(entry.net),
      amount(entry.tax),
      amount(entry.gross),
      amount(on),
      amount(asked),
    ]),
    [
      'subtotal',
      null,
      kind,
      null,
      null,
      null,
      sum.minutes,
      amount(sum.net),
      amount(sum.tax),
      amount(sum.gross),
      amount(markUp),
      amount(charged),
    ],
  ]);
  const taxes = statement.taxes.map(({ sum, ...row }): Cell[] => {
    return ['tax', null, null, standingWords(row), null, null, null, amount(sum.net), amount(sum.tax), amount(sum.gross), null, null];
  });
  const { cost, markUp, charged } = statement;
  const total: Cell[] = [
    'total',
    null,
    null,
    `${statement.from} to ${statement.to}`,
    null,
    null,
    cost.minutes,
    amount(cost.net),
    amount(cost.tax),
    amount(cost.gross),
    amount(markUp),
    amount(charged),
  ];
  return { name: 'statement', columns: COLUMNS, rows: [...entries, ...taxes, total] };
}
