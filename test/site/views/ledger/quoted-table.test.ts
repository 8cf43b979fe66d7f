/** What stands beside a quote, in words. */
import { expect, test } from 'vitest';
import { PAGES } from '../../../../src/site/addresses.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { quotedTable, worksQuoted } from '../../../../src/site/views/ledger/quoted-table.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { journal } from '../../../ledger/small-journal.ts';

/** The table of one quote of 100.00 and its bills. */
function tableOf(...bills: readonly string[]): string {
  const bought = bills.map((said) => `{ what: Skimmed, as: outside-work, for: drum-spare, from: a turner, ${said} }`).join(', ');
  const { record } = journal(
    ['2031-03-01', 'parts: [{ part: drum-spare, did: sent-out, to: a turner, work: Skim, quoted: 100.00 }]'],
    ['2031-03-05', `bought: [${bought}]`],
  );
  const sheet = sheetOf({ ...record, pictures: new Map() } as unknown as SiteRecord, PAGES.ledger);
  return quotedTable(sheet, worksQuoted(sheet))
    .markup.replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ');
}

test.each([
  ['no bill yet', []],
  ['as quoted', ['cost: 100.00']],
  ['as quoted, the tax on top', ['cost: 100.00, tax: 20% on top']],
  ['under by 40.00 so far', ['cost: 60.00']],
  ['over by 10.00 ; without tax it is within', ['cost: 110.00, tax: 20%']],
  ['over by 44.00 ; without tax by 20.00', ['cost: 120.00, tax: 20% on top']],
  ['over by 25.00', ['cost: 60.00', 'cost: 65.00']],
])('%s', (words, bills) => {
  expect(tableOf(...bills)).toContain(` ${words} `);
});

/** The words beside a quote of 100.00 with one bill of several lines. */
function besideBill(bill: string): string {
  const { record, problems } = journal(
    ['2031-03-01', 'parts: [{ part: drum-spare, did: sent-out, to: a turner, work: Skim, quoted: 100.00 }]'],
    ['2031-03-05', `bills: [{ from: a turner, ${bill} }]`],
  );
  expect(problems).toEqual([]);
  const sheet = sheetOf({ ...record, pictures: new Map() } as unknown as SiteRecord, PAGES.ledger);
  return quotedTable(sheet, worksQuoted(sheet))
    .markup.replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ');
}

const skim = (cost: string) => `{ what: Skimmed, as: outside-work, for: drum-spare, cost: ${cost} }`;

test.each([
  ['as quoted, the carriage on top', `carriage: 12.00, lines: [${skim('100.00')}]`],
  ['over by 17.00 , of which carriage 12.00', `carriage: 12.00, lines: [${skim('105.00')}]`],
  ['over by 2.00 ; without its carriage of 12.00 it is within', `carriage: 12.00, lines: [${skim('90.00')}]`],
  [
    'over by 20.00 ; carriage of 20.00 is shared over all lines of the bill',
    `carriage: 20.00, lines: [${skim('110.00')}, { what: Paint, as: tool, cost: 110.00 }]`,
  ],
  ['under by 8.00 so far', `carriage: 12.00, lines: [${skim('80.00')}]`],
])('with carriage on the bill: %s', (words, bill) => expect(besideBill(bill)).toContain(` ${words} `));

test('a quote that was billed in two lines opens both, and says the sum without tax', () => {
  expect(tableOf('cost: 60.00, tax: 20% on top', 'cost: 40.00, tax: 20% on top')).toContain(
    '100.00 120.00 line 1 , line 2 100.00 without tax',
  );
});
