import { soldWords, standingWords } from '../../../exports/tax-words.ts';
import { hasClient } from '../../../journal/ledger/client-account.ts';
import type { StandingRow } from '../../../journal/ledger/tax-standing.ts';
import { taxSummary } from '../../../journal/ledger/tax-summary.ts';
import { PAGES } from '../../addresses.ts';
import { bookAddress, soldAtSlug, taxSlug } from '../books/entry-books.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { type Group, type SetTable, setTable } from '../tables/table.ts';

interface Figures {
  readonly net: number;
  readonly tax: number;
  readonly gross: number;
}

interface Row extends Figures {
  readonly words: string;
  readonly to: string;
}

/** Tax by rate: what was paid, what was sold, what the client is charged, each added up by itself. Null where no line says a tax. */
export function taxTable(sheet: RecordSheet): SetTable | null {
  const { record, figures } = sheet;
  const { paid, sold, ...summary } = taxSummary(record, record.day);
  // What a client is charged is on a page that a record of none, or a copy without hours, does not have.
  const charged = hasClient(record) ? summary.charged : [];
  const says = [...paid, ...sold].some(({ standing }) => standing === 'rated' || standing === 'exempt');
  if (!figures.hasMoney || (!says && charged.length === 0)) return null;
  const client = sheet.link(`${PAGES.client}#charged`);
  const groups: readonly (Group<Row, Figures> | null)[] = [
    group(
      'Paid',
      paid
        .filter(({ sum: { net, gross } }) => net !== 0 || gross !== 0)
        .map((row) => rowOf(row, `Paid, ${lower(standingWords(row))}`, sheet.link(bookAddress(taxSlug(row))))),
    ),
    group(
      'Sold',
      sold.map((row) => rowOf(row, soldWords(row), sheet.link(bookAddress(soldAtSlug(row))))),
    ),
    group(
      'Charged to the client',
      charged.map(({ rate, sum: { net, markUp, tax, charged: gross } }) => {
        const words = `Charged, ${lower(standingWords({ standing: 'rated', rate }))}`;
        return { words, net: net + markUp, tax, gross, to: client };
      }),
    ),
  ];
  return setTable<Row, Figures>({
    label: 'Tax by its rate',
    set: 'account totals by-tax',
    keepsRows: true,
    columns: [
      { head: 'Tax', names: true, cell: ({ words }) => words },
      { head: 'Net', set: 'num', cell: ({ net }) => figures.amount(net), sum: ({ net }) => figures.amount(net) },
      { head: 'Tax in it', set: 'num', cell: ({ tax }) => figures.amount(tax), sum: ({ tax }) => figures.amount(tax) },
      { head: 'Gross', set: 'num', cell: ({ gross, to }) => linked(figures.amount(gross), to), sum: ({ gross }) => figures.amount(gross) },
    ],
    groups: groups.filter((one) => one !== null),
  });
}

const lower = (words: string): string => `${words.charAt(0).toLowerCase()}${words.slice(1)}`;

function rowOf({ sum: { net, tax, gross } }: StandingRow, words: string, to: string): Row {
  return { words, net, tax, gross, to };
}

/** Rows of one kind under what they come to; null where there are none. */
function group(words: string, list: readonly Row[]): Group<Row, Figures> | null {
  if (list.length === 0) return null;
  const sum = (of: keyof Figures): number => list.reduce((all, row) => all + row[of], 0);
  return { head: { words, set: 'month-total', sum: { net: sum('net'), tax: sum('tax'), gross: sum('gross') } }, rows: list };
}
