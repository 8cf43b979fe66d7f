/** Tables of a copy: no column that would be blank because the copy leaves out what it is of. */
import { describe, expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import { ledgerAt } from '../../../../src/journal/ledger/ledger-at.ts';
import { positionTotals } from '../../../../src/journal/ledger/of-position.ts';
import { reconcile } from '../../../../src/journal/ledger/reconcile.ts';
import type { LeaveOut } from '../../../../src/journal/model.ts';
import { itemsAt } from '../../../../src/journal/registers/open-items.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { daySetter } from '../../../../src/site/views/any-day/day-shown.ts';
import { bookTable, subsystemRows } from '../../../../src/site/views/books/book-table.ts';
import { sectionTable, sessionAccount } from '../../../../src/site/views/books/entry-table.ts';
import { hasPage } from '../../../../src/site/views/frame/contents.ts';
import { buyTable } from '../../../../src/site/views/items/buy-table.ts';
import { accountTables } from '../../../../src/site/views/ledger/account.ts';
import { reconcileTable } from '../../../../src/site/views/ledger/reconcile-table.ts';
import { type RecordSheet, sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { nothingBooked, whyNoAccount, whyNoBudget } from '../../../../src/site/views/page/words.ts';
import { costTable, costWords } from '../../../../src/site/views/position/cost-table.ts';
import { partTable } from '../../../../src/site/views/position/part-table.ts';
import { sessionMonths, sessionTable } from '../../../../src/site/views/session/session-table.ts';
import { JOURNAL, journalWith } from '../../../ledger/small-journal.ts';

const PARTS = '- { id: drum, name: Drum, origin: original, marks: C 4417 }\n';

function sheetWithout(...kinds: LeaveOut[]): RecordSheet {
  const { record, problems } = journalWith(
    { journal: `${JOURNAL}copies: { copy: { leave-out: [${kinds.join(', ')}] } }\n`, parts: PARTS },
    [
      '2030-12-01',
      'hours: [{ by: jm, on: drum, time: 2h }]\nbought: [{ what: A hose, for: drum, cost: 84.00 }]\nopens: [{ id: hose, kind: buy, what: The other hose, on: drum, price: 9.00 }]',
    ],
    ['2031-03-01', 'hours: [{ by: jm, on: drum, time: 1h }]\nbought: [{ what: A clip, for: drum, cost: 4.00 }]'],
  );
  expect(problems).toEqual([]);
  return sheetOf({ ...copyOf(record, 'copy'), pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' }, 'x.html');
}

/** Tables that have a column of hours where the copy has hours. */
function tablesOf(sheet: RecordSheet): readonly string[] {
  const { record } = sheet;
  const { entries } = record.ledger;
  const section = { id: 'one', title: 'One', entries } as unknown as Parameters<typeof sectionTable>[1];
  const at = ledgerAt(record, record.day);
  return [
    sessionTable(sheet, sessionMonths(sheet, record.journal.sessions)),
    costTable(sheet, positionTotals(record), 'Positions'),
    sectionTable(sheet, section, []),
    sessionAccount(sheet, entries, [], 'Entries'),
    bookTable(sheet, subsystemRows(sheet, at), 'Subsystem', () => '#', at.whole),
  ].map(({ markup }) => markup);
}

const hasHours = (markup: string): boolean => />Hours</.test(markup);

describe('a copy without hours', () => {
  test('has no column of hours in any list, nor the nought minutes of a month', () => {
    expect(tablesOf(sheetWithout()).map(hasHours)).toEqual([true, true, true, true, true]);
    const tables = tablesOf(sheetWithout('hours', 'people'));
    expect(tables.map(hasHours)).toEqual([false, false, false, false, false]);
    expect(tables.join(' ')).not.toContain('0 min');
    expect(tables.join(' ')).toContain('84.00');
  });

  test('adds up paid and job cost without a nought of labour', () => {
    const both = (sheet: RecordSheet) => {
      const at = ledgerAt(sheet.record, sheet.record.day);
      return reconcileTable(sheet, at, reconcile(at), () => '#', '#').markup;
    };
    expect(both(sheetWithout())).toContain('Labour at its rate');
    const copy = both(sheetWithout('hours', 'stores'));
    expect(copy).toContain('labour is on neither side');
    expect(copy).not.toMatch(/Labour/);
    expect(copy).toContain('Consumables on the shelf');
  });

  test('says of a budget, and of a day before anything was booked, what it can know', () => {
    const { copy } = sheetWithout('hours', 'marks');
    expect(whyNoBudget(copy)).toBe('No subsystem has a budget of money. This copy leaves hours out.');
    expect(whyNoBudget(sheetWithout('money').copy)).toBe('No subsystem has a budget of hours. This copy leaves money out.');
    expect(nothingBooked(copy)).toBe('No money had been booked by then. This copy leaves hours out.');
    expect(daySetter(sheetWithout('hours', 'marks').record)('2030-10-01').markup).toContain(nothingBooked(copy));
    expect(costWords(sheetWithout('hours', 'marks'))).toBe('Job cost without labour of each position that took any, in GBP.');
  });
});

test('a copy without hours and money has no ledger by position, and no account by year, and says so', () => {
  const [whole, copy] = [sheetWithout(), sheetWithout('hours', 'money')];
  expect([hasPage(whole.record, 'costByPosition'), hasPage(copy.record, 'costByPosition')]).toEqual([true, false]);
  expect(accountTables(whole.record, 'cost', 'minutes').length).toBe(3);
  expect(accountTables(copy.record, 'cost', 'minutes')).toEqual([]);
  expect(whyNoAccount(copy.copy)).toBe('This copy leaves hours and money out.');
  const account = (sheet: RecordSheet) => sessionAccount(sheet, sheet.record.ledger.entries, [], 'Entries').markup;
  expect([account(whole), account(copy)].map((markup) => markup.includes('<tfoot'))).toEqual([true, false]);
  const shown = daySetter(copy.record)('2031-03-01').markup;
  expect(shown).toContain('This copy leaves hours and money out.');
  expect(shown).not.toContain('By subsystem');
});

test('a copy without marks has no column of marks, one without money none of prices', () => {
  const parts = (sheet: RecordSheet) => partTable(sheet, [...sheet.record.journal.positions.values()], 'Parts').markup;
  expect(parts(sheetWithout())).toMatch(/>Marks<.*C 4417/s);
  expect(parts(sheetWithout('marks', 'papers'))).not.toContain('>Marks<');
  const buy = (sheet: RecordSheet) => buyTable(sheet, itemsAt(sheet.record, null)).markup;
  expect(buy(sheetWithout())).toMatch(/>About<.*9\.00/s);
  expect(buy(sheetWithout('money', 'papers'))).not.toContain('>About<');
});
