import { wayWords } from '../../../exports/tax-words.ts';
import type { Bill } from '../../../journal/model.ts';
import type { Entry } from '../../../journal/record.ts';
import { sessionAddress } from '../../addresses.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import { entryAddress } from '../books/entry-place.ts';
import { ofYear } from '../page/by-year.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked, sub } from '../page/links.ts';
import { dateOfBill } from '../page/long-lists.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';
import { paperFacts } from './papers.ts';

/** A bill with its entries. */
export interface BillRow {
  readonly bill: Bill;
  readonly entries: readonly Entry[];
}

export function billRows({ index }: RecordSheet, bills: readonly Bill[]): readonly BillRow[] {
  return bills.map((bill) => ({ bill, entries: (index.entriesOf.get(bill.session) ?? []).filter((entry) => entry.bill === bill.id) }));
}

const OF_YEAR = shown('bills of a year', (sheet, year: string) => billRows(sheet, ofYear(sheet.record.ledger.bills, dateOfBill, year)));

export const BILL_QUESTIONS: readonly AnyQuestion[] = [OF_YEAR];

export const billsOfYear = (sheet: Sheet, year: string): readonly BillRow[] => sheet.ask(OF_YEAR, year);

/** Bills one a line, the last first: seller, what was bought, tax, gross, and the paper where any of them has one. */
export function billTable(sheet: Sheet, bills: readonly BillRow[], label: string): SetTable {
  const { figures } = sheet;
  const papered = bills.some(({ bill: { paper } }) => paper !== null);
  const accountOf = ({ session }: Bill): string => sheet.link(`${sessionAddress(session)}#account`);
  return setTable<BillRow, number>({
    label,
    caption: `The last first, in ${sheet.settings.currency}`,
    set: 'bills',
    columns: [
      { head: 'Date', set: 'date', bare: true, cell: ({ bill }) => linked(figures.shortDate(bill.date), accountOf(bill)) },
      { head: 'From', bare: true, cell: ({ bill: { from } }) => from ?? 'not said' },
      { head: 'What', set: 'what', bare: true, cell: (row) => whatOf(sheet, row) },
      {
        head: 'Tax',
        set: 'num',
        cell: ({ bill }) =>
          html`${figures.amount([...bill.lines, ...bill.rounding].reduce((sum, { tax }) => sum + tax, 0))}${sub(unusualWay(bill))}`,
      },
      {
        head: 'Gross',
        set: 'num',
        cell: ({ bill }) => linked(figures.amount(bill.gross), accountOf(bill)),
        sum: (total) => figures.amount(total),
      },
      ...(papered
        ? [{ head: 'Paper', bare: true, cell: ({ bill: { paper } }: BillRow) => (paper === null ? 'no paper' : paperLink(sheet, paper)) }]
        : []),
    ],
    groups: rows<BillRow, number>(bills.toReversed()),
    foot: [{ words: 'Total', sum: bills.reduce((sum, { bill: { gross } }) => sum + gross, 0) }],
  });
}

/** The way in which the tax of a bill was reckoned; null where it is that of most sellers, which needs no words. */
function unusualWay({ way }: Bill): string | null {
  return way === null || (way.tax === 'line' && !way.sharedFirst) ? null : wayWords(way);
}

/** What each line of the bill is, leading to its entry in the account of the session: the first, where a line is split. */
function whatOf(sheet: Sheet, { bill, entries }: BillRow): Markup {
  const byLine = new Map(entries.toReversed().map((entry) => [lineOf(entry), entry]));
  const lines = bill.lines.map(({ what, place }) => {
    const entry = byLine.get(`${place.line}:${place.column}`);
    return linked(what, entry ? sheet.link(entryAddress(entry)) : null);
  });
  const rounding = entries.filter(({ id }) => id.startsWith(`${bill.id}-rounding`));
  const words = (entry: Entry) => html`${linked(entry.what, sheet.link(entryAddress(entry)))}, ${sheet.figures.amount(entry.gross)}`;
  return joined([...lines, ...rounding.map(words)], '; ');
}

const lineOf = ({ place }: Entry): string => `${place.line}:${place.column}`;

function paperLink(sheet: Sheet, path: string): Markup | string {
  const facts = paperFacts(sheet, path);
  return facts === null ? path : html`<a href="${facts.href}">Paper</a> (${facts.words})`;
}
