/** The price of the vehicle itself, what was bought before it came, and what may be deducted. */
import { expect, test } from 'vitest';
import { budgets } from '../../src/journal/ledger/budgets.ts';
import { ledgerAt } from '../../src/journal/ledger/ledger-at.ts';
import { reconcile } from '../../src/journal/ledger/reconcile.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { hours, JOURNAL, journal, journalWith } from './small-journal.ts';

const VAN = 'bought: [{ what: The van, as: vehicle, for: brakes, cost: 1850.00 }, { what: Trailer, as: carriage, cost: 90.00 }]';

test('the price of the vehicle is in no total of the work', () => {
  const { record, problems } = journal(['2030-09-14', VAN]);
  expect(problems).toEqual([]);
  const at = ledgerAt(record, record.day);
  expect(at.whole).toMatchObject({ paid: 9000, cost: 9000, costWithoutLabour: 9000 });
  expect(budgets(record.journal, at)[0]?.money?.used).toBe(0);
  expect(reconcile(at).holds).toBe(true);
  expect(statementOf(record, '2030-09-01', '2030-09-30').sum.charged).toBe(9000);
  expect(record.ledger.entries.find(({ kind }) => kind === 'vehicle')).toMatchObject({ gross: 185_000, paid: false, cost: false });
});

test('what was bought before the vehicle came is booked on its day; work before it came is an error', () => {
  const { record, problems } = journal(['2030-09-01', 'bought: [{ what: Trailer, as: carriage, cost: 90.00 }]']);
  expect(problems).toEqual([]);
  expect(record.ledger.entries.map(({ date, gross }) => [date, gross])).toEqual([['2030-09-01', 9000]]);
  expect(journal(['2030-09-01', hours('rh', '1h')]).problems[0]).toMatch(/^A802/);
});

test('what may be deducted is told by its kind, and by the line where that says otherwise', () => {
  const { record } = journalWith({ journal: `${JOURNAL}deductible: [tool]\n` }, [
    '2031-03-12',
    'bought: [{ what: Reamer, as: tool, cost: 5.00 }, { what: Toy, as: tool, cost: 6.00, deductible: no }, { what: Licence, as: fee, cost: 7.00, deductible: yes }]',
  ]);
  expect(record.ledger.entries.filter(({ deductible }) => deductible).map(({ what }) => what)).toEqual(['Reamer', 'Licence']);
});

test('a value is dated, of the vehicle or a part of it', () => {
  const { record, problems } = journal([
    '2031-03-12',
    'valued: [{ value: 14000.00, basis: agreed for insurance, by: a valuer }, { of: drum, value: 20.00, basis: the last sale }]',
  ]);
  expect(problems).toEqual([]);
  expect(record.ledger.valuations.map(({ date, of, value }) => [date, of, value])).toEqual([
    ['2031-03-12', null, 1_400_000],
    ['2031-03-12', 'drum', 2000],
  ]);
});
